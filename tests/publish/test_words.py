"""Numbers as a sheet prints them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval
from krume.publish.words import grams, grouped, listed, shown, span


@pytest.mark.parametrize(
    ("value", "text"),
    [(0, "0"), (0.25, "0.25"), (87.5, "87.5"), (1195, "1\u202f195"), (26.666667, "26.7")],
)
def test_grams_keep_what_is_exact_and_round_the_rest(value: float, text: str) -> None:
    assert grams(value) == text


def test_a_number_is_grouped_from_the_point_to_the_left() -> None:
    assert grouped("-1234567.891") == "-1\u202f234\u202f567.891"


@given(st.floats(0, 20000).map(lambda v: round(v, 3)), st.sampled_from((0.1, 1.0)))
def test_what_the_scale_shows_is_within_half_a_step(value: float, step_g: float) -> None:
    number = float(shown(value, step_g).replace("\u202f", ""))
    assert abs(number - value) <= step_g / 2 + 1e-9
    assert (number / step_g) == pytest.approx(round(number / step_g), abs=1e-6)


def test_a_half_step_is_shown_as_the_step_above() -> None:
    assert shown(70.25, 0.1) == "70.3"
    assert shown(2.5, 1.0) == "3"


def test_an_interval_that_is_settled_is_one_number() -> None:
    assert span(Interval(30, 30, 30)) == "30"
    assert span(Interval(34, 37, 40)) == "34–40"


def test_a_list_says_each_word_once() -> None:
    assert listed(("egg", "milk", "egg")) == "egg, milk"
