"""Two-stage cooling: printed times, and what is not shown never passes."""

import math

import pytest

from krume.keep import Cooling, cooling
from tests.agreement import agrees, reads


def newton(rate_per_h: float, hours: float = 12.0) -> tuple[list[float], list[float]]:
    """A dense log of a food that cools from 57.22 C in a room of 3 C."""
    times = [n / 100 for n in range(int(hours * 100) + 1)]
    return times, [3 + (57.22 - 3) * math.exp(-rate_per_h * t) for t in times]


@pytest.mark.source("reference-book", "R22")
@pytest.mark.parametrize(
    ("rate", "first", "total", "verdict"),
    [(0.80, "1.371", "4.125", "pass"), (0.50, "2.193", "6.600", "fail")],
)
def test_newtons_cooling_takes_the_printed_times(
    rate: float, first: str, total: str, verdict: str
) -> None:
    found = cooling(*newton(rate))
    why = "the book goes from 135 to 70 F (57.22 to 21.11 C), the clock from 57 to 21 C"
    assert agrees(found.stage_1_h, first, within="0.01", why=why)
    assert agrees(found.total_h, total, within="0.01", why=why)
    assert reads(found.verdict, verdict)


@pytest.mark.source("reference-book", "cooling logs A and B")
def test_the_studios_logs_are_judged_as_printed() -> None:
    a = cooling([0, 1, 2, 4, 6], [57, 33, 20, 9, 4])
    assert agrees(a.stage_1_h, "1.92") and agrees(a.total_h, "5.6") and reads(a.verdict, "pass")
    b = cooling([0, 1, 2, 4, 6], [57, 40, 26, 12, 6])
    assert agrees(b.stage_1_h, "2.71") and reads(b.reason, "stage-1,total")
    assert b.total_h is None


@pytest.mark.parametrize(
    ("times", "temps"),
    [
        ([0, 1], [50, 3]),
        ([0, 1, 2, 4], [57, 33, 20, 9]),
        ([0, 1], [57, 30]),
        ([0, 2.5, 5], [57, 20, 4]),
        ([0, 1.5, 8], [57, 20, 4]),
        ([0, 1], [80, 60]),
    ],
)
def test_what_the_log_does_not_show_fails(times: list[float], temps: list[float]) -> None:
    found = cooling(times, temps)
    assert (found.verdict, found.reason) == ("fail", "not-shown")


def test_exactly_at_both_limits_it_passes() -> None:
    assert cooling([0, 2, 4, 6], [57, 21, 12, 5]) == Cooling(2.0, 6.0, "pass", "")


def test_the_clock_starts_when_the_food_passes_57_degrees() -> None:
    found = cooling([0, 1, 2, 3, 5, 7], [97, 57, 40, 20, 10, 4])
    assert found.stage_1_h == pytest.approx(1.95)


def test_a_food_that_warms_up_again_has_not_arrived() -> None:
    found = cooling([0, 1, 2, 3, 4, 5, 6], [57, 30, 20, 25, 20, 8, 5])
    assert found.reason == "stage-1"
    assert found.stage_1_h == pytest.approx(3.8)


def test_readings_above_the_level_past_the_limit_show_it_is_over() -> None:
    found = cooling([0, 1, 2.2, 4, 5.5], [57, 40, 26, 12, 4])
    assert found.reason == "stage-1"


@pytest.mark.source("fda-food-code-2022", "3-501.14(B): 5 °C within 4 hours")
@pytest.mark.parametrize(
    ("times", "temps", "verdict", "reason"),
    [
        ([0, 2, 4], [20, 10, 5], "pass", ""),
        ([0, 2, 4.01], [20, 10, 5], "fail", "total"),
        ([0, 2, 4], [20, 10, 6], "fail", "total"),
        ([0, 2, 3], [20, 10, 6], "fail", "not-shown"),
        ([0, 5], [20, 4], "fail", "not-shown"),
    ],
)
def test_what_no_step_cooks_is_cold_within_four_hours_of_its_first_reading(
    times: list[float], temps: list[float], verdict: str, reason: str
) -> None:
    found = cooling(times, temps, is_cooked=False)
    assert reads(found.verdict, verdict)
    assert found.reason == reason
    assert found.stage_1_h is None
