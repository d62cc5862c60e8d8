"""What heating would kill in plain yolk: counted where it was measured, and never promised."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import InputError, OutOfRangeError
from krume.keep.treated import egg_heat
from tests.agreement import agrees


@pytest.mark.source("food-microbiology-2011", "abstract: D 1.83 min at 58 °C, 0.036 min at 66 °C")
@pytest.mark.parametrize(("temp", "printed"), [(58.0, "1.83"), (60.0, "0.69"), (62.0, "0.26"),
                                               (64.0, "0.096"), (66.0, "0.036")])  # fmt: skip
def test_the_time_printed_for_nine_of_ten_is_one_power_of_ten(temp: float, printed: str) -> None:
    minutes = float(printed)
    why = "one straight line through five printed times"
    found = egg_heat([0.0, minutes], [temp, temp])
    assert agrees(found.log_reduction_count, "1.00", within="0.06", why=why)


def test_heat_below_the_coldest_measured_counts_for_nothing() -> None:
    assert egg_heat([0.0, 600.0], [57.9, 57.9]).minutes == 0.0
    assert egg_heat([0.0, 1.0], [20.0, 57.0]).log_reduction_count == 0.0


def test_heat_above_the_hottest_measured_counts_as_that() -> None:
    hot, measured = (egg_heat([0.0, 0.2], [t, t]).minutes for t in (90.0, 66.0))
    assert hot == pytest.approx(measured, rel=1e-12)


def test_more_than_is_told_is_said_as_more() -> None:
    found = egg_heat([0.0, 5.0], [80.0, 80.0])
    assert found.is_more
    assert found.log_reduction_count == 7.0


@pytest.mark.source("us-9-cfr-590", "590.570 table I: sugared yolk 146 °F, 3.5 min")
def test_the_old_table_is_once_itself() -> None:
    assert agrees(egg_heat([0.0, 3.5], [63.3, 63.3]).old_table_ratio, "1.00")


@given(st.lists(st.floats(20.0, 95.0), min_size=2, max_size=8), st.floats(0.5, 20.0))
def test_cut_runs_are_those_of_a_fine_sum(temps: list[float], step: float) -> None:
    times = [step * i for i in range(len(temps))]
    count = 1000
    total = 0.0
    for a, b in pairwise(temps):
        for i in range(count):
            t = a + (b - a) * (i + 0.5) / count
            total += step / count * (10 ** ((min(t, 66.0) - 60) / 4.7) if t >= 58 else 0.0)
    assert math.isclose(egg_heat(times, temps).minutes, total, rel_tol=3e-3, abs_tol=0.05 * step)


@pytest.mark.parametrize(
    ("times", "temps"), [([0.0], [60.0]), ([0.0, 1.0], [60.0]), ([1.0, 0.0], [60.0, 60.0])]
)
def test_what_is_no_log_is_refused(times: list[float], temps: list[float]) -> None:
    with pytest.raises((InputError, OutOfRangeError)):
        egg_heat(times, temps)
