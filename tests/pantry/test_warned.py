"""A warning whose words are not understood is unknown, and never none."""

from datetime import date

import pytest

from krume.pantry import LotRecord, read_lots, record_state
from krume.pantry.warned import warning_unread

HEAD = "lot,ingredient,evidence,text,result_mg_kg,from,valid_to\n"
GOOD = "L-9,ground walnuts,lab test,,<5,2027-04-04,2028-04-04\n"
KINDS = ("may contain", "words on the bag", "own handling", "specification", "lab test")
BAD = (
    "kann Roggen, Dinkel enthalten", "kann Getreide enthalten", "may contain cereals",
    "may contain grains", "not suitable for coeliacs", "unsuitable for celiac disease",
    "may contain everything", "packed where it may also contain wheat", "peut contenir du lait",
)  # fmt: skip
WORDS = ("Weizen", "Weizenmehl", "cereals", "blé", "trigo", "Hafer", "???", "everything", "spelt")


def state(kind: str, text: str) -> str:
    """State of good walnuts with one more paper."""
    (lot,) = read_lots(f'{HEAD}{GOOD}L-9,ground walnuts,{kind},"{text}",,2027-04-04,\n').value
    return record_state(lot, on=date(2027, 6, 10))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("text", BAD)
def test_a_warning_that_may_mean_a_grain_shuts_in_every_kind_of_paper(kind: str, text: str) -> None:
    assert state(kind, text) == "conflict"


@pytest.mark.parametrize("kind", KINDS[:4])
@pytest.mark.parametrize("text", WORDS)
def test_a_grain_in_another_language_and_a_question_shut(kind: str, text: str) -> None:
    assert state(kind, text) == "conflict"


@pytest.mark.parametrize("text", ["", "something", "milk, something"])
def test_a_row_that_warns_without_words_that_are_known_shuts(text: str) -> None:
    assert state("may contain", text) == "conflict"


@pytest.mark.parametrize(
    "text",
    ["milk, nuts and soya", "may contain traces of sesame", "without peanuts, may contain sesame"],
)
def test_a_warning_of_known_things_that_are_no_grain_leaves_it_open(text: str) -> None:
    assert state("may contain", text) == "good"


@pytest.mark.parametrize(
    "text", ["ohne Weizen", "Buchweizen", "weizenfrei", "suitable for coeliacs", "no wheat or rye"]
)
def test_a_plain_denial_and_a_name_that_only_ends_like_a_grain_leave_it_open(text: str) -> None:
    assert state("words on the bag", text) == "good"


def test_what_is_not_understood_is_said_in_its_own_words() -> None:
    assert warning_unread(LotRecord("may-contain", notes="milk, grains")) == "grains"
    assert warning_unread(LotRecord("may-contain")) == "a warning without words"
    assert warning_unread(LotRecord("may-contain", notes="oats")) == "oats"
