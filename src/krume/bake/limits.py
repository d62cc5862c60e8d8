"""Where the model ends: what gives no minutes, and what was never compared and widens the doubt."""

import math

import numpy as np

from krume.bake.around import around_doubt, around_notices
from krume.bake.batter import Batter, Oven
from krume.bake.footing import depth_cm
from krume.bake.parameters import value
from krume.bake.sanity import check, check_depth
from krume.bake.state import Outcome
from krume.base import Clash, Notice, as_text
from krume.size import Tin

RULES = ("core", "set", "colour")
_MOST_DIGITS = 9
_SAME_K = 0.05
HOLES = ("tube", "ring-mould")


def outside(batter: Batter, tin: Tin, oven: Oven) -> Clash | None:
    """The limit that forbids minutes, if one does; what cannot be at all is refused."""
    low, high = value("oven-coldest"), value("oven-hottest")
    if math.isfinite(oven.temp_c) and not low <= oven.temp_c <= high:
        return _oven_unknown(oven.temp_c, low, high)
    check(batter, tin, oven)
    if over := over_rim(batter, tin):
        return over
    check_depth(batter, tin)
    return None


def _oven_unknown(temp_c: float, low: float, high: float) -> Clash:
    has, known = f"{_apart(temp_c, low if temp_c < low else high)} °C", f"{low:g} to {high:g} °C"
    said = f"An oven of {has} is not known to the model. Name one of {known}."
    return Clash("oven", "what the model knows", f"an oven of {known}", has, said)


def over_rim(batter: Batter, tin: Tin) -> Clash | None:
    """The rim, where the batter stands above it before it is baked, and how much would fit."""
    depth, height = depth_cm(batter, tin), tin.height_cm
    if height is None or depth <= height:
        return None
    fits = math.floor(batter.mass_g * height / depth)
    mass, stands = _apart(batter.mass_g, fits), _apart(depth, height, 1)
    said = f"{mass} g stands {stands} cm deep in a tin of {height:g} cm; {fits} g fit."
    limit, needs = f"{height:g} cm, holds {fits} g to the rim", f"{stands} cm for {mass} g"
    return Clash("tin height", limit, needs, f"{height:g} cm", said)


def _apart(amount: float, limit: float, digits: int = 0) -> str:
    """A figure with as many digits as it takes to stand on its own side of a limit."""
    told = [f"{amount:.{more}f}" for more in range(digits, _MOST_DIGITS)]
    return next((each for each in told if (float(each) - limit) * (amount - limit) > 0), told[0])


def never(outcome: Outcome, oven: Oven) -> Clash:
    """Which rule was not met before the model ends, in the likeliest bake or in too many draws."""
    missed = [RULES[i] for i in range(3) if not math.isfinite(float(outcome.minutes[0, i]))]
    rule = missed[0] if missed else RULES[int(np.isinf(outcome.minutes).sum(axis=0).argmax())]
    has = f"200 minutes, core {_reached_c(outcome)} °C by then"
    why = _MISSED[rule].format(core=as_text(outcome.core_c, 1))
    said = f"The likeliest bake is never done: in 200 minutes {why}"
    if missed and rule == "core":
        said += f", it gets to {_reached_c(outcome)} °C"
    if not missed:
        has = "200 minutes, too few for more than a tenth of the draws"
        said = (
            f"More than a tenth of the draws are never done, though the likeliest bake is: in 200 "
            f"minutes {why}"
        )
    needs = f"longer, for the {rule} rule to be met"
    if oven.around.jacket == "water" and rule != "colour":
        needs = f"less water or none: in it the {rule} rule is not met"
        return Clash("time", "the model ends there", needs, has, f"{said}. {_DRY}")
    return Clash("time", "the model ends there", needs, has, f"{said}. No minutes are given.")


def _reached_c(outcome: Outcome) -> str:
    """The warmest the core of the likeliest bake was, to stand below what it should reach."""
    return _apart(max(outcome.track.core_c), outcome.core_c)


_MISSED = {
    "core": "the core does not get to {core} °C",
    "set": "egg and starch do not set all through",
    "colour": "the top does not get its colour",
}
_DRY = "The water holds the wall back: take less of it or none (--jacket none)."


def discrepancy_of(batter: Batter, tin: Tin, oven: Oven, *, risen_cm: float = 0.0) -> float:
    """How far ln minutes of a cake lie from its model, as one standard deviation.

    `risen_cm` is the height of the baked cake, where it is known.
    """
    base = value("discrepancy")
    if tin.height_cm is not None and risen_cm > tin.height_cm:
        base = value("discrepancy-rim")
    if tin.shape in HOLES or _is_unproven(batter, tin, oven):
        base = value("discrepancy-wide")
    return math.hypot(base, around_doubt(oven.around))


def _is_unproven(batter: Batter, tin: Tin, oven: Oven) -> bool:
    return (
        _is_oven_unproven(oven)
        or _is_depth_unproven(depth_cm(batter, tin))
        or oven.altitude_m > value("plain-altitude-most")
    )


def _is_oven_unproven(oven: Oven) -> bool:
    return not value("compared-coldest") <= oven.temp_c <= value("compared-hottest")


def _is_depth_unproven(depth: float) -> bool:
    return not value("compared-thinnest") <= depth <= value("compared-deepest")


_PROMISE = (
    "Start checking at the first figure. If it is not done by the last, check oven and tin. "
    "The skewer, the probe and the eye decide; this is no food-safety instrument."
)


def notices_of(
    batter: Batter, tin: Tin, oven: Oven, *, risen_cm: float = 0.0
) -> tuple[Notice, ...]:
    """What a person must know of these minutes."""
    depth = depth_cm(batter, tin)
    over = tin.height_cm is not None and risen_cm > tin.height_cm
    checks = (
        (True, "minutes-are-a-range", _PROMISE),
        (tin.shape in HOLES, "tube-unproven",
         "Tube tins: all bakes known take longer than this, a sixth more to twice. Wide doubt."),
        (_is_oven_unproven(oven), "oven-unproven",
         f"Ovens below {value('compared-coldest'):g} or above {value('compared-hottest'):g} °C "
         "were never compared. Wide doubt."),
        (_is_depth_unproven(depth), "depth-unproven",
         f"Batter {depth:.1f} cm deep: the model was made for {value('compared-thinnest'):g} to "
         f"{value('compared-deepest'):g} cm. Wide doubt."),
        (oven.altitude_m > value("plain-altitude-most"), "altitude-unproven",
         "No bake was compared at altitude. "
         f"Above {value('plain-altitude-most'):g} m the doubt is wide."),
        (over, "rises-over-rim", _over(tin)),
        (not batter.density_measured, "density-assumed", _density_note(batter.density_g_ml)),
        (tin.height_cm is None, "rim-unknown",
         "The tin's height is not given: whether the batter stays under the rim is not known."),
        (tin.material == "silicone", "silicone-unproven",
         "Silicone tins are often reported slower than the model says."),
    )  # fmt: skip
    said = tuple(Notice(code, text) for true, code, text in checks if true)
    return said + around_notices(oven.around)


def core_notices(
    batter: Batter, oven: Oven, *, core_c: float, boiling_c: float
) -> tuple[Notice, ...]:
    """That the core the formula states is not the one the bake is done at, and why."""
    if batter.core_c is None or abs(core_c - batter.core_c) <= _SAME_K:
        return ()
    stated, at, boils = (as_text(each, 1) for each in (batter.core_c, core_c, boiling_c))
    if is_core_capped(core_c, boiling_c):
        capped = (
            f"A core of {stated} °C comes only by drying: the batter boils at {boils} °C here. "
            f"Done is taken at {at} °C, {as_text(value('core-margin-least'), 1)} below."
        )
        return (Notice("core-capped", capped),)
    where = f"{as_text(batter.core_altitude_m, 0)} m" if batter.core_altitude_m else "sea level"
    text = (
        f"The formula's core of {stated} °C is for {where}. At {as_text(oven.altitude_m, 0)} m the "
        f"batter boils at {boils} °C, and done is taken at {at} °C."
    )
    return (Notice("core-moved", text),)


def is_core_capped(core_c: float, boiling_c: float) -> bool:
    """Whether a core stands as close to boiling as it is ever taken."""
    return core_c >= boiling_c - value("core-margin-least") - _SAME_K


def _over(tin: Tin) -> str:
    return (
        f"The cake may rise over the rim of {tin.height_cm or 0:g} cm. "
        "A dome bakes later than the model's flat top. Wider doubt."
    )


def _density_note(density_g_ml: float) -> str:
    return (
        f"Batter density {density_g_ml:.2f} g/ml is the family's, not measured. "
        "Weigh a level cup of it to narrow the minutes."
    )
