"""A name means a file first, then a text of the book; nothing is guessed."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from krume.base import InputError
from krume.store import Book, add_texts
from krume.usecases import Asked, QuestionError
from krume.usecases.asking.text import answers_to_lines, text_of
from tests.usecases.conftest import PLAIN


@pytest.mark.parametrize(
    ("name", "meant"),
    [("F1", "F1"), ("f1", "F1"), ("orl hazel SPONGE", "F1"), ("formulas/F1.txt", "F1"),
     ("101", "101"), ("TART", "TART"), ("class7", "CLASS7")],
)  # fmt: skip
def test_names_of_the_book_resolve(demo: Asked, name: str, meant: str) -> None:
    assert text_of(name, demo).name == meant


def test_a_file_comes_before_a_name_of_the_book(
    demo: Asked, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "F1").write_text(PLAIN, encoding="utf-8")
    found = text_of("F1", demo)
    assert found.text == PLAIN
    assert found.kind is None


def test_where_a_name_is_of_the_book_no_file_that_lies_about_is_read(
    demo: Asked, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "formulas").mkdir()
    for place in ("F1", "formulas/F1.txt", "F12"):
        (tmp_path / place).write_text(PLAIN, encoding="utf-8")
    of_book = replace(demo, is_of_book=True)
    held = text_of("F1", of_book)
    assert (held.name, held.kind) == ("F1", "formula")
    assert text_of("formulas/F1.txt", of_book).text == held.text != PLAIN
    with pytest.raises(QuestionError, match=r"There is no F12: the book at .* has no text"):
        text_of("F12", of_book)


def test_a_folder_of_that_name_does_not_hide_the_book(
    demo: Asked, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "F1").mkdir()
    assert text_of("F1", demo).kind == "formula"


def test_a_dash_is_the_text_typed_in(bare: Asked) -> None:
    assert text_of("-", replace(bare, typed=PLAIN.encode())).text == PLAIN


def test_a_folder_asks_for_the_text_inside(bare: Asked, tmp_path: Path) -> None:
    with pytest.raises(QuestionError, match="is a folder"):
        text_of(str(tmp_path), bare)


def test_a_missing_name_says_where_it_was_looked_for(bare: Asked, demo: Asked) -> None:
    with pytest.raises(QuestionError, match=r"There is no file F1 here, and no book at .*no-book"):
        text_of("F1", bare)
    with pytest.raises(QuestionError, match="has no text of that name") as caught:
        text_of("F12", demo)
    assert "F1" in [option.line for option in caught.value.problem.options]
    assert caught.value.exit_code == 3


def test_looking_for_a_text_makes_no_book(bare: Asked) -> None:
    with pytest.raises(QuestionError):
        text_of("F1", bare)
    assert bare.book is not None
    assert not bare.book.exists()


@pytest.mark.parametrize("name", ["a\0b", "x" * 5000, "../../etc/passwd-none", ""])
def test_strange_names_are_not_found_and_nothing_more(bare: Asked, name: str) -> None:
    with pytest.raises(QuestionError):
        text_of(name, bare)


def test_a_name_the_book_has_twice_is_asked_and_each_answer_settles_it(tmp_path: Path) -> None:
    add_texts(Book(tmp_path), {"formulas/A.txt": b"One sponge\n", "tortes/A.txt": b"One torte\n"})
    asked = Asked(book=tmp_path)
    with pytest.raises(QuestionError) as caught:
        text_of("A", asked)
    options = caught.value.problem.options
    assert [o.label for o in options] == ["formula A, One sponge", "torte A, One torte"]
    kinds = [text_of("A", replace(asked, answers=(f"FILE={o.line}",))).kind for o in options]
    assert kinds == ["formula", "torte"]


def test_an_answer_is_an_edit_of_its_line(bare: Asked, write: Callable[[str], str]) -> None:
    asked = replace(bare, answers=("line 5=5 eggs, EU M",))
    assert text_of(write(PLAIN), asked).text == PLAIN.replace("5 eggs", "5 eggs, EU M")


def test_an_answer_to_a_line_that_is_not_there_is_refused(
    bare: Asked, write: Callable[[str], str]
) -> None:
    with pytest.raises(InputError, match="99"):
        text_of(write(PLAIN), replace(bare, answers=("line 99=x",)))


def test_answers_to_options_do_not_touch_the_text() -> None:
    asked = Asked(answers=("line 4=a=b", "--tin=round 20 cm", "FILE=F1", "--tin=round 8 in"))
    assert answers_to_lines(asked) == ("line 4=a=b",)
    assert asked.answer_for("--tin") == "round 8 in"
    assert asked.answer_for("--tin 2") is None
