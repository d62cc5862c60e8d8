"""`krume schema`: the schema itself, or in the usual object."""

import json

import pytest
from jsonschema import Draft202012Validator

from krume.usecases import ANSWERS
from tests.cli.conftest import Run


@pytest.mark.parametrize("command", list(ANSWERS))
def test_a_schema_is_printed_alone_or_in_the_usual_object(run: Run, command: str) -> None:
    alone = json.loads(run("schema", command).out)
    Draft202012Validator.check_schema(alone)
    assert alone["title"] == f"krume {command}"
    inside = run("schema", command, "--json")
    assert inside.code == 0
    assert inside.json["result"] == alone


def test_a_command_that_is_none_is_told_with_those_there_are(run: Run) -> None:
    said = run("schema", "cook")
    assert said.code == 3
    assert said.out == ""
    assert "There are: read, check" in said.err
