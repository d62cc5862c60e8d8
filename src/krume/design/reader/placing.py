"""A question about one line, with the place where it is answered."""

from krume.base import Problem
from krume.design.reader.classifying import Kind


def placed(problem: Problem, kind: Kind) -> Problem:
    """The problem with the line it is about."""
    return Problem(problem.code, f"line {kind.number}", problem.read, problem.ask, problem.options)
