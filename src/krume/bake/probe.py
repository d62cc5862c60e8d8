"""From a core that was measured to the core that is wanted: how much longer, and the doubt."""

import math
from dataclasses import dataclass, fields

import numpy as np
from scipy.special import ndtri

from krume.bake.batter import Batter, Oven
from krume.bake.draws import Draws, draw
from krume.bake.footing import depth_cm
from krume.bake.grid import Array
from krume.bake.parameters import value
from krume.bake.prediction import core_target_k, minutes_to_core
from krume.bake.sanity import check
from krume.base import Clash, Infeasible, Interval, Notice
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
    if stop := _outside(batter, tin, core_c, boiling):
        return Infeasible((stop,))
    if core_c >= wanted[0]:
        return ToCore(Interval(0.0, 0.0, 0.0), float(wanted[0]), None, (_there(),))
    read = np.minimum(core_c + _probe(count, seed), wanted)
    both = minutes_to_core(batter, tin, oven, _twice(draws), np.concatenate([read, wanted]))
    now, goal = both[: count + 1], both[count + 1 :]
    pace = None if after_min is None else after_min / now
    left = (goal - now) * (draws.factor if pace is None else pace)
    return _answer(left[1:], float(wanted[0]), None if pace is None else float(np.median(pace)))


def _outside(batter: Batter, tin: Tin, core_c: float, boiling_c: float) -> Clash | None:
    has = f"{core_c:.0f} °C"
    if core_c > boiling_c + value("spread-core"):
        most = f"at most {boiling_c:.0f} °C"
        return Clash("core", "a wet crumb does not get hotter than it boils", most, has)
    if core_c <= batter.temp_c:
        least = f"more than the batter's own {batter.temp_c:.0f} °C"
        return Clash("core", "it only gets warmer in the oven", least, has)
    if tin.height_cm is not None and depth_cm(batter, tin) > tin.height_cm:
        return Clash("tin height", "the batter stands above the rim", "a higher tin", tin.read)
    return None


def _there() -> Notice:
    text = "The core is there. Set and colour decide now: press the top, look at it."
    return Notice("core-there", text)


def _probe(count: int, seed: int) -> Array:
    """What the probe is off, for the nominal bake nothing [K]."""
    strata = (np.random.default_rng(seed + 1).permutation(count) + 0.5) / count
    off: Array = np.concatenate([[0.0], value("spread-core") * ndtri(strata)])
    return off


def _twice(draws: Draws) -> Draws:
    """The same draws once more behind themselves."""
    return Draws(**{f.name: np.tile(getattr(draws, f.name), 2) for f in fields(Draws)})


def _answer(left: Array, wanted_c: float, pace: float | None) -> ToCore | Infeasible:
    ordered = np.sort(np.clip(np.where(np.isnan(left), np.inf, left), 0.0, None))
    low, middle, high = (float(np.quantile(ordered, q, method="higher")) for q in (0.1, 0.5, 0.9))
    if not math.isfinite(high):
        return Infeasible((Clash("core", "200 minutes", f"longer, to {wanted_c:.0f} °C", "none"),))
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
