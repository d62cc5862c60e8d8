"""A question about one line, with the place where it is answered."""

from bisect import bisect
from collections.abc import Iterable

from krume.base import Problem
from krume.design.reader.classifying import Kind


def placed(problem: Problem, kind: Kind) -> Problem:
    """The problem with the line it is about."""
    return Problem(problem.code, f"line {kind.number}", problem.read, problem.ask, problem.options)


def first_part(kinds: Iterable[Kind], steps: Iterable[Kind]) -> frozenset[int]:
    """Numbers of the step lines under the same heading as the first: one bake, not several."""
    headings = [kind.number for kind in kinds if kind.kind == "heading"]
    numbers = [kind.number for kind in steps]
    if not numbers:
        return frozenset()
    part = bisect(headings, numbers[0])
    return frozenset(number for number in numbers if bisect(headings, number) == part)
