"""Slips on the demo's formulas, said as a baker says them."""

from collections.abc import Mapping
from functools import cache
from importlib import resources
from typing import Any

from krume.design import Formula, Rescue, Slip, Way, read, rescue

F2_SLIP = {"white rice": 40.0, "teff": 26.0}


@cache
def formula(name: str) -> Formula:
    """A formula of the demo studio."""
    folder = resources.files("krume").joinpath("data", "demo", "formulas")
    text = folder.joinpath(f"{name}.txt").read_text(encoding="utf-8")
    return read(text, eggs_region="eu").value


def line(found: Formula, words: str) -> int:
    """The one line whose name holds some words."""
    (number,) = [n for n, each in enumerate(found.lines) if words in each.name]
    return number


def slip_of(name: str | Formula, weighed: Mapping[str, float], **more: Any) -> Slip:
    """A slip: grams by words of the lines; `closed` and `same_bowl` by words too."""
    found = formula(name) if isinstance(name, str) else name
    masses: list[float | None] = [None] * len(found.lines)
    for words, mass in weighed.items():
        masses[line(found, words)] = mass
    for key in ("closed", "same_bowl"):
        more[key] = frozenset(line(found, words) for words in more.get(key, ()))
    return Slip(found, tuple(masses), **more)


def rescued(name: str | Formula, weighed: Mapping[str, float], **more: Any) -> Rescue:
    """The ways out of a slip."""
    return rescue(slip_of(name, weighed, **more))


def way(found: Rescue, kind: str) -> Way:
    """The way of a kind."""
    return next(each for each in found.ways if each.kind == kind)


def masses(found: Rescue, each: Way) -> dict[str, float]:
    """Grams of a way's lines by name."""
    return {found.slip.lines[row.line].name: row.mass_g for row in each.lines}
