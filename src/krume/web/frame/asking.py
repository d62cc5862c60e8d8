"""Questions of a usecase as a page asks them: an answer is the same address, with more said."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from urllib.parse import urlencode

from starlette.requests import Request

from krume.base import Problem
from krume.usecases import Asked
from krume.web.frame.rendering import asked_of

Pairs = tuple[tuple[str, str], ...]
"""What an address says, by field, in its order."""

Said = Callable[[Pairs, str, str], Pairs]
"""What an address says once a line is put at the place of a question."""

_ANSWER = "answer"


@dataclass(frozen=True, slots=True)
class Choice:
    """One answer: its words, and the address that says it."""

    label: str
    address: str


@dataclass(frozen=True, slots=True)
class Ask:
    """A question with its answers."""

    text: str
    choices: tuple[Choice, ...]


def said_in(request: Request) -> Pairs:
    """What the address of a request says."""
    return tuple(request.query_params.multi_items())


def asked_with_answers(request: Request) -> Asked:
    """The request as usecases take it, with the answers that stand in its address."""
    return replace(asked_of(request), answers=tuple(request.query_params.getlist(_ANSWER)))


def answered(pairs: Pairs, where: str, line: str) -> Pairs:
    """What is said with an answer to one place; an older one to the same place goes.

    >>> answered((("g8", "26"), ("answer", "--same-bowl=nothing")), "--same-bowl", "line 9")
    (('g8', '26'), ('answer', '--same-bowl=line 9'))
    """
    kept = (p for p in pairs if p[0] != _ANSWER or p[1].partition("=")[0].strip() != where)
    return (*kept, (_ANSWER, f"{where}={line}"))


def address(path: str, pairs: Pairs) -> str:
    """An address that says these.

    >>> address("/blend", (("without", "millet flour"),))
    '/blend?without=millet+flour'
    """
    return f"{path}?{urlencode(pairs)}" if pairs else path


def asks_of(
    request: Request, problems: tuple[Problem, ...], said: Said = answered
) -> tuple[Ask, ...]:
    """All questions, each answer an address of the same page."""
    pairs = said_in(request)
    return tuple(_ask(request.url.path, pairs, problem, said) for problem in problems)


def _ask(path: str, pairs: Pairs, problem: Problem, said: Said) -> Ask:
    choices = tuple(
        Choice(option.label, address(path, said(pairs, problem.where, option.line)))
        for option in problem.options
    )
    return Ask(problem.ask, choices)
