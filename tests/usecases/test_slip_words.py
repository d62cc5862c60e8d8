"""Names and grams as they are typed at the bowl."""

from pathlib import Path

import pytest

from krume.base import InputError
from krume.design import read
from krume.usecases import Asked
from krume.usecases.slip_words import BowlWords

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
