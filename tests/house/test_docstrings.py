"""A docstring that lists its parameters lists them all, in one order, with a source that exists."""

import ast
import re
from collections.abc import Iterator

import pytest

from tests.house.source import Function, modules, source_keys

ORDER = ["Parameters", "Returns", "Raises", "Valid for", "Source", "Examples"]
MATHEMATICS = re.compile(r"\b(definition|geometry|algebra|arithmetic|calculus|statistics)\b")
HEADING = re.compile(r"^(\w[\w ]+)\n-{3,}$", re.MULTILINE)


def faults(function: Function, keys: frozenset[str]) -> Iterator[str]:
    """What is wrong with a function's sections."""
    text = ast.get_docstring(function) or ""
    pieces = HEADING.split(text)
    sections = dict(zip(pieces[1::2], pieces[2::2], strict=True))
    if not sections:
        return
    headings = [heading for heading in pieces[1::2] if heading in ORDER]
    if headings != sorted(headings, key=ORDER.index) or set(pieces[1::2]) - set(ORDER):
        yield f"sections {pieces[1::2]}, want {ORDER}"
    if "Parameters" not in sections or "Returns" not in sections:
        yield "Parameters and Returns belong together"
    named = re.findall(r"^(\w+)(?:, \w+)* : ", sections.get("Parameters", ""), re.MULTILINE)
    listed = function.args
    own = [
        a.arg for a in (*listed.posonlyargs, *listed.args, *listed.kwonlyargs) if a.arg != "self"
    ]
    if named != own:
        yield f"Parameters name {named}, the function takes {own}"
    if "Source" in sections:
        cited = re.findall(r"`([^`]+)`", sections["Source"])
        if not set(cited) & keys and not MATHEMATICS.search(sections["Source"]):
            yield f"Source cites {cited}: name a row of sources.csv, or the mathematics"
    if "Examples" in sections and ">>> " not in sections["Examples"]:
        yield "Examples show nothing"


def test_docstrings_with_sections_are_whole_and_in_order() -> None:
    found = [
        f"{module.at(function)} {fault}"
        for module in modules()
        for function in module.functions()
        for fault in faults(function, source_keys())
    ]
    assert found == []


WHOLE = '''
def tray_time_s(start_c: float, *, end_c: float) -> float:
    """Time to cool.

    Parameters
    ----------
    start_c : temperature [degC]
    end_c : wanted temperature [degC]

    Returns
    -------
    time [s]

    Source
    ------
    `invented1998`, eq. 4.2

    Examples
    --------
    >>> tray_time_s(1.0, end_c=0.5)
    3.0
    """
'''


@pytest.mark.parametrize(
    ("old", "new", "count"),
    [
        ("", "", 0),
        ("    end_c : wanted temperature [degC]\n", "", 1),
        ("invented1998", "nobody", 1),
        (">>> ", "", 1),
        ("Returns\n    -------", "Gives\n    -----", 2),
    ],
)
def test_a_fault_in_a_docstring_is_seen(old: str, new: str, count: int) -> None:
    function = ast.parse(WHOLE.replace(old, new)).body[0]
    assert isinstance(function, ast.FunctionDef)
    assert len(list(faults(function, frozenset({"invented1998"})))) == count
