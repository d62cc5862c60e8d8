"""The band of a roll: round outside, as thick as the sheet, and of the sheet's own area."""

import math

import pytest

from krume.build.spiral import band, path


def shoelace(points: list[tuple[float, float]]) -> float:
    pairs = zip(points, [*points[1:], points[0]], strict=True)
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)) / 2


@pytest.mark.parametrize(
    ("length", "thick", "cream"), [(228.6, 12.0, 7.0), (380.0, 10.0, 4.0), (330.2, 12.0, 7.0)]
)
def test_the_band_has_the_area_of_the_sheet_and_stays_in_the_circle(
    length: float, thick: float, cream: float
) -> None:
    radius = math.sqrt(length * (thick + cream) / math.pi)
    outer, inner = band(radius, length_mm=length, thick_mm=thick, pitch_mm=thick + cream)
    assert shoelace([*outer, *reversed(inner)]) == pytest.approx(length * thick, rel=0.03)
    assert max(math.hypot(*point) for point in outer) <= radius + 1e-9
    assert min(math.hypot(*point) for point in inner) >= -1e-9


def test_the_outermost_turn_is_round() -> None:
    outer, _ = band(37.2, length_mm=228.6, thick_mm=12.0, pitch_mm=19.0)
    assert all(math.hypot(*point) == pytest.approx(37.2) for point in outer[:240])


def test_path_data_begins_with_a_move() -> None:
    assert path([(0.0, 0.0), (1.0, 2.0)], x=1.0, y=1.0) == "M1.00 1.00L2.00 3.00"
