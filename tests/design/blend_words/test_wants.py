"""What a blend should hold: words and grams, or the question."""

import pytest

from krume.design import PROPERTY_WORDS, property_named, read_wants


def test_a_profile_is_read_with_decimal_points_or_commas() -> None:
    read = read_wants("protein 6, fat 1,1; fiber: 2.6 g", where="--want")
    assert read.value == {"protein": 6.0, "fat": 1.1, "fibre": 2.6}


@pytest.mark.parametrize(
    "text", ["", "protein", "taste 6", "protein 600", "protein -6", "protein 6, protein 7"]
)
def test_what_is_not_read_is_asked_with_an_example_that_is(text: str) -> None:
    read = read_wants(text, where="--want")
    assert read.value == {}
    (problem,) = read.problems
    assert problem.where == "--want"
    assert read_wants(problem.options[0].line, where="--want").problems == ()


def test_each_property_is_found_by_each_of_its_words() -> None:
    for name, words in PROPERTY_WORDS.items():
        assert {property_named(word.upper()) for word in words} == {name}
