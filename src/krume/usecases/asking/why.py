"""Explaining one figure: finding the key a person means, and the papers behind the value."""

from collections.abc import Iterable
from difflib import get_close_matches

from krume.base import NotFoundError, Option, Problem
from krume.design import Formula, Line
from krume.evidence import source
from krume.usecases.asking.answer import ExplainInput, ExplainSource, QuestionError

PLACE = "--explain"
_CLOSE = 4


def key_meant(asked: str, keys: Iterable[str]) -> str:
    """Key a person means; the part before the point and the unit may be left out.

    >>> key_meant("Egg", ["percent.egg", "percent.sugar"])
    'percent.egg'
    """
    known = tuple(keys)
    spelled = _plain(asked)
    for wanted in (_plain, _last, _without_unit):
        found = [key for key in known if wanted(key) == spelled]
        if found:
            return found[0]
    near = get_close_matches(spelled, [_last(key) for key in known], n=_CLOSE)
    close = [key for name in dict.fromkeys(near) for key in known if _last(key) == name]
    options = tuple(Option(key, key) for key in close or known)
    ask = f"No figure of this answer is called {asked}. Type one of: {', '.join(close or known)}."
    raise QuestionError(Problem("figure-unknown", PLACE, asked, ask, options[:_CLOSE]))


def _plain(key: str) -> str:
    return "".join(" " if sign in "-_ " else sign for sign in key.casefold()).strip()


def _last(key: str) -> str:
    return _plain(key.rpartition(".")[2])


def _without_unit(key: str) -> str:
    return _last(key).rpartition(" ")[0]


def line_input(line: Line) -> ExplainInput:
    """A line as what moves a figure."""
    interval = line.mass_interval_g
    half = None if interval is None else interval.half_width
    return ExplainInput(line.number, line.read, line.mass_g, half, line.status)


def doubt_of(inputs: Iterable[ExplainInput]) -> str | None:
    """What is not settled in a figure's inputs, in words."""
    unknown = [f"line {i.line} has no mass" for i in inputs if i.mass_g is None]
    loose = [
        f"line {i.line} is {i.mass_g:.1f} g ± {i.half_width_g:.1f} ({i.status})"
        for i in inputs
        if i.mass_g is not None and i.half_width_g
    ]
    return "; ".join([*unknown, *loose]) or None


def source_rows(keys: Iterable[str | None]) -> tuple[ExplainSource, ...]:
    """Sources of keys, each once, with their titles."""
    return tuple(ExplainSource(key, _title(key)) for key in dict.fromkeys(keys) if key)


def _title(key: str) -> str | None:
    try:
        return source(key).title
    except NotFoundError:
        return None


def lines_with_sources(formula: Formula, numbers: Iterable[int]) -> tuple[ExplainSource, ...]:
    """Sources of the masses of some lines."""
    wanted = set(numbers)
    return source_rows(line.source for line in formula.lines if line.number in wanted)
