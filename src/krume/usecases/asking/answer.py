"""What every usecase takes beside its own inputs, and what every usecase gives back."""

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Generic, TypeVar

from krume.base import Infeasible, InputError, Interval, Notice, Problem

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Asked:
    """What a person says with any request: which book, which answers, which day.

    `typed` is the text that came in with the request itself, for the name `-`. Where
    `is_of_book` is set, a name is a text of the book and never a file that lies about.
    """

    book: Path | None = None
    answers: tuple[str, ...] = ()
    on: date | None = None
    typed: bytes | None = None
    is_of_book: bool = False

    def answer_for(self, place: str) -> str | None:
        """The answer given to an option of the command, the last one where there are several."""
        given = [a.partition("=")[2].strip() for a in self.answers if place_of(a) == place]
        return given[-1] if given else None


def place_of(answer: str) -> str:
    """Place an answer is meant for: what stands before its first equals sign."""
    return answer.partition("=")[0].strip()


@dataclass(frozen=True, slots=True)
class ExplainInput:
    """A line of the text that moves a figure, with its own papers."""

    line: int
    read: str
    mass_g: float | None
    half_width_g: float | None
    status: str


@dataclass(frozen=True, slots=True)
class ExplainSource:
    """A source behind a figure."""

    key: str
    title: str | None


@dataclass(frozen=True, slots=True)
class Explanation:
    """Where one figure comes from: how it was worked out, its status, sources and doubt.

    `low` and `high` are the usual range, where there is one; `doubt` is what is not settled.
    """

    key: str
    value: float | Interval | str | None
    unit: str
    how: str
    status: str
    low: float | None = None
    high: float | None = None
    doubt: str | None = None
    inputs: tuple[ExplainInput, ...] = ()
    sources: tuple[ExplainSource, ...] = ()


@dataclass(frozen=True, slots=True)
class Answer(Generic[T]):
    """A result with what is asked, what was assumed, and where its numbers come from.

    `is_possible` is False where no answer exists within the limits: `problems` names them.
    """

    result: T
    problems: tuple[Problem, ...] = ()
    notices: tuple[Notice, ...] = ()
    sources: tuple[str, ...] = ()
    explain: Explanation | None = None
    is_possible: bool = True

    @property
    def is_answered(self) -> bool:
        """Whether nothing is asked and nothing clashes."""
        return self.is_possible and not self.problems

    @property
    def exit_code(self) -> int:
        """0 answered, 3 a question is open, 4 no answer within the limits."""
        if self.problems and self.is_possible:
            return 3
        return 0 if self.is_possible else 4

    def explained(self, explanation: Explanation | None) -> "Answer[T]":
        """The same answer with one figure explained."""
        return replace(self, explain=explanation)


class QuestionError(InputError):
    """A request that cannot begin before a question is answered."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.ask, got=problem.read, where=problem.where)
        self.problem = problem


def clash_problems(answer: Infeasible, where: str) -> tuple[Problem, ...]:
    """The limits that cannot hold together, as problems a person can read."""
    return tuple(
        Problem(
            code="limits-clash",
            where=where,
            read=f"{clash.name}: {clash.has}",
            ask=clash.said
            or f"{clash.name} has {clash.has}; {clash.needs} is needed ({clash.limit}).",
        )
        for clash in answer.clashes
    )
