"""The ways out as a page shows them: grams to add, the rest in a sentence, what moves."""

from dataclasses import dataclass

from krume.usecases import SlipOption
from krume.web.frame.figures import amount

_POINTS = "points of the blend"
_RATIO = "ratio"


@dataclass(frozen=True, slots=True)
class Add:
    """Grams of one line that are still to be added."""

    name: str
    grams: str


@dataclass(frozen=True, slots=True)
class Moved:
    """One figure before and after, with its usual range."""

    figure: str
    before: str
    after: str
    usual: str
    unit: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """One corrected sheet of a way: what it is called, and the end of its file's name."""

    word: str
    file: str


@dataclass(frozen=True, slots=True)
class ShownWay:
    """One way out; `shift` is how far the worst line moves, `rest` what to do beside adding."""

    kind: str
    title: str
    shift: str
    adds: tuple[Add, ...]
    rest: str
    findings: tuple[str, ...]
    statuses: str
    is_inside: bool
    unknown: str
    moved: tuple[Moved, ...]
    sheets: tuple[Sheet, ...]


def shown(way: SlipOption) -> ShownWay:
    """A way as it is shown."""
    adds = tuple(
        Add(_named(line.name, line.part), f"+{amount(line.add_g, 2)}")
        for line in way.lines
        if line.add_g > 0
    )
    return ShownWay(
        kind=way.kind,
        title=way.title,
        shift=_shift(way),
        adds=adds,
        rest=_rest(way.text, has_adds=bool(adds)),
        findings=tuple(finding.text for finding in way.findings),
        statuses=", ".join(dict.fromkeys(finding.status for finding in way.findings)),
        is_inside=way.in_band is not False,
        unknown=", ".join(word.lower() for word in way.unknown),
        moved=_moved(way),
        sheets=_sheets(way),
    )


def _sheets(way: SlipOption) -> tuple[Sheet, ...]:
    """The sheets of a way, the one to weigh by first."""
    part = "second" if way.kind == "second" else "rescued"
    cards = [("Bench card", f"{part}-bench-card")]
    if way.kind == "second":
        cards.append(("Bench card as planned", "as-planned-bench-card"))
    if way.jar_g:
        cards.append(("Blend card of the jar", "jar-blend-card"))
    both = (("to print", "html"), ("as PDF", "pdf"))
    found = [Sheet(f"{word} {how}", f"{file}.{end}") for word, file in cards for how, end in both]
    return (*found, Sheet("Corrected formula as text", f"{part}.txt"))


def _named(name: str, part: str | None) -> str:
    return f"{name}, {part}" if part and part not in name else name


def _shift(way: SlipOption) -> str:
    unit = "points" if way.shift_basis == _POINTS else "%"
    return f"shift {amount(way.worst_shift_pct)} {unit}" if way.worst_shift_pct else "shift 0"


def _rest(text: str, *, has_adds: bool) -> str:
    """The sentences behind the grams, which stand as figures already."""
    is_told = has_adds and text.startswith("Add ")
    return text.partition(". ")[2] if is_told else text


def _moved(way: SlipOption) -> tuple[Moved, ...]:
    """Figures that are another number than before."""
    rows = []
    for each in way.shifts:
        digits = 3 if each.unit == _RATIO else 1
        before, after = amount(each.before, digits), amount(each.after, digits)
        if before != after:
            usual = f"{amount(each.low, digits)} to {amount(each.high, digits)}"
            unit = "" if each.unit == _RATIO else each.unit
            rows.append(Moved(_said(each.figure), before, after, usual, unit))
    return tuple(rows)


def _said(figure: str) -> str:
    return figure.replace("_", " ").replace("per egg", "/ egg")
