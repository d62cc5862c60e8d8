"""The cells and sweeps against the exact series of a plain body."""

import numpy as np
import pytest

from krume.bake.conduction import Plain, conduction_only
from krume.bake.grid import Cells
from krume.calc import run

SHORT = Plain(0.3, 2800, 500, 18, 0.1, 0.05, 20, 175)


def _centre(field: np.ndarray, radius: float, height: float) -> float:
    """Even quadratic through the two cells nearest the middle, in height and then in radius."""
    rows, rings = field.shape
    z = (np.arange(rows) + 0.5) / rows * height - height / 2
    r = (np.arange(rings) + 0.5) / rings * radius
    up, next_up = rows // 2, rows // 2 + 1
    middle = [_even(z[up], field[up, i], z[next_up], field[next_up, i]) for i in (0, 1)]
    return _even(r[0], middle[0], r[1], middle[1])


def _even(x0: float, y0: float, x1: float, y1: float) -> float:
    return float(y0 - (y1 - y0) * x0**2 / (x1**2 - x0**2))


def _error(rings: int, rows: int) -> float:
    field = conduction_only(SHORT, time_s=2400, steps=3000, cells=Cells(rings, rows, 0.0))
    return _centre(field, 0.1, 0.05) - 95.38159


def test_a_short_cylinder_reaches_the_exact_temperature() -> None:
    assert abs(_error(12, 14)) < 0.1


def test_halving_the_cells_quarters_the_error() -> None:
    order = np.log2(abs(_error(12, 14)) / abs(_error(24, 28)))
    assert order > 1.8


@pytest.mark.parametrize(
    ("shape", "sides", "biot", "fourier", "limit"),
    [("slab", "ends", 1.0, 0.5, 1e-3), ("cylinder", "wall", 1.0, 0.5, 1e-3)],
)
def test_a_slab_and_a_long_cylinder_follow_their_series(
    shape: str, sides: str, biot: float, fourier: float, limit: float
) -> None:
    length, k = 0.05, 0.4
    body = Plain(
        k, 2000, 500, biot * k / length, length, 2 * length, 0, 1,
        side_heated=sides == "wall", ends_heated=sides == "ends",
    )  # fmt: skip
    time = fourier * length**2 / (k / (2000 * 500))
    field = conduction_only(body, time_s=time, steps=2000, cells=Cells(12, 14, 0.0))
    reached = 1 - _centre(field, length, 2 * length)
    exact = run("heating-series", shape=shape, biot=biot, fourier=fourier)["theta"]
    assert reached == pytest.approx(exact, abs=limit)


def test_heat_taken_up_is_heat_that_came_in() -> None:
    cells = Cells(8, 10, 0.5)
    field = conduction_only(SHORT, time_s=60000, steps=3000, cells=cells)
    assert np.abs(field - 175).max() < 0.05
