"""What is made anew: grams from the torte, minutes one after another, inside the working hours."""

from datetime import UTC, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.plan import usual_kitchen
from krume.usecases import Asked
from krume.usecases.keep.fridge_result import FridgeRemake
from krume.usecases.keep.remake import begin_by, remake_of
from krume.usecases.sold.product import sold_of

KITCHEN = usual_kitchen()
READY = datetime(2027, 6, 12, 14, 0, tzinfo=UTC)


def needing(work_min: float | None, wait_min: float) -> FridgeRemake:
    return FridgeRemake("T", "T", 1, (), work_min, wait_min)


def test_the_minutes_of_a_torte_are_those_of_its_steps_one_after_another(demo: Asked) -> None:
    (sold,) = sold_of("T1", demo).sold
    found = remake_of(sold, None, demo)
    cake = 6 + 0.8 * 5 + 16 + 38 + 90 + 1
    creams = (20 + 120 + 8) + 15 + (5 + 30)
    assert found.work_min == pytest.approx(cake + creams + 16 + 30 + 12)
    assert found.wait_min == 240


def test_short_work_ends_where_the_box_and_the_cold_begin() -> None:
    assert begin_by((needing(60, 240),), READY, KITCHEN) == datetime(2027, 6, 12, 8, 58, tzinfo=UTC)


def test_what_does_not_fit_into_the_day_goes_back_to_the_evening_before() -> None:
    found = begin_by((needing(238, 240),), READY, KITCHEN)
    assert found is not None
    assert (found.day, found.hour, found.minute) == (11, 19, 30)


def test_unknown_minutes_give_no_moment() -> None:
    assert begin_by((needing(None, 60),), READY, KITCHEN) is None
    assert begin_by((), READY, KITCHEN) is None


@settings(max_examples=100)
@given(st.floats(1, 3000), st.floats(0, 600), st.floats(1, 300))
def test_more_work_never_begins_later(work: float, wait: float, more: float) -> None:
    soon = begin_by((needing(work, wait),), READY, KITCHEN)
    sooner = begin_by((needing(work + more, wait),), READY, KITCHEN)
    assert soon is not None
    assert sooner is not None
    assert sooner <= soon
    minute = soon.hour * 60 + soon.minute
    assert KITCHEN.begins_min <= minute <= KITCHEN.closes_min
