"""`krume.keep.moisture.draws`: columns side by side in one line of cells."""

from dataclasses import replace

import numpy as np
import pytest

from krume.keep.moisture.draws import PACES, Draw, cells_of, film_at
from krume.keep.moisture.slabs import Slab

LOW = Slab(0, "tart", 0.003, 0.1, 0.5, 1.5, 0.9)
HIGH = Slab(1, "cream", 0.010, 5.0, 1.0, 0.5, 1.0)


def draw(pace: int, film_mm: float = 0.0) -> Draw:
    return Draw((LOW, replace(HIGH, film_mm=film_mm)), pace, 5.0, *film_at(pace))


def test_cells_hold_what_their_slabs_hold() -> None:
    cells = cells_of([draw(0), draw(1)])
    water = cells.line.holds.state(cells.start).water
    for number in (0, 1):
        for at, slab in enumerate((LOW, HIGH)):
            mine = (cells.of_draw == number) & (cells.of_slab == at)
            assert water[mine].sum() == pytest.approx(slab.water, rel=1e-9)
            assert cells.line.wide_m[mine].sum() == pytest.approx(slab.thick_m, rel=1e-12)


def test_between_two_draws_nothing_passes() -> None:
    cells = cells_of([draw(pace) for pace in range(len(PACES))])
    seams = np.flatnonzero(np.diff(cells.of_draw))
    assert len(seams) == 2
    assert (cells.line.open_share[seams] == 0).all()
    assert (cells.line.gives[seams] == 0).all()


def test_a_film_stands_where_its_slab_begins_and_gives_less_when_thicker() -> None:
    thin, thick = cells_of([draw(1, 0.6)]).line, cells_of([draw(1, 1.2)]).line
    at = np.flatnonzero(thin.gives)
    assert len(at) == 1
    assert thin.gives[at] == pytest.approx(2 * thick.gives[at], rel=1e-12)
    assert thin.open_share[at] == pytest.approx(film_at(1)[1])


def test_a_faster_draw_is_faster_in_every_cell_and_its_film_gives_more() -> None:
    slow, likely, fast = (cells_of([draw(pace)]).line.diffusivity_m2_s for pace in range(3))
    assert (slow < likely).all()
    assert (likely < fast).all()
    gives = [film_at(pace) for pace in range(3)]
    assert gives == sorted(gives)
