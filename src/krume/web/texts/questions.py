"""A person's own text, line by line, with what is asked beside each line."""

from collections.abc import Iterable
from dataclasses import dataclass

from krume.base import Option, Problem


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked about a line, with the lines that answer it."""

    ask: str
    where: str
    options: tuple[Option, ...]

    @property
    def is_of_this_text(self) -> bool:
        """Whether an option is a line of this text, not of one that it names."""
        return self.where.startswith(("line ", "after line "))


@dataclass(frozen=True, slots=True)
class OwnLine:
    """One line of a text in its own words, with what is asked about it."""

    number: int
    own: str
    questions: tuple[Question, ...]


def asked_by_line(problems: Iterable[Problem]) -> dict[str, tuple[Question, ...]]:
    """Questions by the line they stand at: "line 4"."""
    asked: dict[str, tuple[Question, ...]] = {}
    for problem in problems:
        asked[problem.where] = (*asked.get(problem.where, ()), _question(problem))
    return asked


def elsewhere(numbers: Iterable[int], problems: Iterable[Problem]) -> tuple[Question, ...]:
    """Questions that stand at none of these lines."""
    places = {f"line {number}" for number in numbers}
    return tuple(_question(problem) for problem in problems if problem.where not in places)


def own_lines(text: str, problems: Iterable[Problem]) -> tuple[OwnLine, ...]:
    r"""All lines of a text, each with what is asked about it.

    >>> problem = Problem("size", "line 2", "5 eggs", "Which size?")
    >>> [len(line.questions) for line in own_lines("Cake\n5 eggs", (problem,))]
    [0, 1]
    """
    asked = asked_by_line(problems)
    return tuple(
        OwnLine(number, own, asked.get(f"line {number}", ()))
        for number, own in enumerate(text.rstrip("\n").split("\n"), start=1)
    )


def _question(problem: Problem) -> Question:
    return Question(problem.ask, problem.where, problem.options)
