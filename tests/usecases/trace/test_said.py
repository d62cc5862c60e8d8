"""What is typed of the bags: a lot of an ingredient, a batch's day or code."""

from datetime import date

import pytest

from krume.base import InputError
from krume.usecases import Asked
from krume.usecases.trace.bags import Bags, bags_of
from krume.usecases.trace.house import HouseLot
from krume.usecases.trace.said import bags_said, lots_answered

DAY = date(2027, 6, 10)


def _bags() -> tuple[Bags, ...]:
    lines = (("eggs", "egg-whole-fresh"), ("fine salt", "salt"))
    return tuple(bags_of(name, "", lines, DAY, ()) for name in ("F1", "F 10"))


def test_a_lot_is_of_one_formula_or_of_all() -> None:
    said = bags_said(_bags(), ("eggs=E-1", "f 10 Fine  salt=S-1, S-2", "F1 fine salt=?"), ())
    assert said["F1"].lots == {"eggs": ("E-1",), "fine salt": ()}
    assert said["F 10"].lots == {"eggs": ("E-1",), "fine salt": ("S-1", "S-2")}


def test_a_batch_is_a_day_a_code_or_not_known() -> None:
    said = bags_said(_bags(), (), ("F1=2027-06-09", "f 10=B270609-1"))
    assert said["F1"].made_on == date(2027, 6, 9)
    assert said["F 10"].batch == "B270609-1"
    assert bags_said(_bags(), (), ("F1=?",))["F1"].is_unknown


@pytest.mark.parametrize(
    ("lots", "batches", "words"),
    [
        (("butter=B-1",), (), "no ingredient of it. There are: eggs, fine salt."),
        ((), ("F2=2027-06-09",), "none of its formulas. There are: F1, F 10."),
        (("eggs",), (), "does not say of what"),
        (("=E-1",), (), "does not say of what"),
        ((), ("F1",), "does not say of what"),
    ],
)
def test_a_name_that_is_none_is_refused_with_those_there_are(
    lots: tuple[str, ...], batches: tuple[str, ...], words: str
) -> None:
    with pytest.raises(InputError, match=words):
        bags_said(_bags(), lots, batches)


def test_a_mark_of_the_house_with_a_comma_is_one_mark() -> None:
    house = (HouseLot("A, 7", "eggs", "", None, None),)
    bags = (bags_of("F1", "", (("eggs", "egg-whole-fresh"),), DAY, house),)
    assert bags_said(bags, ("eggs=a, 7",), ())["F1"].lots == {"eggs": ("A, 7",)}


def test_answers_about_lots_are_told_from_edits_of_a_text() -> None:
    answers = (
        "line 4=5 eggs",
        "F1 after line 2=x",
        "F1 eggs=E-1",
        "NAME=lot L-1",
        "--ingredient=x",
    )
    asked, mine = lots_answered(Asked(answers=answers))
    assert mine == ("F1 eggs=E-1",)
    assert asked.answers == tuple(a for a in answers if a not in mine)
