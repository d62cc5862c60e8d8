"""The one object of --json holds what the contract names, and stands alone."""

import json

import pytest

from krume import __version__
from krume.base import Interval, Notice, Problem
from krume.cli.envelope import envelope, failure
from krume.usecases import Answer, Explanation, data_version
from tests.cli.conftest import Run

KEYS = ["krume", "command", "ok", "result", "problems", "notices", "sources", "made_by"]
QUESTION = Problem("egg-size-missing", "line 4", "5 eggs", "Which size?")


def test_an_answer_has_the_keys_of_the_contract_and_says_what_made_it() -> None:
    said = envelope("read", Answer({"a": Interval(1, 2, 3)}, (), (Notice("x", "y"),), ("s",)))
    assert list(said) == KEYS
    assert (said["krume"], said["command"], said["ok"]) == (1, "read", True)
    assert said["result"] == {"a": {"low": 1, "best": 2, "high": 3}}
    assert said["sources"] == ["s"]
    assert said["made_by"] == {"krume": __version__, "data": data_version()}


def test_an_open_question_is_not_ok_and_keeps_what_is_known() -> None:
    said = envelope("read", Answer({"a": 1}, (QUESTION,)))
    assert said["ok"] is False
    assert said["result"] == {"a": 1}


def test_clashing_limits_are_not_ok() -> None:
    assert envelope("size", Answer({}, (QUESTION,), is_possible=False))["ok"] is False


def test_an_explanation_stands_inside_the_result() -> None:
    why = Explanation("egg", 1.0, "%", "so", "derived")
    said = envelope("check", Answer({"a": 1}).explained(why))
    assert isinstance(said["result"], dict)
    assert said["result"]["explain"]["how"] == "so"


def test_a_request_that_could_not_begin_knows_nothing() -> None:
    said = failure("read", QUESTION)
    assert list(said) == KEYS
    assert (said["ok"], said["result"]) == (False, {})


@pytest.mark.parametrize("words", [("read", "F1"), ("check", "F4"), ("book", "demo"),
                                   ("size", "F2", "--tin", "round 18 x 7 cm"),
                                   ("read", "nowhere.txt"), ("check", "T1")])  # fmt: skip
def test_standard_output_holds_one_object_and_nothing_else(
    run: Run, words: tuple[str, ...]
) -> None:
    said = run(*words, "--json")
    assert list(json.loads(said.out)) == KEYS
    assert said.out.endswith("}\n")
    assert said.err == ""
    assert said.json["ok"] is (said.code == 0)
