"""Temperatures as a person reads them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import HEAT_UNITS, Interval, fahrenheit, heat, heat_text


@pytest.mark.parametrize(
    ("temp_c", "temp_f"), [(0.0, 32.0), (100.0, 212.0), (-40.0, -40.0), (170.0, 338.0)]
)
def test_the_two_scales_meet_where_they_must(temp_c: float, temp_f: float) -> None:
    assert fahrenheit(temp_c) == temp_f


@pytest.mark.parametrize(
    ("units", "said"),
    [(None, "170 °C"), ("c", "170 °C"), ("f", "338 °F"), ("both", "170 °C, 338 °F")],
)
def test_each_unit_has_its_words(units: str | None, said: str) -> None:
    assert heat_text(170.0, units) == said


def test_a_span_keeps_both_ends_and_celsius_its_digits() -> None:
    assert heat(Interval(93.0, 94.5, 96.0), "both") == ("93–96", "°C, 199–205 °F")
    assert heat_text(94.5, "c", 1) == "94.5 °C"
    assert heat_text(94.5, "f", 1) == "202 °F"


@given(st.floats(-50, 400), st.sampled_from(HEAT_UNITS))
def test_no_unit_is_said_that_was_not_asked_for(temp_c: float, units: str) -> None:
    said = heat_text(temp_c, units)
    assert ("°C" in said) == (units != "f")
    assert ("°F" in said) == (units != "c")
