"""Names and grams as they are typed at the bowl."""

from collections.abc import Callable
from pathlib import Path

import pytest

from krume.base import InputError
from krume.design import read
from krume.usecases import Asked, SlipWish, rescue_slip
from krume.usecases.slip.words import BowlWords

TWICE = "Sponge\nEggs: EU sizes\n\n60 g caster sugar\n2 eggs, medium\n70 g caster sugar\n1 g salt\n"


def _words(text: str, *answers: str) -> BowlWords:
    asked = Asked(book=Path("no-book"), answers=answers)
    return BowlWords(read(text).value, asked, 0.1, 5000.0)


def test_two_lines_of_one_name_are_told_apart_by_their_numbers() -> None:
    found = _words(TWICE).weighed("sugar=66", "--weighed")
    assert found.problem is not None
    assert [option.line for option in found.problem.options] == ["line 4=66", "line 6=66"]
    answered = _words(TWICE, "--weighed=line 6=66").weighed("sugar=66", "--weighed")
    assert (answered.line, answered.mass_g) == (2, 66.0)


def test_eggs_are_counted_by_their_own_mass() -> None:
    assert _words(TWICE).weighed("eggs=3 eggs", "--weighed").mass_g == pytest.approx(153.0)


def test_a_name_alone_is_a_line() -> None:
    assert _words(TWICE).line("salt", "--no-more").line == 3
    asks = _words(TWICE).line("sugar", "--no-more").problem
    assert asks is not None
    assert [option.line for option in asks.options] == ["line 4", "line 6"]


def test_a_large_weight_offers_what_was_likelier_meant_first() -> None:
    asks = _words(TWICE).weighed("salt=12", "--weighed").problem
    assert asks is not None
    assert [option.line for option in asks.options] == ["salt=1.2", "salt=12"]


@pytest.mark.parametrize(("said", "count"), [("whites of 2 eggs", 2), ("1 white", 1), ("2", 2)])
def test_whites_are_counted(said: str, count: int) -> None:
    assert _words(TWICE).whites(said) == count


@pytest.mark.parametrize("said", ["whites of 3 eggs", "2 yolks", "some", "-2"])
def test_other_whites_are_refused(said: str) -> None:
    with pytest.raises(InputError):
        _words(TWICE).whites(said)


def test_a_small_bare_number_of_eggs_is_asked_grams_or_eggs(demo: Asked) -> None:
    answer = rescue_slip("F2", SlipWish(("eggs=6",)), demo)
    assert answer.exit_code == 3
    (problem,) = answer.problems
    assert problem.code == "grams-or-eggs"
    assert [o.line for o in problem.options] == ["eggs=6 eggs", "eggs=6 g"]
    held = rescue_slip("F2", SlipWish(("eggs=6 eggs",)), demo).result.in_bowl[0]
    assert held.weighed_g == 306.0
    assert rescue_slip("F2", SlipWish(("eggs=6 g",)), demo).exit_code == 0


@pytest.mark.parametrize(("name", "grams"), [("F2", "46"), ("F3", "30"), ("F1", "15")])
def test_rice_alone_is_the_rice_that_is_not_sweet(demo: Asked, name: str, grams: str) -> None:
    answer = rescue_slip(name, SlipWish((f"rice={grams}",)), demo)
    assert answer.exit_code == 0
    assert answer.result.in_bowl[0].name == "white rice flour"


@pytest.mark.parametrize("text", ["", "   \n", "Only a title\n"])
def test_a_text_without_a_line_is_asked_and_nothing_fails(
    bare: Asked, write: Callable[[str], str], text: str
) -> None:
    answer = rescue_slip(write(text), SlipWish(("white rice flour=70",)), bare)
    assert answer.exit_code == 3
    assert answer.result.options == ()


def test_the_line_most_like_what_was_typed_is_asked_first_and_no_grams_are_not_nought() -> None:
    text = "Sponge\n\n40 g white rice flour\n20 g teff flour\nsome butter\n"
    asks = _words(text).weighed("tef=26", "--weighed").problem
    assert asks is not None
    assert asks.options[0].line == "teff flour=26"
    shown = [option.label for option in asks.options]
    assert "butter, no grams planned" in shown
    assert not any("planned 0 g" in label for label in shown)
