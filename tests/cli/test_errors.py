"""Every error becomes its exit code and one sentence, or one object."""

import json

import click
import pytest

from krume.base import (
    ConflictError,
    DataError,
    InputError,
    NotFoundError,
    Option,
    OutOfRangeError,
    Problem,
    StoreError,
)
from krume.cli.errors import Guard
from krume.usecases import QuestionError

QUESTION = Problem("name-twice", "FILE", "F1", "Which one?", (Option("one", "a"),))
ERRORS = [
    (InputError("Say how much.", where="line 4", got="x"), 3, "input"),
    (OutOfRangeError("Too hot.", field="temp_c"), 3, "out-of-range"),
    (NotFoundError("No such text."), 3, "not-found"),
    (QuestionError(QUESTION), 3, "name-twice"),
    (ConflictError("It changed."), 5, "conflict"),
    (StoreError("No space."), 5, "store"),
    (DataError("A cell is wrong."), 1, "data"),
    (click.UsageError("No such option."), 2, "usage"),
]


def guarded(error: BaseException, *words: str) -> int:
    with Guard(["check", *words]) as guard:
        raise error
    return guard.code


@pytest.mark.parametrize(("error", "code", "name"), ERRORS, ids=lambda value: str(value))
def test_an_error_is_one_object_when_that_is_asked_for(
    capsysbinary: pytest.CaptureFixture[bytes], error: Exception, code: int, name: str
) -> None:
    assert guarded(error, "--json") == code
    said = json.loads(capsysbinary.readouterr().out)
    assert (said["command"], said["ok"], said["result"]) == ("check", False, {})
    (problem,) = said["problems"]
    assert problem["code"] == name
    assert problem["where"]


@pytest.mark.parametrize(("error", "code", "name"), ERRORS, ids=lambda value: str(value))
def test_an_error_is_one_sentence_on_the_error_stream(
    capsys: pytest.CaptureFixture[str], error: Exception, code: int, name: str
) -> None:
    assert guarded(error) == code
    out, err = capsys.readouterr()
    said = error.message if isinstance(error, click.ClickException | InputError) else str(error)
    assert out == ""
    assert said in err, name


def test_a_question_keeps_its_options(capsysbinary: pytest.CaptureFixture[bytes]) -> None:
    guarded(QuestionError(QUESTION), "--json")
    said = json.loads(capsysbinary.readouterr().out)
    assert said["problems"][0]["options"] == [{"label": "one", "line": "a"}]


def test_a_fault_of_the_program_says_so_and_is_exit_1(
    capsysbinary: pytest.CaptureFixture[bytes],
) -> None:
    assert guarded(ZeroDivisionError("secret words"), "--json") == 1
    out, err = capsysbinary.readouterr()
    (problem,) = json.loads(out)["problems"]
    assert problem["code"] == "fault"
    assert "A fault in krume itself, not in your text (ZeroDivisionError" in problem["ask"]
    assert "secret" not in problem["ask"]
    assert b"Traceback" in err


def test_stopping_the_program_is_no_fault(capsys: pytest.CaptureFixture[str]) -> None:
    assert guarded(KeyboardInterrupt()) == 130
    assert guarded(click.Abort()) == 130
    assert capsys.readouterr() == ("", "")


def test_leaving_on_purpose_is_let_through() -> None:
    with pytest.raises(SystemExit):
        guarded(SystemExit(4))


def test_control_signs_in_a_sentence_do_not_reach_the_terminal(
    capsys: pytest.CaptureFixture[str],
) -> None:
    guarded(InputError("no file a\x1b[31mb"))
    assert capsys.readouterr().err == "no file a\ufffd[31mb\n"
