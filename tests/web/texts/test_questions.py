"""Questions at the lines of a text, and those that stand at none."""

from krume.base import Option, Problem
from krume.web.texts.questions import asked_by_line, elsewhere, own_lines

_SIZE = Problem("size", "line 2", "5 eggs", "Which size?", (Option("EU M", "5 eggs, EU M"),))
_TIN = Problem("tin", "after line 1", "", "Which tin?")
_INNER = Problem("flour", "F1 line 2", "flour", "Which flour?")
_MORE = Problem("kept", "line 2", "5 eggs", "How old?")


def test_every_line_stands_there_with_all_that_is_asked_about_it() -> None:
    lines = own_lines("Cake\n5 eggs\n\n1 g salt\n", (_SIZE, _TIN, _MORE))
    assert [line.own for line in lines] == ["Cake", "5 eggs", "", "1 g salt"]
    assert [[q.ask for q in line.questions] for line in lines] == [
        [], ["Which size?", "How old?"], [], [],
    ]  # fmt: skip


def test_a_question_without_a_line_stands_elsewhere() -> None:
    assert [q.where for q in elsewhere((1, 2), (_SIZE, _TIN, _INNER))] == [
        "after line 1", "F1 line 2",
    ]  # fmt: skip


def test_only_a_line_of_this_text_is_answered_here() -> None:
    asked = asked_by_line((_SIZE, _TIN, _INNER))
    assert asked["line 2"][0].is_of_this_text
    assert asked["after line 1"][0].is_of_this_text
    assert not asked["F1 line 2"][0].is_of_this_text
