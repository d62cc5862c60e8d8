"""The options every command takes: --json, --book, --answer, --on."""

from collections.abc import Callable
from pathlib import Path

import pytest

from krume.cli.group import COMMANDS
from tests.cli.conftest import Run

TEXT = "Plain sponge\n\n100 g white rice flour\n5 eggs\n120 g caster sugar\n"


@pytest.mark.parametrize("name", [n for n in COMMANDS if n != "book"])
def test_every_command_takes_them(run: Run, name: str) -> None:
    said = run(name, "--help").out
    assert all(option in said for option in ("--json", "--book", "--answer", "--on"))


def test_a_named_book_comes_before_the_environments(
    run: Run, own_book: Callable[[dict[str, str]], Path]
) -> None:
    book = own_book({"formulas/F1.txt": TEXT.replace("5 eggs", "5 eggs, EU M")})
    assert run("read", "F1", "--json").json["result"]["name"] == "Orl hazel sponge"
    own = run("read", "F1", "--json", "--book", str(book))
    assert own.json["result"]["name"] == "Plain sponge"


def test_answers_are_repeatable_and_later_words_may_hold_the_equals_sign(
    run: Run, write: Callable[[str], str], own_book: Callable[[dict[str, str]], Path]
) -> None:
    book = str(own_book({}))
    words = ("read", write(TEXT), "--book", book, "--answer", "line 1=A=B")
    said = run(*words, "--answer", "line 4=5 eggs, EU M", "--json")
    assert said.code == 0, said.json["problems"]
    assert said.json["result"]["name"] == "A=B"


def test_an_answer_without_a_place_is_wrong_usage(run: Run) -> None:
    said = run("read", "F1", "--answer", "5 eggs, EU M")
    assert said.code == 2
    assert "names no place" in said.err


@pytest.mark.parametrize("day", ["10.6.2027", "2027-02-30", "soon"])
def test_a_day_that_is_none_is_wrong_usage(run: Run, day: str) -> None:
    assert run("check", "F1", "--on", day).code == 2


def test_a_dash_reads_what_is_typed_in(run: Run) -> None:
    said = run("read", "-", "--json", typed=TEXT.replace("5 eggs", "5 eggs, EU M"))
    assert said.code == 0
    assert said.json["result"]["name"] == "Plain sponge"


@pytest.mark.parametrize(
    "words", [("oven", "--until"), ("label", "F1", "--made"), ("read", "F1", "--on")]
)
def test_what_is_no_day_shows_how_a_day_is_typed(run: Run, words: tuple[str, ...]) -> None:
    said = run(*words, "nonsense")
    assert said.code == 2
    assert "'nonsense' is no day. Type it as 2027-06-10." in " ".join(said.err.split())
