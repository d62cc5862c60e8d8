"""The lines of a variation before anything is brought back: what goes and what comes."""

from dataclasses import dataclass, replace

from krume.base import as_text
from krume.design.formula import Formula, Line
from krume.design.varying.rules import SwapRule
from krume.pantry import Ingredient

_DUST_G = 1e-9


@dataclass(frozen=True, slots=True)
class Change:
    """One wish: so much of a line goes (`line` None: none does), so much of a thing comes.

    `key` None: nothing comes. `mass_g` is what goes; `to_g` what comes, at first as much. A change
    with an `extra` reason is meant as it is: nothing is taken off for what it brings.
    """

    line: int | None
    mass_g: float
    key: str | None = None
    name: str = ""
    to_g: float = 0.0
    extra: str = ""


@dataclass(frozen=True, slots=True)
class Wish:
    """How a variation is made: which fat makes up a gap, and what the scale shows.

    `fat` is None (a fat the formula has, else plain oil), `none`, or a key of the pantry, whose
    name on a new line is `fat_name`.
    """

    step_g: float = 0.1
    fat: str | None = None
    fat_name: str = ""
    own: tuple[Ingredient, ...] = ()


@dataclass(frozen=True, slots=True)
class Draft:
    """A line on its way: the parent's, what it is called now, its grams after the bare swap."""

    before: Line | None
    line: Line | None
    mass_g: float
    why: str = ""
    comes: bool = False


def drafts_of(
    formula: Formula,
    changes: tuple[Change, ...],
    rules: tuple[SwapRule, ...],
) -> list[Draft]:
    """Lines after the bare swaps; what comes stands where what it stands in for stood."""
    drafts: list[Draft] = []
    for at, line in enumerate(formula.lines):
        pairs = [(c, r) for c, r in zip(changes, rules, strict=True) if c.line == at]
        drafts += _line_drafts(line, pairs)
    for change, rule in zip(changes, rules, strict=True):
        if change.line is None and change.key is not None:
            drafts.append(_coming(None, change, rule))
    return _merged(drafts)


def _merged(drafts: list[Draft]) -> list[Draft]:
    """What comes goes into a line of the same thing, where there is one."""
    kept = list(drafts)
    for at, draft in enumerate(drafts):
        place = _same(kept, at) if draft.comes else None
        if place is None or draft.line is None:
            continue
        other = kept[place]
        total_g = other.mass_g + draft.mass_g
        line = None if other.line is None else weighed(other.line, total_g)
        kept[place] = Draft(other.before, line, total_g, draft.why, comes=True)
        kept[at] = Draft(draft.before, None, 0.0, draft.why)
    return [draft for draft in kept if draft.before is not None or draft.line is not None]


def _same(drafts: list[Draft], at: int) -> int | None:
    """Place of another line of the same thing under the same heading."""
    line = drafts[at].line
    for place, other in enumerate(drafts):
        if place == at or line is None or other.line is None or other.line.mass_g is None:
            continue
        if (other.line.ingredient, other.line.section) == (line.ingredient, line.section):
            return place if other.line.part is None else None
    return None


def _line_drafts(line: Line, pairs: list[tuple[Change, SwapRule]]) -> list[Draft]:
    if not pairs:
        return [Draft(line, line, line.mass_g or 0.0)]
    rest = (line.mass_g or 0.0) - sum(change.mass_g for change, _ in pairs)
    coming = [_coming(line, change, rule) for change, rule in pairs if change.key is not None]
    names = " and ".join(change.name for change, _ in pairs if change.key is not None)
    why = f"{names} in its place" if names else pairs[0][1].label
    if rest <= _DUST_G:
        if len(coming) == 1:
            return [replace(coming[0], before=line)]
        return [Draft(line, None, 0.0, why), *coming]
    return [Draft(line, weighed(line, rest), rest, why), *coming]


def _coming(line: Line | None, change: Change, rule: SwapRule) -> Draft:
    section = None if line is None else line.section
    number = 0 if line is None else line.number
    new = new_line(change.key or "", change.name, change.to_g, section=section, number=number)
    instead = "new" if line is None else f"in place of {line.name}"
    why = change.extra or f"{instead}, {rule.note.partition(';')[0]}"
    return Draft(None, new, change.to_g, why, comes=True)


def new_line(
    key: str, name: str, mass_g: float, *, section: str | None = None, number: int = 0
) -> Line:
    """A line that is weighed, as it would be read."""
    return Line(
        read=f"{as_text(mass_g, 4)} g {name}",
        number=number,
        amount=mass_g,
        unit="g",
        mass_g=mass_g,
        basis="weighed",
        name=name,
        ingredient=key,
        section=section,
    )


def weighed(line: Line, mass_g: float) -> Line:
    """The same line with another mass, its note kept."""
    note = f", {line.note}" if line.note else ""
    return replace(
        line,
        read=f"{as_text(mass_g, 4)} g {line.name}{note}",
        amount=mass_g,
        unit="g",
        mass_g=mass_g,
        basis="weighed",
        mass_interval_g=None,
    )
