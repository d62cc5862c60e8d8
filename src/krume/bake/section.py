"""The cut cake at chosen minutes: temperature of rings and rows, colour and crust of the top."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.draws import nominal
from krume.bake.engine import Cut, cuts
from krume.bake.grid import Cells
from krume.bake.prediction import case_of
from krume.bake.sanity import check, check_cells
from krume.base import OutOfRangeError
from krume.properties import constant
from krume.size import Tin

_LONGEST_MIN = 200.0


@dataclass(frozen=True, slots=True)
class Section:
    """One cut through the middle at a minute, of the nominal bake.

    `radius_cm` are the edges of the rings from the middle (the first is the hole's, else 0); a
    rectangle is cut across its shorter side. `height_cm` are the edges of the rows at that moment,
    from the bottom. `temp_c` is by rows from the bottom, each from the middle outwards. `delta_e`
    and `crust_mm` are the means over the top.
    """

    time_min: float
    radius_cm: tuple[float, ...]
    height_cm: tuple[float, ...]
    temp_c: tuple[tuple[float, ...], ...]
    delta_e: float
    crust_mm: float


def sections(
    batter: Batter,
    tin: Tin,
    oven: Oven,
    *,
    at_min: Sequence[float],
    cells: tuple[int, int] | None = None,
) -> tuple[Section, ...]:
    """Cuts of the nominal bake at the minutes asked, in their order; later than done is allowed."""
    for minute in at_min:
        if not 0 <= minute <= _LONGEST_MIN:
            text = f"Minutes from 0 to {_LONGEST_MIN:.0f} can be cut; got {minute:g}."
            raise OutOfRangeError(text, field="at_min", got=f"{minute:g}", want="0 to 200 min")
    check(batter, tin, oven)
    if cells is not None:
        check_cells(cells)
    grid = Cells() if cells is None else Cells(cells[0], cells[1])
    case = case_of(batter, tin, oven, nominal(batter, oven), grid)
    wanted = sorted(set(at_min))
    found = dict(zip(wanted, cuts(case, [60 * minute for minute in wanted]), strict=True))
    edges = case.grid.r_face * _across(tin, case.grid.radius)
    return tuple(_section(minute, found[minute], edges) for minute in at_min)


def _across(tin: Tin, radius_m: float) -> float:
    """Half the shorter side of a rectangle over its cylinder's radius; 1 where it is round."""
    sides = [side for side in (tin.length_cm, tin.width_cm) if side is not None]
    return min(sides) / 200 / radius_m if sides else 1.0


def _section(minute: float, cut: Cut, edges_m: np.ndarray) -> Section:
    zero = constant("celsius-zero")
    heights = np.concatenate([[0.0], np.cumsum(cut.row_height)])
    return Section(
        time_min=minute,
        radius_cm=tuple(100 * float(r) for r in edges_m),
        height_cm=tuple(100 * float(z) for z in heights),
        temp_c=tuple(tuple(float(t) - zero for t in row) for row in cut.temp),
        delta_e=cut.colour,
        crust_mm=1000 * cut.crust,
    )
