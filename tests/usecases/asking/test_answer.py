"""An answer knows its exit code; a clash names its limits."""

from krume.base import Clash, Infeasible, Problem
from krume.usecases import Answer, Explanation, QuestionError
from krume.usecases.asking.answer import clash_problems

QUESTION = Problem("egg-size-missing", "line 4", "5 eggs", "Which size?")


def test_an_answer_without_questions_is_exit_0() -> None:
    answer = Answer("fine")
    assert answer.is_answered
    assert answer.exit_code == 0


def test_an_open_question_is_exit_3() -> None:
    answer = Answer("half", (QUESTION,))
    assert not answer.is_answered
    assert answer.exit_code == 3


def test_limits_that_clash_are_exit_4() -> None:
    answer = Answer("none", (QUESTION,), is_possible=False)
    assert not answer.is_answered
    assert answer.exit_code == 4


def test_an_explanation_changes_nothing_else() -> None:
    why = Explanation("egg", 242.9, "%", "255 g of 105 g", "derived")
    answer = Answer("fine", (QUESTION,)).explained(why)
    assert answer.explain is why
    assert answer.problems == (QUESTION,)


def test_each_clash_names_its_limit_what_is_needed_and_what_is_there() -> None:
    clash = Clash("rim", "at most 5 cm", "6.1 cm of batter", "a tin 5 cm high")
    (problem,) = clash_problems(Infeasible((clash,)), "--tin")
    assert problem.where == "--tin"
    for word in ("rim", "at most 5 cm", "6.1 cm of batter", "a tin 5 cm high"):
        assert word in problem.ask


def test_a_clash_that_says_itself_is_told_in_its_own_sentence() -> None:
    said = "542 g stands 7.3 cm deep in a tin of 4 cm; 296 g fit."
    clash = Clash("tin height", "4 cm", "7.3 cm for 542 g", "4 cm", said)
    (problem,) = clash_problems(Infeasible((clash,)), "--tin")
    assert (problem.ask, problem.read) == (said, "tin height: 4 cm")


def test_a_request_that_asks_back_carries_its_question() -> None:
    error = QuestionError(QUESTION)
    assert error.problem is QUESTION
    assert (error.where, error.got, error.exit_code) == ("line 4", "5 eggs", 3)
