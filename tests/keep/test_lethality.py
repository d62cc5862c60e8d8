"""Lethality: printed values, additivity, and logs that are none."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import InputError, OutOfRangeError
from krume.keep import lethality_min
from tests.agreement import agrees

TIMES = [0.0, 2.0, 4.0, 6.0, 8.0, 10.0, 12.0]
TEMPS = [50.0, 56.0, 60.0, 62.0, 62.0, 60.0, 52.0]


@pytest.mark.source("reference-book", "R19")
def test_a_heating_log_has_the_printed_lethality() -> None:
    found = lethality_min(TIMES, TEMPS, reference_c=60.0, z_k=4.7)
    assert agrees(found, "13.589", within="0.002", why="the book's own tolerance")


@pytest.mark.source("reference-book", "R20")
@pytest.mark.parametrize(("z_k", "printed"), [(10.0, "21.498"), (5.0, "108.563"), (4.7, "136.927")])
def test_a_ramp_has_the_printed_lethality(z_k: float, printed: str) -> None:
    found = lethality_min([0.0, 10.0], [50.0, 70.0], reference_c=60.0, z_k=z_k)
    assert agrees(found, printed, within="0.002", why="the book's own tolerance")


@given(temp=st.floats(40.0, 90.0), minutes=st.floats(0.1, 100.0), z=st.floats(2.0, 20.0))
def test_a_hold_is_its_time_at_its_own_rate(temp: float, minutes: float, z: float) -> None:
    found = lethality_min([0.0, minutes], [temp, temp], reference_c=60.0, z_k=z)
    assert found == pytest.approx(minutes * 10 ** ((temp - 60) / z))


@given(cut=st.floats(0.01, 9.99))
def test_a_reading_on_the_line_changes_nothing(cut: float) -> None:
    whole = lethality_min([0.0, 10.0], [50.0, 70.0], reference_c=60.0, z_k=4.7)
    parts = lethality_min([0.0, cut, 10.0], [50.0, 50 + 2 * cut, 70.0], reference_c=60.0, z_k=4.7)
    assert parts == pytest.approx(whole)


def test_a_nearly_level_line_does_not_cancel() -> None:
    level = lethality_min([0.0, 10.0], [60.0, 60.0], reference_c=60.0, z_k=4.7)
    nearly = lethality_min([0.0, 10.0], [60.0, 60.0 + 1e-12], reference_c=60.0, z_k=4.7)
    assert nearly == pytest.approx(level, rel=1e-12)


def test_the_trapezoid_on_the_rate_gives_more() -> None:
    rates = [10 ** ((t - 60) / 4.7) for t in TEMPS]
    trapezoid = sum(b + a for a, b in pairwise(rates))
    assert trapezoid == pytest.approx(14.965, abs=0.002)
    assert lethality_min(TIMES, TEMPS, reference_c=60.0, z_k=4.7) < trapezoid


@pytest.mark.parametrize(
    ("times", "temps", "error"),
    [
        ([0.0], [50.0], InputError),
        ([0.0, 1.0], [50.0], InputError),
        ([1.0, 1.0], [50.0, 60.0], OutOfRangeError),
        ([0.0, math.nan], [50.0, 60.0], OutOfRangeError),
        ([0.0, 1.0], [50.0, 600.0], OutOfRangeError),
    ],
)
def test_a_log_that_is_none_is_refused(
    times: list[float], temps: list[float], error: type[InputError]
) -> None:
    with pytest.raises(error):
        lethality_min(times, temps, reference_c=60.0, z_k=4.7)


def test_a_z_of_nothing_is_refused() -> None:
    with pytest.raises(OutOfRangeError):
        lethality_min([0.0, 1.0], [50.0, 60.0], reference_c=60.0, z_k=0.0)
