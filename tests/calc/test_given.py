"""Inputs of one sum as given: missing ones named at once, choices, unknown."""

import pytest

from krume.base import InputError
from krume.calc.given import given
from krume.calc.registry import SUMS


def test_everything_missing_is_named_at_once_with_an_example() -> None:
    with pytest.raises(InputError) as caught:
        given(SUMS["specific-gravity"], {"water": 318})
    assert "empty" in caught.value.message and "batter" in caught.value.message
    assert caught.value.message.endswith("specific-gravity empty=82 water=318 batter=195.3")


def test_an_unknown_where_a_number_is_needed_counts_as_missing() -> None:
    with pytest.raises(InputError, match="needs sodium"):
        given(SUMS["salt"], {"sodium": "?"})
    assert given(SUMS["tcs"], {"aw": "?", "ph": 5}).maybe("aw") is None


def test_a_choice_is_one_of_its_words() -> None:
    found = given(SUMS["tin-volume"], {"shape": "Ring Mould"})
    assert found.text("shape") == "ring-mould"
    wrong = given(SUMS["tin-volume"], {"shape": "rond"})
    with pytest.raises(InputError, match="Did you mean round"):
        wrong.text("shape")


def test_a_choice_that_is_missing_is_asked_by_its_words() -> None:
    with pytest.raises(InputError) as caught:
        given(SUMS["heating-series"], {})
    assert caught.value.message == (
        "heating-series needs shape (slab, cylinder or short-cylinder). For example: "
        "heating-series shape=slab biot=1 fourier=1"
    )


def test_absent_inputs_are_none_or_zero_only_where_the_sum_says_so() -> None:
    found = given(SUMS["roll"], {"length": 38, "thickness": 1})
    assert found.maybe("cream") is None
    assert found.or_zero("cream") == 0.0
    assert not found.has("cream")
    with pytest.raises(InputError):
        found.number("cream")


def test_notices_and_sources_are_gathered_once() -> None:
    found = given(SUMS["salt"], {"sodium": 1})
    found.note("code", "text")
    for source in ("a", "a", ""):
        found.cite(source)
    assert (len(found.notices), found.sources) == (1, ["a"])
