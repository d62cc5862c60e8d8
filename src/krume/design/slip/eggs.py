"""Eggs of a corrected formula: a whole count, the grams from one more, what stays of it."""

from collections.abc import Sequence
from dataclasses import dataclass

from krume.base import Interval, as_text
from krume.design.formula import Formula, Line
from krume.design.slip.bowl import role_of
from krume.design.slip.state import NOISE_G
from krume.design.slip.way import EggPart, WayEggs
from krume.pantry import egg_size
from krume.size import nearest_eggs

_PARTS = ("yolk", "white")
_WHOLE_G = 0.05
"""Half the last digit planned masses are written with."""


@dataclass(frozen=True, slots=True)
class EggLine:
    """A counted line of eggs: its place, planned count, shelled grams of one, and its part."""

    line: int
    count: float
    each_g: float
    part: str


def egg_lines(formula: Formula) -> tuple[EggLine, ...]:
    """Lines of eggs that are counted."""
    return tuple(
        EggLine(number, float(line.amount), line.mass_g / line.amount, line.part or "whole")
        for number, line in enumerate(formula.lines)
        if _is_counted(line) and line.mass_g and isinstance(line.amount, float | int)
    )


def _is_counted(line: Line) -> bool:
    known = not isinstance(line.amount, Interval) and bool(line.amount) and line.mass_g is not None
    return line.basis == "egg" and known


def egg_mass_g(formula: Formula, masses_g: Sequence[float | None]) -> float:
    """Shelled grams of all egg lines at these masses; 0 where there are none."""
    pairs = zip(formula.lines, masses_g, strict=True)
    return sum(mass or 0.0 for line, mass in pairs if role_of(line) == "egg")


def eggs_of(
    formula: Formula, masses_g: Sequence[float | None], there_g: Sequence[float | None] = ()
) -> WayEggs:
    """Eggs of a formula at these masses; yolks and whites share their eggs.

    Of eggs that are in the bowl already (`there_g`) nothing is opened any more: only what is still
    to add can leave a part of an egg.
    """
    lines = egg_lines(formula)
    mass = egg_mass_g(formula, masses_g)
    size = formula.egg_size or next((x.egg_size for x in formula.lines if x.egg_size), None)
    if not lines:
        return WayEggs(None, size, None, mass or None)
    found = [(line, nearest_eggs(masses_g[line.line] or 0.0, each_g=line.each_g)) for line in lines]
    counts = {part: sum(e.count for at, e in found if at.part == part) for part in _PARTS}
    whole = sum(e.count for at, e in found if at.part not in _PARTS)
    held = [there_g[at.line] or 0.0 if there_g else 0.0 for at in lines]
    left = sum(
        _opened_g(at, masses_g[at.line] or 0.0, there, e.make_up_g)
        for (at, e), there in zip(found, held, strict=True)
    )
    make_up = sum(e.make_up_g for _, e in found)
    return WayEggs(
        whole + max(counts.values()),
        size,
        0.0 if abs(make_up) < _WHOLE_G else round(make_up, 6),
        mass,
        left,
        tuple(EggPart(at.part, e.count, e.make_up_g, masses_g[at.line] or 0.0) for at, e in found),
    )


def _opened_g(egg: EggLine, mass_g: float, there_g: float, make_up_g: float) -> float:
    """What stays of the egg opened last; where some lie there, of those still to break.

    Eggs that weigh less than planned, all of them in, want no part of one more.
    """
    if mass_g - there_g <= _WHOLE_G:
        return 0.0
    if there_g <= 0 or mass_g <= egg.count * egg.each_g + _WHOLE_G:
        return _left_g(make_up_g, egg.each_g)
    more = nearest_eggs(mass_g - there_g, each_g=egg.each_g)
    return _left_g(more.make_up_g, egg.each_g)


def _left_g(make_up_g: float, each_g: float) -> float:
    """What stays of the egg that is opened for a part."""
    if abs(make_up_g) <= _WHOLE_G + NOISE_G:
        return 0.0
    return each_g - make_up_g if make_up_g > 0 else -make_up_g


def egg_words(eggs: WayEggs) -> str:
    """Eggs in a few words; yolks and whites are named where they are weighed apart.

    >>> egg_words(WayEggs(5, "eu-m", 14.6, 269.6, 36.4)), egg_words(WayEggs(6, "eu-m", 0.0, 306))
    ('269.6 g = 5 EU M + 14.6 g of one more', '6 EU M')
    >>> yolks, whites = EggPart("yolk", 8, 0.0, 140.0), EggPart("white", 10, 0.0, 335.0)
    >>> egg_words(WayEggs(10, "eu-m", 0.0, 475.0, parts=(yolks, whites)))
    '8 yolks and 10 whites, EU M'
    """
    if len(eggs.parts) > 1 and any(abs(each.make_up_g) > _WHOLE_G for each in eggs.parts):
        return ", ".join(part_words(each) for each in eggs.parts)
    if eggs.count is None or eggs.make_up_g is None:
        return f"{as_text(eggs.mass_g or 0.0, 1)} g"
    size = "" if eggs.size is None else f" {egg_size(eggs.size).label}"
    apart = [each for each in eggs.parts if each.part in _PARTS]
    if not eggs.make_up_g and apart:
        said = " and ".join(f"{each.count} {_many(each)}" for each in eggs.parts)
        return f"{said},{size}" if size else said
    if not eggs.make_up_g:
        return f"{eggs.count}{size}"
    many = f"{_many(apart[0])} " if apart else ""
    start = f"{many}{as_text(eggs.mass_g or 0.0, 1)} g = {eggs.count}{size}"
    if eggs.make_up_g > 0:
        return f"{start} + {as_text(eggs.make_up_g, 1)} g of one more"
    return f"{start} less {as_text(-eggs.make_up_g, 1)} g"


def _many(each: EggPart) -> str:
    return f"{each.part}{'' if each.count == 1 else 's'}" if each.part in _PARTS else "whole"


def part_words(each: EggPart) -> str:
    """Yolks or whites of a way, in grams and whole ones."""
    many = each.part if each.part == "whole" else f"{each.part}s"
    start = f"{many} {as_text(each.mass_g, 1)} g = {each.count}"
    if abs(each.make_up_g) <= _WHOLE_G:
        return start
    sign = "+" if each.make_up_g > 0 else "less"
    return f"{start} {sign} {as_text(abs(each.make_up_g), 1)} g"
