"""A page shows a person's own words as they are, in any width, and never lets them act."""

import pytest

from krume.base import Option, Problem
from krume.cli.page import Page, show_problems, visible

EGGS = Problem(
    "egg-size-missing",
    "line 4",
    "5 eggs",
    "Which size are the eggs?",
    (Option("EU M", "5 eggs, EU M"), Option("it's said", "5 eggs, it's EU L")),
)


def page(width: int = 80) -> Page:
    return Page(width=width, colour=False)


def test_control_signs_of_a_text_do_not_reach_the_terminal() -> None:
    assert visible("85 g\x1b[31m flour\x07\u202e") == "85 g\ufffd[31m flour\ufffd\ufffd"


def test_right_to_left_words_are_set_apart() -> None:
    assert visible("85 g קמח") == "\u206885 g קמח\u2069"
    assert visible("85 g flour") == "85 g flour"


def test_markup_and_emoji_names_stay_as_typed() -> None:
    shown = page()
    shown.line("[bold]85 g[/] :egg: flour")
    assert shown.text() == "[bold]85 g[/] :egg: flour\n"


def test_a_page_without_a_terminal_has_no_colour_signs() -> None:
    shown = page()
    shown.title("Orl hazel sponge")
    assert shown.text() == "Orl hazel sponge\n"


def test_a_page_on_a_terminal_may_be_bold() -> None:
    shown = Page(width=80, colour=True)
    shown.title("Orl hazel sponge")
    assert "Orl hazel sponge" in shown.text() and "\x1b[" in shown.text()


@pytest.mark.parametrize("width", [20, 40, 80])
def test_paragraphs_and_rows_keep_within_the_width(width: int) -> None:
    shown = page(width)
    shown.line("a long sentence about eggs and flour " * 4, indent=3)
    shown.rows([("12.5", "ground hazelnuts, toasted and cooled", "g")], right=(0,), indent=2)
    shown.columns("85 g buckwheat flour, fine", "85 g buckwheat flour", width // 2, indent=2)
    lines = shown.text().splitlines()
    assert max(len(line) for line in lines) <= width
    assert "".join(shown.text().split()).count("hazelnuts") == 1


def test_a_path_is_never_wrapped() -> None:
    path = "/a/very/long/path/" + "x" * 90 + ".pdf"
    shown = page(40)
    shown.whole(path)
    assert shown.text() == path + "\n"


def test_a_question_comes_with_words_ready_to_copy() -> None:
    shown = page(40)
    show_problems(shown, (EGGS,))
    text = shown.text()
    assert text.startswith("1 question first. Nothing was changed.\n")
    assert "Which size are the eggs?" in text
    assert "--answer 'line 4=5 eggs, EU M'\n" in text
    assert """--answer 'line 4=5 eggs, it'"'"'s EU L'\n""" in text


def test_several_questions_are_counted_and_none_says_nothing() -> None:
    shown, silent = page(), page()
    show_problems(shown, (EGGS, EGGS))
    show_problems(silent, ())
    assert shown.text().startswith("2 questions first.")
    assert silent.text() == ""


def test_clashing_limits_are_no_questions() -> None:
    shown = page()
    show_problems(shown, (EGGS,), clash=True)
    assert shown.text().startswith("No answer within these limits.\n")
