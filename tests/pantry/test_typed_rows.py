"""Rows that a person typed: every one is kept, and a table that is none is asked about."""

import re

from krume.base import Problem
from krume.pantry.typed_rows import plain_word, split_outside, typed_day, typed_rows


def test_a_column_that_is_missing_is_asked_once_and_is_empty_in_every_row() -> None:
    problems: list[Problem] = []
    rows = list(typed_rows("a\n1\n2\n", "t.csv", ("a", "b"), problems))
    assert rows == [(2, {"a": "1", "b": ""}), (3, {"a": "2", "b": ""})]
    assert [problem.code for problem in problems] == ["column-missing"]


def test_a_row_without_a_word_is_none() -> None:
    assert list(typed_rows("a,b\n , \n1,2\n", "t.csv", ("a",), [])) == [(3, {"a": "1", "b": "2"})]


def test_a_row_longer_than_its_head_is_asked_about() -> None:
    problems: list[Problem] = []
    list(typed_rows("a\n1,2\n", "t.csv", ("a",), problems))
    assert [problem.code for problem in problems] == ["row-too-long"]


def test_only_year_month_day_is_a_day() -> None:
    assert typed_day("2027-06-12") is not None
    assert typed_day("12.6.2027") is None
    assert typed_day("2027-02-30") is None


def test_a_word_is_the_same_however_it_was_typed() -> None:
    assert plain_word("  Lab \t Test ") == "lab test"


def test_what_stands_in_brackets_is_not_split() -> None:
    assert split_outside("a,b (c,[d,e]),f", re.compile(",")) == ["a", "b (c,[d,e])", "f"]
