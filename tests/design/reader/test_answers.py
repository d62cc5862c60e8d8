"""Answers are edits of the text, by line number."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import InputError
from krume.design import apply_answers

TEXT = "Sponge\r\n5 eggs\n130 g sugar"


def test_a_line_is_put_in_place_and_the_line_ends_stay() -> None:
    assert apply_answers(TEXT, ["line 2=5 eggs, EU M"]) == "Sponge\r\n5 eggs, EU M\n130 g sugar"


def test_a_line_is_added_behind_another() -> None:
    assert apply_answers("a\nb", ["after line 1=x", "after line 2=y"]) == "a\nx\nb\ny"
    assert apply_answers("a\n", ["after line 0=x"]) == "x\na\n"


def test_several_answers_keep_the_texts_own_numbers() -> None:
    assert apply_answers("a\nb\nc", ["after line 1=x", "line 3=C"]) == "a\nx\nb\nC"


def test_an_answer_may_hold_an_equals_sign() -> None:
    assert apply_answers("a", ["line 1=b = c"]) == "b = c"


@pytest.mark.parametrize(
    "answer", ["", "5 eggs", "line=x", "line 0=x", "line 4=x", "line 1=a\nb", "after line 9=x"]
)
def test_an_answer_that_fits_no_line_is_named(answer: str) -> None:
    with pytest.raises(InputError) as caught:
        apply_answers(TEXT, [answer])
    assert answer.strip()[:20] in caught.value.message
    assert "Type it as" in caught.value.message


def test_one_line_cannot_be_answered_in_two_ways() -> None:
    with pytest.raises(InputError, match="answered twice"):
        apply_answers(TEXT, ["line 2=a", "line 2=b"])


@given(st.text(alphabet="ab\n\r", max_size=30))
def test_no_answer_changes_nothing(text: str) -> None:
    assert apply_answers(text, []) == text
