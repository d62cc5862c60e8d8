"""Two tins beside each other: common draws, words for the difference, what is asked."""

import math
from dataclasses import dataclass

import pytest

from krume.base import Interval
from krume.usecases import (
    Asked,
    BakeBeside,
    BakeResult,
    BakeWish,
    bake_formula,
    bake_with_more,
    load_demo,
)
from krume.usecases.bake.beside import _about, _in_words, sooner_min


@pytest.fixture(scope="module")
def studio(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    found = Asked(book=tmp_path_factory.mktemp("beside") / "book")
    load_demo(found)
    return found


@dataclass(frozen=True)
class Both:
    """A bake and its second tin."""

    own: BakeResult
    beside: BakeBeside
    minutes: tuple[Interval, Interval]
    sooner: Interval


@pytest.fixture(scope="module")
def dark(studio: Asked) -> Both:
    answer = bake_with_more("F1", BakeWish(beside="dark round 20 x 7 cm"), studio)
    own, beside = answer.result, answer.result.beside
    assert answer.exit_code == 0 and beside is not None
    assert own.minutes and beside.minutes and beside.sooner_min
    return Both(own, beside, (own.minutes, beside.minutes), beside.sooner_min)


def test_the_second_tin_has_the_minutes_it_would_have_alone(dark: Both, studio: Asked) -> None:
    alone = bake_formula("F1", BakeWish(tin="dark round 20 x 7 cm"), studio).result
    beside = dark.beside
    assert (beside.core_c, beside.depth_cm) == (alone.core_c, alone.depth_cm)
    assert (beside.rules, beside.done_by) == (alone.rules, alone.done_by)


def test_the_same_draws_say_more_of_the_difference_than_two_intervals(dark: Both) -> None:
    own, other = dark.minutes
    sooner = dark.sooner
    assert sooner.low > 0
    assert sooner.low > own.low - other.high
    assert sooner.high < own.high - other.low
    assert sooner.low <= own.best - other.best <= sooner.high


def test_the_words_are_those_of_the_interval(dark: Both) -> None:
    low, high = dark.sooner.low, dark.sooner.high
    assert dark.beside.text == f"The dark tin is ready {low:.0f} to {high:.0f} min sooner."


def test_equal_draws_in_equal_tins_are_no_difference() -> None:
    assert sooner_min([30.0, 20.0, 30.0, 40.0], [1.0, 20.0, 30.0, 40.0]) == Interval(0, 0, 0)
    endless = [0.0, *[math.inf] * 10]
    assert sooner_min(endless, [0.0, *[20.0] * 10]) is None
    assert sooner_min(endless, endless) == Interval(0, 0, 0)


@pytest.mark.parametrize(
    ("sooner", "said"),
    [
        (Interval(3, 7, 12), "The dark tin is ready 3 to 12 min sooner."),
        (Interval(-12, -7, -3), "The dark tin is ready 3 to 12 min later."),
        (Interval(0, 1, 2), "The dark tin is ready up to 2 min sooner."),
        (Interval(-2, -1, 0), "The dark tin is ready up to 2 min later."),
        (Interval(0, 0, 0), "The dark tin is ready at the same minute."),
        (
            Interval(-8, 6, 12),
            "The dark tin is ready most likely 6 min sooner; between 12 min sooner and 8 min "
            "later.",
        ),
        (
            Interval(-2, -0.3, 1),
            "The dark tin is ready at about the same minute; between 1 min sooner and 2 min later.",
        ),
        (
            None,
            "Which of both is ready first cannot be told: some bakes of the dark tin never end.",
        ),
    ],
)
def test_every_difference_has_its_sentence(sooner: Interval | None, said: str) -> None:
    assert _in_words("the dark tin", sooner) == said


def test_without_its_doubt_a_difference_says_so() -> None:
    said = "The dark tin is ready about 7 min sooner; how sure is not worked out yet."
    assert _about("the dark tin", 7.2) == said
    assert _about("the dark tin", -0.2) == "The dark tin is ready at about the same minute."


@pytest.mark.parametrize(
    ("typed", "code", "exit_code"),
    [
        ("round 20 cm", "beside-the-same", 3),
        ("round 8 in", "", 0),
        ("huh", "tin-not-read", 3),
        ("round", "tin-size-missing", 3),
        ("round 12 x 3 cm", "limits-clash", 4),
    ],
)
def test_what_is_no_second_tin_is_asked_beside_its_option(
    studio: Asked, typed: str, code: str, exit_code: int
) -> None:
    answer = bake_with_more("F1", BakeWish(beside=typed), studio)
    assert answer.exit_code == exit_code
    assert [problem.code for problem in answer.problems] == ([code] if code else [])
    assert all(problem.where == "--beside" for problem in answer.problems)
    assert answer.result.minutes is not None
    assert (answer.result.beside is None) == bool(code)
