"""The heights of a torte under a hand: each of them a handle, all else worked out anew."""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, replace

from krume.base import Infeasible, InputError, as_text
from krume.build import Component, TortePlan, read_torte
from krume.design import apply_answers
from krume.usecases.asking.answer import Asked
from krume.usecases.book.texts import TextNow, save_text, text_now
from krume.usecases.torte.build import torte_of

_MM = re.compile(r"\d+(?:[.,]\d+)?(?=\s*mm\b)", re.IGNORECASE)
_NEAR_MM = 1e-6
_DIGITS = 2

Heights = Mapping[int, float]
"""Heights in millimetres that are wished, by the line of the text."""


@dataclass(frozen=True, slots=True)
class Handle:
    """One height of a torte: its line, its words, how many of it, as written and as wished."""

    line: int
    words: str
    count: int
    height_mm: float
    wished_mm: float


@dataclass(frozen=True, slots=True)
class RingFit:
    """What would fill the ring: one line at another height."""

    line: int
    height_mm: float
    text: str


@dataclass(frozen=True, slots=True)
class HeightsNow:
    """All handles of a torte, the answers that make the wished heights, and what fills a ring."""

    handles: tuple[Handle, ...]
    answers: tuple[str, ...]
    fit: RingFit | None

    @property
    def is_changed(self) -> bool:
        """Whether anything is wished that is not written."""
        return bool(self.answers)


def heights_of(text: str, wished: Heights) -> HeightsNow:
    """Handles of a torte's text, with the heights that are wished."""
    plan = read_torte(text).value
    lines = text.splitlines()
    found = [each for each in plan.components if _is_handle(each, lines)]
    handles = tuple(_handle(each, wished) for each in found)
    answers = tuple(
        f"line {each.line}={_line(lines[each.line - 1], each.wished_mm)}"
        for each in handles
        if abs(each.wished_mm - each.height_mm) > _NEAR_MM
    )
    return HeightsNow(handles, answers, _ring_fit(plan, found, wished))


def _is_handle(each: Component, lines: list[str]) -> bool:
    """Whether a line says one height in millimetres, so that it can be written anew."""
    is_there = each.height_mm is not None and 0 < each.number <= len(lines) and not _is_worn(each)
    return is_there and len(_MM.findall(lines[each.number - 1])) == 1


def _is_worn(each: Component) -> bool:
    """Whether a line is put on at the end, in no height of the torte."""
    is_outside = each.place in ("on top", "around", "around and on top")
    is_counted = (each.count or 1) > 1 or each.height_mm is not None
    return each.is_piped or (each.mass_g is not None and is_outside and is_counted)


def _handle(each: Component, wished: Heights) -> Handle:
    height = each.height_mm or 0.0
    words = f"{each.what}, {each.piece}" if each.piece else f"{each.what} {each.place or ''}"
    return Handle(
        each.number, words.strip(), each.count or 1, height, wished.get(each.number, height)
    )


def _line(line: str, height_mm: float) -> str:
    return _MM.sub(as_text(height_mm, _DIGITS), line, count=1).strip()


def _ring_fit(plan: TortePlan, found: list[Component], wished: Heights) -> RingFit | None:
    """The cream that fills the ring, at the height that does; None where the ring is full.

    None too where something stands in it whose height is not known; a soak has none.
    """
    ring, fills = plan.ring, [each for each in found if each.fills_ring]
    inside = [each for each in plan.components if not _is_worn(each)]
    is_open = any(e.height_mm is None and e.g_per_cm2 is None for e in inside)
    if ring is None or ring.height_cm is None or len(fills) != 1 or is_open:
        return None
    cream = fills[0]
    others = math.fsum(
        (each.count or 1) * wished.get(each.number, each.height_mm or 0.0)
        for each in inside
        if each is not cream
    )
    count = cream.count or 1
    height = (ring.height_cm * 10 - others) / count
    now = wished.get(cream.number, cream.height_mm or 0.0)
    if height <= 0 or abs(height - now) <= _NEAR_MM:
        return None
    times = f"{count} x " if count > 1 else ""
    text = f"{times}{as_text(height, _DIGITS)} mm of {cream.what} fill the ring"
    return RingFit(cream.number, round(height, _DIGITS), text)


def asked_with_heights(asked: Asked, now: HeightsNow) -> Asked:
    """The request with the wished heights as answers to the torte's own lines."""
    return replace(asked, answers=(*asked.answers, *now.answers))


def keep_heights(name: str, wished: Heights, asked: Asked, *, seen: int | None) -> TextNow:
    """Keep the wished heights as a new version; sent twice it is kept once.

    Raises InputError where the torte cannot stand like that, ConflictError where its text was
    changed since.
    """
    now = text_now("torte", name, asked)
    heights = heights_of(now.text, wished)
    if not heights.answers:
        return now
    made = torte_of(f"tortes/{now.name}.txt", asked_with_heights(asked, heights)).torte
    if isinstance(made, Infeasible):
        message = "It cannot stand like this. Nothing was kept; the clash is named above."
        raise InputError(message, field="heights", got=", ".join(heights.answers))
    text = apply_answers(now.text, heights.answers)
    return save_text("torte", now.name, text, asked, seen=seen)
