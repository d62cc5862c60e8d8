"""Browning at one temperature: the printed value, and its limits."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.bake import browning_delta_e
from krume.base import OutOfRangeError
from tests.agreement import agrees


@pytest.mark.source("reference-book", "bake model, browning 15 min at 150 C")
def test_fifteen_minutes_at_150_degrees_are_the_printed_colour() -> None:
    found = browning_delta_e(15.0, temp_c=150.0)
    assert agrees(found, "19.032", within="0.005", why="the book's own tolerance")


@given(time=st.floats(0.1, 60.0), temp=st.floats(100.0, 240.0))
def test_longer_and_hotter_is_browner_up_to_a_limit(time: float, temp: float) -> None:
    found = browning_delta_e(time, temp_c=temp)
    assert 0 < found <= 52
    assert browning_delta_e(time * 1.1, temp_c=temp) >= found
    assert browning_delta_e(time, temp_c=temp + 5) >= found


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRangeError):
        browning_delta_e(-1.0, temp_c=150.0)
    with pytest.raises(OutOfRangeError):
        browning_delta_e(10.0, temp_c=300.0)
