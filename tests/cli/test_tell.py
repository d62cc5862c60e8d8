"""A page for a person: questions first, then the answer, then what was taken as read."""

from collections.abc import Callable
from pathlib import Path

from tests.cli.conftest import Run

TEXT = "Plain sponge\n\n100 g white rice flour\n5 eggs\n120 g caster sugar\n"


def test_questions_come_first_and_what_is_known_follows(
    run: Run, write: Callable[[str], str], own_book: Callable[[dict[str, str]], Path]
) -> None:
    said = run("read", write(TEXT), "--book", str(own_book({})))
    assert said.code == 3
    assert said.out.startswith("1 question first. Nothing was changed.\n")
    assert "--answer 'line 4=" in said.out
    assert said.out.index("--answer") < said.out.index("Plain sponge")
    assert "100 g white rice flour" in said.out


def test_what_was_assumed_comes_last(run: Run) -> None:
    said = run("check", "F1").out
    assert said.index("Orl hazel sponge") < said.index("Taken as read")


def test_an_explanation_names_how_status_doubt_and_source(run: Run) -> None:
    said = run("check", "F2", "--explain", "egg").out
    assert said.startswith("percent.egg: 242.86 %\n255 g over 105 g of flour, times 100.\n")
    for word in ("Usual: 200–340 %", "Status: derived", "Doubt: line 13", "Source: "):
        assert word in said


def test_a_page_of_limits_that_clash_names_them(run: Run) -> None:
    said = run("size", "F2", "--tin", "round 20 x 5 cm", "--depth", "6")
    assert said.code == 4
    assert said.out.startswith("No answer within these limits.\n")
