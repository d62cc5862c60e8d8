"""Which figures a slip moves, which lines no usual range speaks of, and the eggs in words."""

from krume.base import as_text
from krume.design.formula import Line
from krume.design.ratios import Value, best_of
from krume.design.slip.bowl import FLOURS, role_of
from krume.design.slip.eggs import egg_lines, egg_words, part_words
from krume.design.slip.finish import Case
from krume.design.slip.state import NOISE_G
from krume.design.slip.way import Shift, Way

_DRIVES = 0.2
"""A figure is moved by a line when it changes by this part of the line's own change."""


def moved_figures(case: Case, way: Way) -> list[Shift]:
    """Figures that the lines of the slip move, those furthest across their usual range first.

    What changes by a little because everything is taken of the whole is left out.
    """
    slip = case.slip
    changed = max((_change(case, n) for n in (*slip.over, *slip.short)), default=0.0)
    driven = [s for s in way.shifts if _relative(s) >= _DRIVES * changed]
    return sorted(driven, key=_across, reverse=True)


def unbanded(case: Case, way: Way) -> tuple[int, ...]:
    """Lines of the slip that no usual range of this family speaks of; a flour always has one."""
    slip = case.slip
    wrong = [n for n in (*slip.over, *slip.short) if role_of(slip.lines[n]) not in FLOURS]
    return tuple(n for n in wrong if not _is_judged(case, way, n, alone=len(wrong) == 1))


def _is_judged(case: Case, way: Way, line: int, *, alone: bool) -> bool:
    """Whether a figure with a usual range follows a line."""
    if alone and not (set(case.slip.over) | set(case.slip.short)) - {line}:
        shifts = way.shifts
    else:
        masses = tuple(
            case.slip.held_g(n) if n == line else each.mass_g
            for n, each in enumerate(case.slip.lines)
        )
        shifts = case.judge.shifts(case.judge.after(masses))
    return any(_relative(s) >= _DRIVES * _change(case, line) for s in shifts)


def _change(case: Case, line: int) -> float:
    """How far a line is off, as a part of its plan."""
    plan = case.slip.plan_g(line)
    return abs(case.slip.held_g(line) - plan) / plan if plan else 0.0


def _relative(shift: Shift) -> float:
    before, after = best_of(shift.before), best_of(shift.after)
    if before is None or after is None:
        return 0.0
    return abs(after - before) / abs(before) if before else float("inf")


def _across(shift: Shift) -> float:
    before, after = best_of(shift.before) or 0.0, best_of(shift.after) or 0.0
    return abs(after - before) / (shift.high - shift.low) if shift.high > shift.low else 0.0


def value_text(value: Value, unit: str) -> str:
    """A figure with its unit, in the digits of its kind.

    >>> value_text(0.527, "g/cm2"), value_text(142.86, "%"), value_text(None, "%")
    ('0.527 g/cm2', '142.9 %', 'unknown')
    """
    best = best_of(value)
    if best is None:
        return "unknown"
    if unit == "ratio":
        return f"{best:.3f}"
    return f"{best:.{3 if unit in ('g/cm2', 'g/ml') else 1}f} {unit}"


def egg_text(case: Case, way: Way) -> str:
    """The eggs of a way: that they stay, how many, or the yolks and whites apart."""
    slip = case.slip
    lines = [egg.line for egg in egg_lines(slip.formula)]
    if lines and all(_stays(case, way, n) for n in lines):
        return f"the eggs stay, {as_text(way.eggs.mass_g or 0.0, 1)} g"
    if not lines:
        cups = zip(slip.lines, way.card_g, strict=True)
        return ", ".join(f"{e.name} {as_text(g or 0.0, 1)} g" for e, g in cups if _is_egg(e, g))
    if len(lines) > 1 and any(_stays(case, way, n) for n in lines):
        parts = zip(way.eggs.parts, lines, strict=True)
        return ", ".join(
            f"the {part.part}s stay" if _stays(case, way, n) else part_words(part)
            for part, n in parts
        )
    words = egg_words(way.eggs)
    return words if "yolk" in words or "white" in words else f"eggs {words}"


def _stays(case: Case, way: Way, line: int) -> bool:
    """Whether all of an egg line lies in its bowl already."""
    held = case.slip.held_g(line)
    return way.kind != "second" and 0 < held >= (way.card_g[line] or 0.0) - NOISE_G


def _is_egg(line: Line, mass_g: float | None) -> bool:
    return bool(mass_g) and role_of(line) == "egg"
