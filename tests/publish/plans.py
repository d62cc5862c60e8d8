"""Torte plans to print in tests: the studio's tortes with their formulas."""

from dataclasses import replace
from functools import cache
from importlib.resources import files
from typing import Any

from krume.design import Formula, read
from krume.publish import TorteSheet, torte_sheet
from tests.build.studio import PARTS, demo
from tests.publish.bench import IMPRINT

MADE_OF = {
    "T1": ("F1", "S1", "C1", "C5"),
    "T2": ("F3", "S1", "C2"),
    "T3": ("F4", "S1", "C2", "C4"),
    "TART": ("F7", "C3"),
}


@cache
def formula(name: str) -> Formula:
    """A formula of the demo studio, as it is read."""
    folder = files("krume").joinpath("data", "demo", "formulas")
    return read(folder.joinpath(f"{name}.txt").read_text("utf-8")).value


def sheet(name: str, **more: Any) -> TorteSheet:
    """The plan of a demo torte."""
    of = {each: formula(each) for each in MADE_OF[name]}
    families = {each: PARTS[each].family for each in of}
    return torte_sheet(demo(name), of, IMPRINT, families=families, keep="cold", **more)


def called(name: str) -> TorteSheet:
    """The hazel torte's plan under another name, which stands in a layer and a note too."""
    plan = sheet("T1", notes=(name,))
    first = replace(plan.rows[0], name=name, of=name)
    return replace(plan, name=name, rows=(first, *plan.rows[1:]))
