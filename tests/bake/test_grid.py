"""Cells and footprints: areas, equivalent radii, grading."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.bake.grid import Cells, Footprint, equivalent_radius_m, grid_of


@pytest.mark.parametrize(
    ("length", "width", "radius"),
    [(0.20, 0.20, 0.1085083), (0.33, 0.229, 0.1454507), (0.215, 0.115, 0.0795271)],
)
def test_a_rectangle_heats_like_the_cylinder_of_its_eigenvalue(
    length: float, width: float, radius: float
) -> None:
    assert equivalent_radius_m(length, width) == pytest.approx(radius, abs=1e-6)


def test_a_square_turned_round_is_the_same() -> None:
    assert equivalent_radius_m(0.3, 0.2) == pytest.approx(equivalent_radius_m(0.2, 0.3), rel=1e-12)


@given(
    rings=st.integers(2, 20), rows=st.integers(2, 20), grading=st.floats(0, 1),
    hole=st.floats(0, 0.05),
)  # fmt: skip
def test_rings_and_rows_fill_the_batter(rings: int, rows: int, grading: float, hole: float) -> None:
    grid = grid_of(Footprint(0.0, 0.1, hole), Cells(rings, rows, grading))
    assert grid.ring_area.sum() == pytest.approx(np.pi * (0.01 - hole**2), rel=1e-9)
    assert grid.z_share.sum() == pytest.approx(1.0, rel=1e-12)
    assert (grid.ring_area > 0).all() and (grid.z_share > 0).all()
