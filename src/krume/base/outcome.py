"""Answers that are not errors: what was read, what is asked, what cannot be done."""

from dataclasses import dataclass
from typing import Generic, TypeVar

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Option:
    """One way to answer a problem: its label, and the line to type in place of what was read."""

    label: str
    line: str


@dataclass(frozen=True, slots=True)
class Problem:
    """A question that only the person can answer, or a thing that cannot be read.

    `where` is `line N` for a line of the text, `after line N` for a line that is missing there,
    or the name of a command's own option (`--tin`). Every option's `line` answers it in place.
    """

    code: str
    where: str
    read: str
    ask: str
    options: tuple[Option, ...] = ()


@dataclass(frozen=True, slots=True)
class Notice:
    """Something accepted, with what was assumed for it."""

    code: str
    text: str
    where: str = ""


@dataclass(frozen=True, slots=True)
class Read(Generic[T]):
    """What a reader made of a text, with all its questions and notices at once."""

    value: T
    problems: tuple[Problem, ...] = ()
    notices: tuple[Notice, ...] = ()


@dataclass(frozen=True, slots=True)
class Clash:
    """One of the limits that cannot hold together, in the person's own words.

    `said` is the whole of it as one sentence, where the four parts alone do not read as one.
    """

    name: str
    limit: str
    needs: str
    has: str
    said: str = ""


@dataclass(frozen=True, slots=True)
class Infeasible:
    """No answer exists; `clashes` is the smallest set of limits that cannot hold together."""

    clashes: tuple[Clash, ...]
