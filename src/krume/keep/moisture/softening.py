"""When the dry base of a torte goes soft, and what a film of chocolate between buys."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from krume.keep.moisture.draws import PACES, Cells, Draw, cells_of, film_at
from krume.keep.moisture.figures import moisture_figure
from krume.keep.moisture.slabs import Slab
from krume.keep.moisture.sorption import Array, Curve
from krume.keep.moisture.spreading import Spread, spread_water

_S_PER_H = 3600.0
_CLOSED = 3
_LOOKED_H = 24.0 * 30
"""How long a film is followed: a month."""
_LONGEST_S, _GROWS = 140.0 * 3600.0, 2.0
"""Longer steps than three days want: what is told of a month is an order of magnitude."""


@dataclass(frozen=True, slots=True)
class HoursUntil:
    """Hours at the fast, the likely and the slow pace; None is later than was looked."""

    low: float | None
    best: float | None
    high: float | None


@dataclass(frozen=True, slots=True)
class SoftBase:
    """A base that is meant to be crisp, under what lies on it.

    `planned` is as the plan has it, `crisp` begins baked dry, `film` the same behind a brushed
    film of chocolate of `film_mm`, `closed` behind one without a gap: each until it is soft.
    `bite` is until the crisp one begins to lose its bite. `crisp_share` is what the base would
    weigh over what it is planned to, dry enough to be crisp.
    """

    index: int
    start_activity: float
    start_pct: float
    planned: HoursUntil
    bite: HoursUntil
    crisp: HoursUntil
    film: HoursUntil
    closed: HoursUntil
    film_mm: float
    has_film: bool
    crisp_share: float
    looked_h: float


def soft_base(slabs: Sequence[Slab], temp_c: float) -> SoftBase | None:
    """The base of a column, where it is a tart base or begins dry; None where it is not."""
    if len(slabs) < 2:
        return None
    base = slabs[0]
    holds = Curve(np.array([base.starch]), np.array([base.sugar]))
    start = float(holds.activity(holds.at_water(np.array([base.water])))[0])
    if base.rate != "tart" and start > moisture_figure("dry-below"):
        return None
    dried = _at_activity(base, moisture_figure("crisp-start"))
    film_mm = moisture_figure("barrier-film")
    cases = (
        tuple(slabs),
        (dried, replace(slabs[1], film_mm=0.0), *slabs[2:]),
        (dried, replace(slabs[1], film_mm=film_mm), *slabs[2:]),
        (dried, replace(slabs[1], film_mm=film_mm), *slabs[2:]),
    )
    draws = [
        _draw(case, pace, temp_c, is_closed=number == _CLOSED)
        for number, case in enumerate(cases)
        for pace in range(len(PACES))
    ]
    cells = cells_of(draws)
    spread = spread_water(
        cells.line, cells.start, time_s=_LOOKED_H * _S_PER_H, longest_s=_LONGEST_S, grows=_GROWS
    )
    bite, soft = moisture_figure("crisp-least"), moisture_figure("crisp-most")
    crisp = _at_activity(base, bite)
    return SoftBase(
        index=base.index,
        start_activity=start,
        start_pct=100.0 * base.water / base.mass,
        planned=_until(spread, cells, 0, soft),
        bite=_until(spread, cells, 1, bite),
        crisp=_until(spread, cells, 1, soft),
        film=_until(spread, cells, 2, soft),
        closed=_until(spread, cells, _CLOSED, soft),
        film_mm=film_mm,
        has_film=slabs[1].film_mm > 0,
        crisp_share=crisp.mass / base.mass,
        looked_h=_LOOKED_H,
    )


def _draw(slabs: tuple[Slab, ...], pace: int, temp_c: float, *, is_closed: bool) -> Draw:
    gives, misses = film_at(pace)
    return Draw(slabs, pace, temp_c, gives, 0.0 if is_closed else misses)


def _at_activity(slab: Slab, activity: float) -> Slab:
    """The slab with the water it holds at an activity."""
    holds = Curve(np.array([slab.starch]), np.array([slab.sugar]))
    water = holds.water(holds.at_activity(np.array([activity])))
    return replace(slab, water=float(water[0]))


def _until(spread: Spread, cells: Cells, case: int, activity: float) -> HoursUntil:
    """Hours until the mean activity of the base reaches a value, by the three paces."""
    hours = spread.time_s / _S_PER_H
    slow, likely, fast = (
        _crossing(hours, _base_activity(spread, cells, case * len(PACES) + pace), activity)
        for pace in range(len(PACES))
    )
    return HoursUntil(fast, likely, slow)


def _base_activity(spread: Spread, cells: Cells, draw: int) -> Array:
    mine = (cells.of_draw == draw) & (cells.of_slab == 0)
    wide = cells.line.wide_m[mine]
    found: Array = spread.activity[:, mine] @ wide / wide.sum()
    return found


def _crossing(hours: Array, values: Array, want: float) -> float | None:
    over = np.flatnonzero(values >= want)
    if len(over) == 0:
        return None
    at = int(over[0])
    if at == 0:
        return 0.0
    before, after = values[at - 1], values[at]
    part = (want - before) / (after - before)
    return float(hours[at - 1] + part * (hours[at] - hours[at - 1]))
