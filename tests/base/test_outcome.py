"""Answers that are not errors are plain, frozen values."""

import dataclasses

import pytest

from krume.base import Clash, Infeasible, Notice, Option, Problem, Read

VALUES = [
    Option("EU M", "5 eggs, EU M"),
    Problem("egg-size-missing", "line 4", "5 eggs", "Which size are the eggs?"),
    Notice("common-practice", "taken as 51 g"),
    Read(3.0),
    Clash("water activity", "<= 0.85", "sugar 18.0 %", "cap 15.0 %"),
    Infeasible((Clash("starch", "30..50 %", "55 %", "50 %"),)),
]


@pytest.mark.parametrize("value", VALUES, ids=lambda value: type(value).__name__)
def test_an_answer_cannot_be_changed_after_it_was_given(value: object) -> None:
    assert dataclasses.is_dataclass(value)
    name = dataclasses.fields(value)[0].name
    with pytest.raises(dataclasses.FrozenInstanceError):
        setattr(value, name, "something else")


@pytest.mark.parametrize("value", VALUES, ids=lambda value: type(value).__name__)
def test_an_answer_takes_no_field_nobody_declared(value: object) -> None:
    assert not hasattr(value, "__dict__")
    assert hash(value) == hash(value)


def test_a_reading_without_questions_has_none_rather_than_an_unknown_number() -> None:
    reading = Read("text")
    assert (reading.problems, reading.notices) == ((), ())
