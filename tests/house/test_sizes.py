"""Modules and functions stay small enough to read at once."""

import ast
from statistics import median

from tests.house.source import Function, modules

LONGEST_MODULE = 400
LONGEST_PHYSICS = 500
PHYSICS = {"properties", "bake", "build", "keep"}
LONGEST_BODY = 60
LONG_BODY = 40


def body_lines(function: Function) -> int:
    """Lines of a function's body without its docstring."""
    body = function.body
    if ast.get_docstring(function) is not None:
        body = body[1:]
    return 0 if not body else (body[-1].end_lineno or 0) - body[0].lineno + 1


def test_no_module_outgrows_one_reading() -> None:
    limits = {m.name: LONGEST_PHYSICS if m.folder in PHYSICS else LONGEST_MODULE for m in modules()}
    long = {m.name: n for m in modules() if (n := m.text.count("\n")) > limits[m.name]}
    assert long == {}


def test_no_function_hides_a_procedure() -> None:
    long = {
        m.at(f): lines
        for m in modules()
        for f in m.functions()
        if (lines := body_lines(f)) > LONGEST_BODY
    }
    assert long == {}


def test_most_functions_are_a_few_lines() -> None:
    lines = [body_lines(f) for m in modules() for f in m.functions()]
    assert median(lines) <= 8
    assert sum(n > LONG_BODY for n in lines) <= 0.03 * len(lines)
