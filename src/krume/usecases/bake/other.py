"""The second of two bakes as it is typed: another tin, another oven, or the same otherwise."""

import re
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from krume.bake import walls
from krume.base import Problem, as_text
from krume.size import Tin, tin_text
from krume.usecases.asking.answer import Asked
from krume.usecases.bake.bake import BakeGround, bake_ground
from krume.usecases.bake.wish import BakeWish

if TYPE_CHECKING:
    from krume.bake import Oven

_OVEN = re.compile(r"(?:fan )?\d{2,3}(?:[.,]\d+)? ?(?:° ?)?[cf](?:,? (?:no )?fan)?")
_WORDS = {
    "wrapped": ("jacket", "in a wet strip"),
    "water": ("jacket", "in water"),
    "none": ("jacket", "with nothing round it"),
    "tray": ("under", "on a tray"),
    "insulated": ("under", "on a double tray"),
    "stone": ("under", "on a hot stone"),
    "rack": ("under", "on the bare rack"),
    "low": ("rack", "low in the oven"),
    "middle": ("rack", "in the middle of the oven"),
    "high": ("rack", "high in the oven"),
}
_FAN = {"fan": "with the fan", "no fan": "without the fan"}
OTHERWISE = (*_FAN, *_WORDS)
"""Words that bake the same tin otherwise; a material alone is the same tin of it."""
_PLACES = ("--tin", "--oven", "--jacket", "--under", "--rack", "--cold-start", "--door")


@dataclass(frozen=True, slots=True)
class Other:
    """The second bake: where it stands, its name in a sentence and beside a line, or questions."""

    ground: BakeGround | None = None
    name: str = ""
    label: str = ""
    problems: tuple[Problem, ...] = ()


def other_of(ground: BakeGround, wish: BakeWish, asked: Asked) -> Other:
    """What is wished beside a bake, or what is asked about it; nothing is baked."""
    typed = asked.answer_for("--beside") or wish.beside
    if typed is None or ground.tin is None or ground.oven is None:
        return Other()
    words = " ".join(typed.casefold().split())
    changed = _changed(words, typed, ground, wish)
    plain = replace(asked, answers=tuple(a for a in asked.answers if not a.startswith("--")))
    found = bake_ground(ground.name, replace(changed, beside=None), plain)
    if found.bare.problems or found.tin is None or found.oven is None:
        return Other(problems=tuple(_at_beside(p) for p in found.bare.problems))
    if (_as_baked(found.tin), found.oven) == (_as_baked(ground.tin), ground.oven):
        return Other(problems=(_the_same(typed, ground.tin),))
    said = _said(words, ground.tin, found.tin, found.oven)
    is_tin = said == ""
    label = tin_text(found.tin) if is_tin else said
    return Other(found, other_name(ground.tin, found.tin) if is_tin else f"the cake {said}", label)


def _changed(words: str, typed: str, ground: BakeGround, wish: BakeWish) -> BakeWish:
    """The first bake's wish with one thing otherwise."""
    if words == "fan":
        return replace(wish, fan=True)
    if words == "no fan":
        temp_c = 0.0 if ground.oven is None else ground.oven.temp_c
        return replace(wish, fan=False, oven=f"{temp_c:g} C, no fan")
    if words in _WORDS:
        key = _WORDS[words][0]
        if key == "jacket":
            return replace(wish, jacket=words)
        return replace(wish, under=words) if key == "under" else replace(wish, rack=words)
    if words in walls() and ground.tin is not None:
        return replace(wish, tin=tin_text(replace(ground.tin, material=words)))
    if _OVEN.fullmatch(words):
        return replace(wish, oven=typed)
    return replace(wish, tin=typed)


def _at_beside(problem: Problem) -> Problem:
    """A question about the second bake stands at its own option."""
    if not problem.where.startswith(_PLACES):
        return problem
    return replace(problem, where="--beside")


def _the_same(typed: str, tin: Tin) -> Problem:
    ask = (
        f"It stands beside itself: the first bake is in {tin_text(tin)}, just so. Name another "
        f"tin, another oven, or one of: {', '.join(OTHERWISE)}."
    )
    return Problem("beside-the-same", "--beside", typed, ask)


def _said(words: str, own: Tin, other: Tin, oven: "Oven") -> str:
    """What is otherwise, where it is not the tin."""
    if words in _FAN:
        return _FAN[words]
    if words in _WORDS:
        return _WORDS[words][1]
    if _as_baked(own) == _as_baked(other):
        return f"at {as_text(oven.temp_c, 0)} °C{' with the fan' if oven.fan else ''}"
    return ""


def other_name(own: Tin, other: Tin) -> str:
    """What tells the second tin from the first: its material alone where all else is equal."""
    if _as_baked(own) == _as_baked(replace(other, material=own.material)):
        return f"the {other.material} tin"
    return f"the cake in {tin_text(other)}"


def _as_baked(tin: Tin) -> Tin:
    """What of a tin decides the bake: not its words, its rim or its grease."""
    return replace(tin, read="", height_cm=None, top_cm=None, water_ml=None, greased=None)
