"""Columns side by side as one line of cells: the slow, the likely and the fast draw at once."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from krume.keep.moisture.figures import moisture_figure, rate
from krume.keep.moisture.slabs import Slab
from krume.keep.moisture.sorption import Array, Curve
from krume.keep.moisture.spreading import Line

PACES = ("slow", "likely", "fast")
_LEAST_CELLS, _MOST_CELLS = 9, 14
_CELL_M = 0.8e-3


@dataclass(frozen=True, slots=True)
class Draw:
    """One column at one pace: 0 slow, 1 likely, 2 fast."""

    slabs: tuple[Slab, ...]
    pace: int
    temp_c: float
    film_gives: float
    film_misses: float


@dataclass(frozen=True, slots=True)
class Cells:
    """All draws in one line; `of_draw` and `of_slab` say whose each cell is."""

    line: Line
    start: Array
    of_draw: Array
    of_slab: Array


def cells_of(draws: Sequence[Draw]) -> Cells:
    """Line of cells of several draws, parted by faces that let nothing through."""
    widths: list[Array] = []
    speeds, starch, sugars, water = [], [], [], []
    of_draw, of_slab, opens, gives = [], [], [], []
    for number, draw in enumerate(draws):
        for at, slab in enumerate(draw.slabs):
            share = _shares(slab.thick_m)
            count = len(share)
            widths.append(share * slab.thick_m)
            speeds.append(np.full(count, rate(slab.rate).at(draw.temp_c)[draw.pace]))
            starch.append(share * slab.starch)
            sugars.append(share * slab.sugar)
            water.append(share * slab.water)
            of_draw.append(np.full(count, number))
            of_slab.append(np.full(count, at))
            open_share, film = _face(draw, at)
            opens += [open_share, *([1.0] * (count - 1))]
            gives += [film, *([0.0] * (count - 1))]
    holds = Curve(np.concatenate(starch), np.concatenate(sugars))
    line = Line(
        np.concatenate(widths), np.concatenate(speeds), holds,
        np.array(opens[1:]), np.array(gives[1:]),
    )  # fmt: skip
    return Cells(
        line, holds.at_water(np.concatenate(water)), np.concatenate(of_draw),
        np.concatenate(of_slab),
    )  # fmt: skip


def _shares(thick_m: float) -> Array:
    """Cells of a slab, finest at its faces, as shares of its thickness."""
    count = min(max(round(thick_m / _CELL_M), _LEAST_CELLS), _MOST_CELLS)
    edges = (1 - np.cos(math.pi * np.arange(count + 1) / count)) / 2
    found: Array = np.diff(edges)
    return found


def _face(draw: Draw, at: int) -> tuple[float, float]:
    """How far the face under a slab is open, and what its film gives."""
    if at == 0:
        return 0.0, 0.0
    film_mm = draw.slabs[at].film_mm
    if film_mm <= 0:
        return 1.0, 0.0
    return draw.film_misses, draw.film_gives * moisture_figure("barrier-film") / film_mm


def film_at(pace: int) -> tuple[float, float]:
    """What a film gives and what the brush misses, at a pace."""
    tail = ("-low", "", "-high")[pace]
    return moisture_figure(f"barrier-gives{tail}"), moisture_figure(f"brush-misses{tail}")
