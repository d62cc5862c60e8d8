"""The one JSON object of `--json`."""

from typing import TypeVar

from krume import __version__
from krume.base import Problem
from krume.usecases import Answer, data_version, plain

T = TypeVar("T")


def envelope(command: str, answer: Answer[T]) -> dict[str, object]:
    """An answer as the contract's object."""
    result = plain(answer.result)
    if answer.explain is not None and isinstance(result, dict):
        result["explain"] = plain(answer.explain)
    return {
        "krume": 1,
        "command": command,
        "ok": answer.is_answered,
        "result": result,
        "problems": plain(answer.problems),
        "notices": plain(answer.notices),
        "sources": list(answer.sources),
        "made_by": {"krume": __version__, "data": data_version()},
    }


def failure(command: str, problem: Problem) -> dict[str, object]:
    """The object of a request that could not be begun: nothing is known but the problem."""
    return envelope(command, Answer({}, (problem,)))
