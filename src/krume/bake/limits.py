"""Where the model ends: what gives no minutes, and what was never compared and widens the doubt."""

import math

import numpy as np

from krume.bake.around import around_doubt, around_notices
from krume.bake.batter import Batter, Oven
from krume.bake.footing import depth_cm
from krume.bake.parameters import value
from krume.bake.sanity import check, check_depth
from krume.bake.state import Outcome
from krume.base import Clash, Notice
from krume.size import Tin

RULES = ("core", "set", "colour")
_COLDEST_C, _HOTTEST_C = 100, 300
_PROVEN_C = (140, 210)
_PROVEN_CM = (0.8, 7.0)
_PROVEN_M = 2500
HOLES = ("tube", "ring-mould")


def outside(batter: Batter, tin: Tin, oven: Oven) -> Clash | None:
    """The limit that forbids minutes, if one does; what cannot be at all is refused."""
    if math.isfinite(oven.temp_c) and not _COLDEST_C <= oven.temp_c <= _HOTTEST_C:
        has = f"{oven.temp_c:.0f} °C"
        return Clash("oven", "what the model knows", "an oven of 100 to 300 °C", has)
    check(batter, tin, oven)
    depth = depth_cm(batter, tin)
    if tin.height_cm is not None and depth > tin.height_cm:
        fits = batter.mass_g * tin.height_cm / depth
        needs = f"{depth:.1f} cm for {batter.mass_g:.0f} g"
        return Clash(
            "tin height",
            f"{tin.height_cm:g} cm, holds {fits:.0f} g to the rim",
            needs,
            f"{tin.height_cm:g} cm",
        )
    check_depth(batter, tin)
    return None


def never(outcome: Outcome, oven: Oven) -> Clash:
    """Which rule was not met before the model ends."""
    missed = [RULES[i] for i in range(3) if not math.isfinite(float(outcome.minutes[0, i]))]
    rule = missed[0] if missed else RULES[int(np.isinf(outcome.minutes).sum(axis=0).argmax())]
    reached = outcome.track.core_c[-1]
    has = f"200 minutes, core {reached:.0f} °C by then"
    needs = f"longer, for the {rule} rule to be met"
    if oven.around.jacket == "water" and rule != "colour":
        needs = f"less water or none: in it the {rule} rule is not met"
    return Clash("time", "the model ends there", needs, has)


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
        not _PROVEN_C[0] <= oven.temp_c <= _PROVEN_C[1]
        or not _PROVEN_CM[0] <= depth_cm(batter, tin) <= _PROVEN_CM[1]
        or oven.altitude_m > _PROVEN_M
    )


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
        (not _PROVEN_C[0] <= oven.temp_c <= _PROVEN_C[1], "oven-unproven",
         "Ovens below 140 or above 210 °C were never compared. Wide doubt."),
        (not _PROVEN_CM[0] <= depth <= _PROVEN_CM[1], "depth-unproven",
         f"Batter {depth:.1f} cm deep: the model was made for 0.8 to 7 cm. Wide doubt."),
        (oven.altitude_m > _PROVEN_M, "altitude-unproven", "Above 2500 m nothing was compared."),
        (over, "rises-over-rim", _over(tin, risen_cm)),
        (not batter.density_measured, "density-assumed", _density_note(batter.density_g_ml)),
        (tin.height_cm is None, "rim-unknown",
         "The tin's height is not given: whether the batter stays under the rim is not known."),
        (tin.material == "silicone", "silicone-unproven",
         "Silicone tins are often reported slower than the model says."),
    )  # fmt: skip
    said = tuple(Notice(code, text) for true, code, text in checks if true)
    return said + around_notices(oven.around)


def _over(tin: Tin, risen_cm: float) -> str:
    return (
        f"The cake may rise to {risen_cm:.1f} cm, over the rim of {tin.height_cm or 0:g} cm. "
        "A dome bakes later than the model's flat top. Wider doubt."
    )


def _density_note(density_g_ml: float) -> str:
    return (
        f"Batter density {density_g_ml:.2f} g/ml is the family's, not measured. "
        "Weigh a level cup of it to narrow the minutes."
    )
