"""What moves in a torte in three days: grams by layer, when a base is soft, when it is best."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from krume.base import Interval
from krume.build import Torte
from krume.keep.moisture.draws import PACES, Cells, Draw, cells_of, film_at
from krume.keep.moisture.figures import moisture_figure
from krume.keep.moisture.holding import Holding
from krume.keep.moisture.slabs import Column, Slab, column_of
from krume.keep.moisture.softening import SoftBase, soft_base
from krume.keep.moisture.sorption import Array
from krume.keep.moisture.spreading import Spread, spread_water

HOURS = (0.0, 1.0, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 18.0, 24.0, 36.0, 48.0, 60.0, 72.0)
"""Hours that are told."""
_S_PER_H = 3600.0
_G_PER_KG, _CM2_PER_M2, _MM_PER_M = 1e3, 1e4, 1e3


@dataclass(frozen=True, slots=True)
class MovedLayer:
    """One layer of the column: water at the start, and what it takes (above 0) or gives [g].

    `change_g` goes by the hours of the migration, at the likely pace; `day_1_g` and `day_3_g` are
    after 24 and 72 h from the slow to the fast pace.
    """

    index: int
    start_g: float
    start_pct: float
    start_activity: float
    change_g: tuple[float, ...]
    end_activity: float
    end_pct: float
    day_1_g: Interval
    day_3_g: Interval


@dataclass(frozen=True, slots=True)
class Migration:
    """Water of a torte over three days at one temperature.

    `area_cm2` is the column that is summed: what lies over one another everywhere. `half_h` is
    when half of what moves in the three days has moved. `lost_g` is what the sum itself lost.
    """

    temp_c: float
    area_cm2: float
    hours: tuple[float, ...]
    layers: tuple[MovedLayer, ...]
    half_h: Interval
    base: SoftBase | None
    lost_g: float


def migration(
    torte: Torte,
    holds: Mapping[str, Holding],
    families: Mapping[str, str | None],
    *,
    temp_c: float,
) -> Migration | None:
    """Water of a torte over 72 hours; None where a height, a mass or a holding is not known.

    `holds` and `families` go by the plan's own words.
    """
    columns = [column_of(torte, holds, families, soak_mm=mm) for mm in _soaks_mm()]
    if any(column is None for column in columns):
        return None
    known = [column for column in columns if column is not None]
    cells = cells_of([_draw(column.slabs, pace, temp_c) for pace, column in enumerate(known)])
    spread = spread_water(cells.line, cells.start, time_s=HOURS[-1] * _S_PER_H)
    grams = known[1].area_cm2 / _CM2_PER_M2 * _G_PER_KG
    waters = [_by_layer(spread, cells, pace, known[pace], grams) for pace in range(len(PACES))]
    layers = tuple(_moved(index, waters, spread, cells, known) for index in waters[1])
    water = spread.water.sum(axis=1)
    return Migration(
        temp_c=temp_c,
        area_cm2=known[1].area_cm2,
        hours=HOURS,
        layers=layers,
        half_h=_half_h(spread, waters),
        base=soft_base(known[1].slabs, temp_c),
        lost_g=float(np.max(np.abs(water - water[0]))) * grams,
    )


def _soaks_mm() -> tuple[float, float, float]:
    """How deep a syrup stands at first: little of it is moved where it goes deep at once."""
    from krume.evidence import load
    from krume.properties import CONSTANT_COLUMNS

    rows = load("moisture.csv", CONSTANT_COLUMNS)
    row = next(row for row in rows if row.text("key") == "soak-depth")
    half, deep = row.maybe("half_width") or 0.0, row.number_of("value")
    return deep + half, deep, deep - half


def _draw(slabs: Sequence[Slab], pace: int, temp_c: float) -> Draw:
    gives, misses = film_at(pace)
    return Draw(tuple(slabs), pace, temp_c, gives, misses)


def _by_layer(
    spread: Spread, cells: Cells, pace: int, column: Column, grams: float
) -> dict[int, Array]:
    """Water of each layer over the steps [g]; a roll's turns count together."""
    found: dict[int, Array] = {}
    for at, slab in enumerate(column.slabs):
        mine = (cells.of_draw == pace) & (cells.of_slab == at)
        water = spread.water[:, mine].sum(axis=1) * grams
        found[slab.index] = found.get(slab.index, 0.0) + water
    return found


def _moved(
    index: int,
    waters: Sequence[Mapping[int, Array]],
    spread: Spread,
    cells: Cells,
    columns: Sequence[Column],
) -> MovedLayer:
    hours = spread.time_s / _S_PER_H
    changes = [np.interp(HOURS, hours, each[index] - each[index][0]) for each in waters]
    likely = waters[1][index]
    grams = columns[1].area_cm2 / _CM2_PER_M2 * _G_PER_KG
    dry = grams * sum(slab.mass - slab.water for slab in columns[1].slabs if slab.index == index)
    activity = _mean_activity(spread, cells, columns[1], index)
    return MovedLayer(
        index=index,
        start_g=float(likely[0]),
        start_pct=100.0 * float(likely[0]) / (dry + float(likely[0])),
        start_activity=float(activity[0]),
        change_g=tuple(float(each) for each in changes[1]),
        end_activity=float(activity[-1]),
        end_pct=100.0 * float(likely[-1]) / (dry + float(likely[-1])),
        day_1_g=_span([each[HOURS.index(24.0)] for each in changes]),
        day_3_g=_span([each[-1] for each in changes]),
    )


def _mean_activity(spread: Spread, cells: Cells, column: Column, index: int) -> Array:
    own = [at for at, slab in enumerate(column.slabs) if slab.index == index]
    mine = (cells.of_draw == 1) & np.isin(cells.of_slab, own)
    wide = cells.line.wide_m[mine]
    found: Array = spread.activity[:, mine] @ wide / wide.sum()
    return found


def _span(changes: Sequence[float]) -> Interval:
    return Interval(float(min(changes)), float(changes[1]), float(max(changes)))


def _half_h(spread: Spread, waters: Sequence[Mapping[int, Array]]) -> Interval:
    """Hours after which half of what moves between the layers in the three days has moved."""
    share = moisture_figure("half-moved")
    hours = spread.time_s / _S_PER_H
    found = []
    for each in waters:
        moved = sum((np.abs(water - water[0]) for water in each.values()), np.zeros_like(hours))
        part = moved / moved.max() if moved.max() > 0 else moved
        found.append(float(np.interp(share, np.maximum.accumulate(part), hours)))
    return Interval(min(found), found[1], max(found))
