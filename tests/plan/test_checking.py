"""The second look sees each kind of fault, and nothing in a schedule that holds."""

from dataclasses import replace

import pytest

from krume.plan import Closed, Gap, Hold, Job, Project, faults

OVEN = (("oven", 1),)
PROJECT = Project(
    (
        Job("foam", 16, (("hands", 1),), release=10),
        Job("load", 2, (("hands", 1), ("oven", 1))),
        Job("bake", 38, OVEN),
        Job("next", 2, OVEN, deadline=120),
    ),
    (("hands", 1), ("oven", 1), ("fridge", 1)),
    (Gap("foam", "load", 0, 10), Gap("load", "bake", 0, 0), Gap("bake", "next", 5)),
    (Hold("fridge", 1, "foam", "load"), Hold("fridge", 1, "bake", "next", from_end=True)),
    (Closed("hands", 200, 300, 1),),
    400,
)
GOOD = {"foam": 10, "load": 26, "bake": 28, "next": 71}


def test_a_schedule_that_holds_has_no_fault() -> None:
    assert faults(PROJECT, GOOD) == ()


@pytest.mark.parametrize(
    ("name", "start", "word"),
    [
        ("foam", 9, "before 10"),
        ("load", 37, "at most 10"),
        ("load", 25, "at least 0"),
        ("bake", 29, "at most 0"),
        ("next", 70, "at least 5"),
        ("next", 119, "after 120"),
        ("next", 399, "past the horizon"),
        ("next", 30, "oven: 2 of 1"),
        ("foam", 27, "hands: 2 of 1"),
        ("foam", 200, "hands: 2 of 1"),
    ],
)
def test_a_broken_schedule_is_caught(name: str, start: int, word: str) -> None:
    assert any(word in fault for fault in faults(PROJECT, {**GOOD, name: start}))


def test_a_job_left_out_and_a_stranger_are_caught() -> None:
    short = {name: start for name, start in GOOD.items() if name != "bake"}
    assert "bake is not placed" in faults(PROJECT, short)
    assert "nobody is no job of this project" in faults(PROJECT, {**GOOD, "nobody": 0})


def test_places_held_too_long_are_counted() -> None:
    tight = replace(PROJECT, holds=(*PROJECT.holds, Hold("fridge", 1, "load", "next")))
    assert any(fault.startswith("fridge: 2 of 1") for fault in faults(tight, GOOD))


def test_of_a_choice_exactly_one_is_done() -> None:
    either = Project((Job("a", 1, either="x"), Job("b", 1, either="x")), horizon=5)
    assert faults(either, {"a": 0}) == ()
    assert faults(either, {}) == ("0 of the jobs x are placed, not 1",)
    assert faults(either, {"a": 0, "b": 0}) == ("2 of the jobs x are placed, not 1",)
