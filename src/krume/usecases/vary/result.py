"""What the variations job answers: lines before and after, allergens, balance, what is unknown."""

from dataclasses import dataclass

from krume.base import Interval
from krume.design import Balance, Line, bands, varying
from krume.usecases.formula.why_check import figures_of


@dataclass(frozen=True, slots=True)
class VaryLine:
    """One line of the child, with what the parent has of it."""

    ingredient: str | None
    name: str
    part: str | None
    mass_g: float | None
    before_g: float | None
    text: str


@dataclass(frozen=True, slots=True)
class VaryChange:
    """A line that is not as in the parent, and why."""

    ingredient: str | None
    name: str
    before_g: float | None
    after_g: float | None
    why: str


@dataclass(frozen=True, slots=True)
class VaryWords:
    """Allergens gained and lost in the words of one market."""

    gained: tuple[str, ...]
    lost: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class VaryAllergens:
    """Allergens gained and lost in the words of the market, and traces by the lots' own words.

    `open` names what came in and whose allergens nobody has said: while it holds one, nothing
    counts as lost.
    """

    market: str
    gained: tuple[str, ...]
    lost: tuple[str, ...]
    traces_gained: tuple[str, ...]
    traces_lost: tuple[str, ...]
    eu: VaryWords
    us: VaryWords
    open: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class VaryGluten:
    """Which records stand in the way of a gluten claim before and after; no sentence is printed."""

    on: str
    missing_before: tuple[str, ...]
    missing_after: tuple[str, ...]
    text: str


@dataclass(frozen=True, slots=True)
class VaryPrice:
    """Material of the changed lines at the book's prices; None while a price is missing."""

    currency: str
    before: float | None
    after: float | None
    difference: float | None
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class VaryGaps:
    """What the parent has and the child lacks; below 0 the child has more. None is unknown."""

    fat_g: float | None
    water_g: float | None
    sugar_g: float | None
    starch_g: float | None
    protein_g: float | None
    fibre_g: float | None


@dataclass(frozen=True, slots=True)
class VaryMakeUp:
    """The line that makes up the fat, and what it would be as butter."""

    ingredient: str | None
    name: str
    mass_g: float
    as_butter_g: float | None
    text: str


@dataclass(frozen=True, slots=True)
class VaryFigure:
    """A figure of the balance before and after, with its band."""

    key: str
    label: str
    before: float | Interval | None
    after: float | Interval | None
    low: float
    high: float
    unit: str
    status: str


@dataclass(frozen=True, slots=True)
class VaryBalance:
    """The balance before and after; findings as their texts."""

    family_before: str | None
    family_after: str | None
    figures: tuple[VaryFigure, ...]
    findings_gained: tuple[str, ...]
    findings_lost: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class VaryRule:
    """A rule that was used, with its status."""

    key: str
    label: str
    status: str
    note: str


@dataclass(frozen=True, slots=True)
class VaryWay:
    """One of several rules in use, side by side: what it says, and all its lines."""

    key: str
    label: str
    status: str
    note: str
    lines: tuple[VaryLine, ...]


@dataclass(frozen=True, slots=True)
class VaryLimit:
    """A line that no swap here is known for."""

    line: int
    read: str
    text: str


@dataclass(frozen=True, slots=True)
class VaryDecision:
    """A line that the person edited and the parent changed too; None where it is not there."""

    line: int
    made: str | None
    yours: str | None
    parents: str | None


@dataclass(frozen=True, slots=True)
class VaryChild:
    """How one child stands to its parent: `unchanged`, `follows`, `decide` or `unreadable`."""

    name: str
    title: str | None
    state: str
    edited: bool
    swaps: tuple[str, ...]
    changes: tuple[VaryChange, ...]
    decisions: tuple[VaryDecision, ...]
    text: str


@dataclass(frozen=True, slots=True)
class VaryResult:
    """A variation of a formula; or, with children asked for, the family it has."""

    name: str | None
    parent: str
    swaps: tuple[str, ...]
    lines: tuple[VaryLine, ...] = ()
    changes: tuple[VaryChange, ...] = ()
    allergens: VaryAllergens | None = None
    kitchen: str | None = None
    claims: VaryWords | None = None
    gluten: VaryGluten | None = None
    price: VaryPrice | None = None
    balance: VaryBalance | None = None
    gaps: VaryGaps | None = None
    left: VaryGaps | None = None
    make_up: VaryMakeUp | None = None
    rules: tuple[VaryRule, ...] = ()
    ways: tuple[VaryWay, ...] = ()
    unknown: tuple[str, ...] = ()
    limits: tuple[VaryLimit, ...] = ()
    children: tuple[VaryChild, ...] = ()
    total_g: float | None = None
    total_before_g: float | None = None
    step_g: float | None = None
    text: str | None = None
    written: str | None = None


def line_rows(lines: tuple[varying.VariedLine, ...]) -> tuple[VaryLine, ...]:
    """The child's lines, each with the parent's grams of the same thing."""
    return tuple(_line(each, each.line) for each in lines if each.line is not None)


def _line(each: varying.VariedLine, line: Line) -> VaryLine:
    before = each.before_g if _is_same_thing(each) else 0.0
    return VaryLine(line.ingredient, line.name, line.part, line.mass_g, before, line.read.strip())


def _is_same_thing(each: varying.VariedLine) -> bool:
    one, other = each.before, each.line
    return one is not None and other is not None and one.ingredient == other.ingredient


def change_rows(lines: tuple[varying.VariedLine, ...]) -> tuple[VaryChange, ...]:
    """What is not as in the parent: what stands in for a line is a row of its own."""
    rows: list[VaryChange] = []
    for each in (line for line in lines if line.is_changed):
        before, after = each.before, each.line
        if before is not None and after is not None and _is_same_thing(each):
            rows.append(_change(after, each.before_g, each.after_g, each.why))
            continue
        if before is not None:
            why = each.why if after is None else f"{after.name} in its place"
            rows.append(_change(before, each.before_g, 0.0, why))
        if after is not None:
            rows.append(_change(after, 0.0, each.after_g, each.why))
    return tuple(rows)


def _change(line: Line, before_g: float | None, after_g: float | None, why: str) -> VaryChange:
    return VaryChange(line.ingredient, line.name, before_g, after_g, why)


def gap_row(held: varying.Holding) -> VaryGaps:
    """Figures of a gap, without the dust of sums."""
    return VaryGaps(*(None if value is None else round(value, 6) for value in held.values()))


def balance_row(before: Balance, after: Balance) -> VaryBalance:
    """Every figure that has a band, before and after, and which findings came and went."""
    key = after.family or before.family
    was, will = figures_of(before), figures_of(after)
    figures = tuple(
        VaryFigure(
            band.quantity,
            band.label,
            was.get(band.quantity),
            will.get(band.quantity),
            band.low,
            band.high,
            band.unit,
            band.status,
        )
        for band in (bands(key) if key is not None else ())
    )
    old = {found.code for found in before.findings}
    new = {found.code for found in after.findings}
    return VaryBalance(
        family_before=before.family,
        family_after=after.family,
        figures=figures,
        findings_gained=tuple(f.text for f in after.findings if f.code not in old),
        findings_lost=tuple(f.text for f in before.findings if f.code not in new),
    )


def rule_rows(rules: tuple[varying.SwapRule, ...]) -> tuple[VaryRule, ...]:
    """Each rule that was used, once."""
    rows = (VaryRule(rule.key, rule.label, rule.status, rule.note) for rule in rules)
    return tuple(dict.fromkeys(rows))
