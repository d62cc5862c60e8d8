"""When a cooling middle is down to a temperature, by readings of it."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.bake import cool_left
from krume.base import InputError, OutOfRangeError


@given(pace=st.floats(0.003, 0.05), start=st.floats(60.0, 100.0), goal=st.floats(25.0, 40.0))
def test_a_cake_that_falls_by_newtons_law_is_there_at_the_early_end(
    pace: float, start: float, goal: float
) -> None:
    temps = [21 + (start - 21) * math.exp(-pace * time) for time in (20.0, 35.0, 50.0)]
    exact = math.log((start - 21) / (goal - 21)) / pace
    assert (
        cool_left([20, 35, 50], temps, room_c=21, goal_c=goal).at_min.low
        == pytest.approx(exact, rel=1e-6, abs=1e-6)
        or exact < 50
    )


@given(pace=st.floats(1e-3, 6e-3))
def test_a_cake_in_still_air_is_there_at_the_late_end(pace: float) -> None:
    def temp(time: float) -> float:
        return 21 + 1 / math.pow(75**-0.25 + pace * time / 10, 4)

    exact = (9**-0.25 - 75**-0.25) / pace * 10
    found = cool_left([10, 20], [temp(10), temp(20)], room_c=21, goal_c=30)
    assert found.at_min.high == pytest.approx(exact, rel=1e-6) or exact < 20


def test_what_is_left_counts_from_the_last_reading_and_is_never_below_nothing() -> None:
    found = cool_left([20, 40], [70, 52], room_c=21, goal_c=30)
    assert found.left_min.low == pytest.approx(found.at_min.low - 40)
    there = cool_left([20, 40], [70, 29], room_c=21, goal_c=30)
    assert there.left_min.high == 0.0


def test_a_third_reading_on_the_line_changes_nothing() -> None:
    line = [21 + 60 * math.exp(-0.02 * time) for time in (10.0, 20.0, 30.0)]
    two = cool_left([10, 20], line[:2], room_c=21, goal_c=30)
    three = cool_left([10, 20, 30], line, room_c=21, goal_c=30)
    assert three.at_min.low == pytest.approx(two.at_min.low)


def test_a_colder_goal_and_a_warmer_room_are_later() -> None:
    base = cool_left([20, 40], [70, 52], room_c=21, goal_c=30).at_min
    assert cool_left([20, 40], [70, 52], room_c=21, goal_c=26).at_min.best > base.best
    assert cool_left([20, 40], [70, 52], room_c=25, goal_c=30).at_min.best > base.best


@pytest.mark.parametrize(
    ("times", "temps", "room", "goal", "words"),
    [
        ([20, 40], [70, 52], 21, 20, "never brings it"),
        ([20, 40], [52, 70], 21, 30, "do not fall"),
        ([40, 20], [70, 52], 21, 30, "times do not rise"),
        ([20, 40], [70, 15], 21, 30, "above the room"),
        ([20, 40], [700, 52], 21, 30, "no more than 150"),
        ([20, math.nan], [70, 52], 21, 30, "are numbers"),
        ([20, math.inf], [70, 52], 21, 30, "are numbers"),
        ([20, 40], [70, 52], 21, math.nan, "are numbers"),
    ],
)
def test_readings_that_cannot_be_are_refused(
    times: list[float], temps: list[float], room: float, goal: float, words: str
) -> None:
    with pytest.raises(OutOfRangeError, match=words):
        cool_left(times, temps, room_c=room, goal_c=goal)


@pytest.mark.parametrize(("times", "temps"), [([20], [70]), ([20, 40], [70])])
def test_one_reading_is_no_line(times: list[float], temps: list[float]) -> None:
    with pytest.raises(InputError, match="two or more"):
        cool_left(times, temps, room_c=21, goal_c=30)
