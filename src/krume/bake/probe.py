"""From a core that was measured to the core that is wanted: how much longer, and the doubt."""

import math
from dataclasses import dataclass, fields

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.draws import Draws, draw
from krume.bake.grid import Array
from krume.bake.limits import over_rim
from krume.bake.parameters import value
from krume.bake.prediction import core_target_k, minutes_to_core
from krume.bake.sanity import check, check_probed
from krume.bake.strata import even_normal
from krume.base import Clash, Infeasible, Interval, Notice, as_text
from krume.properties import boiling_point_c, constant, pressure_at_altitude_pa
from krume.size import Tin

_FEW = 64
_FAR = 2.0


@dataclass(frozen=True, slots=True)
class ToCore:
    """Minutes left to a wanted core; `pace_factor` is the minutes so far over the model's own."""

    minutes: Interval
    wanted_c: float
    pace_factor: float | None
    notices: tuple[Notice, ...]


def to_core(
    batter: Batter,
    tin: Tin,
    oven: Oven,
    *,
    core_c: float,
    after_min: float | None = None,
    count: int = _FEW,
    seed: int = 7,
) -> ToCore | Infeasible:
    """Minutes from a measured core to the wanted one, or why the model cannot say.

    Each draw bakes its own curve, and with the minutes so far it is run as slow or as fast as
    this oven was: `left = (to wanted - to measured) * so far / to measured`; without them the
    model's own doubt stays in it. The probe is off by the same spread as a stated core. The core
    must be above the batter's own temperature and below its boiling point.
    """
    check(batter, tin, oven)
    check_probed(core_c, after_min)
    draws = draw(
        batter,
        oven,
        count=count,
        discrepancy=value("discrepancy"),
        material=tin.material,
        seed=seed,
    )
    zero, pressure = constant("celsius-zero"), pressure_at_altitude_pa(oven.altitude_m)
    wanted = core_target_k(batter, pressure, draws) - zero
    boiling = boiling_point_c(pressure, sugar_pct=100 * batter.sugar_share)
    if stop := over_rim(batter, tin) or _outside(batter, core_c, boiling):
        return Infeasible((stop,))
    if core_c >= wanted[0]:
        return ToCore(Interval(0.0, 0.0, 0.0), float(wanted[0]), None, (_there(),))
    read = np.minimum(core_c + _probe(count, seed), wanted)
    both = minutes_to_core(batter, tin, oven, _twice(draws), np.concatenate([read, wanted]))
    now, goal = both[: count + 1], both[count + 1 :]
    pace = None if after_min is None else after_min / now
    left = (goal - now) * (draws.factor if pace is None else pace)
    return _answer(left[1:], float(wanted[0]), None if pace is None else float(np.median(pace)))


def _outside(batter: Batter, core_c: float, boiling_c: float) -> Clash | None:
    has = f"{as_text(core_c, 1)} °C"
    if core_c > boiling_c + value("spread-core"):
        boils = f"{boiling_c:.1f} °C"
        said = (
            f"A wet crumb does not get hotter than it boils, {boils}; {has} were read. Look where "
            "the probe stands."
        )
        limit = "a wet crumb does not get hotter than it boils"
        return Clash("core", limit, f"at most {boils}", has, said)
    if core_c <= batter.temp_c:
        own = f"{as_text(batter.temp_c, 1)} °C"
        said = (
            f"The core only gets warmer in the oven: the batter goes in at {own}, {has} were read. "
            "Look where the probe stands."
        )
        least = f"more than the batter's own {own}"
        return Clash("core", "it only gets warmer in the oven", least, has, said)
    return None


def _there() -> Notice:
    text = "The core is there. Set and colour decide now: press the top, look at it."
    return Notice("core-there", text)


def _probe(count: int, seed: int) -> Array:
    """What the probe is off, for the nominal bake nothing [K]."""
    drawn = even_normal(count, np.random.default_rng(seed + 1))
    return np.concatenate([[0.0], value("spread-core") * drawn])


def _twice(draws: Draws) -> Draws:
    """The same draws once more behind themselves."""
    return Draws(**{f.name: np.tile(getattr(draws, f.name), 2) for f in fields(Draws)})


def _answer(left: Array, wanted_c: float, pace: float | None) -> ToCore | Infeasible:
    ordered = np.sort(np.clip(np.where(np.isnan(left), np.inf, left), 0.0, None))
    low, middle, high = (float(np.quantile(ordered, q, method="higher")) for q in (0.1, 0.5, 0.9))
    if not math.isfinite(high):
        wanted = f"{as_text(wanted_c, 1)} °C"
        said = (
            f"More than a tenth of the draws do not get to a core of {wanted} within 200 minutes. "
            "No minutes are given."
        )
        return Infeasible((Clash("core", "200 minutes", f"longer, to {wanted}", "none", said),))
    span = Interval(math.floor(low), middle, math.ceil(high))
    return ToCore(span, wanted_c, pace, _far(pace))


def _far(pace: float | None) -> tuple[Notice, ...]:
    """Said where the oven goes at another pace than the model's own doubt allows."""
    if pace is None:
        return ()
    most = _FAR * math.hypot(value("spread-heat"), value("discrepancy"))
    if pace > 0 and abs(math.log(pace)) <= most:
        return ()
    word = "faster" if pace < 1 else "slower"
    text = (
        f"This oven goes far {word} than the model doubts it could. Look at the oven and at where "
        "the probe stands, and check every few minutes."
    )
    return (Notice("pace-far", text),)
