"""Until when it keeps, in the words its kind asks for; the part that runs out first decides."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache

from krume.base import InputError
from krume.evidence import Row, column, load, optional
from krume.keep import KeepComponent, Keeping, keep_rule, use_by
from krume.usecases.keep.keep import cold_most_c
from krume.usecases.label.result import LabelDurability

KIND_COLUMNS = (
    column("key", "key"),
    column("perishable", "one of", "yes", "no"),
    column("why"),
    column("status", "status"),
    column("source", "source"),
)
MARK_COLUMNS = (
    column("key", "key"),
    column("market"),
    column("kind", "one of", "perishable", "lasting"),
    column("words"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)
_HOURS_A_DAY = 24


@dataclass(frozen=True, slots=True)
class MadeOn:
    """The day something was made, and the days of those of its parts that were made before."""

    day: date | None = None
    parts: tuple[tuple[str, date], ...] = ()


NOT_SAID = MadeOn()
"""No day of making: the label has a blank to write in."""


def durability_of(keeping: Keeping, market: str, made: MadeOn) -> LabelDurability:
    """How it is kept and until when, the day of making of each part as its day 1."""
    names = {part.name for part in keeping.components}
    parts = {name: day for name, day in made.parts if name in names}
    days, most = keeping.least_days, cold_most_c()
    cold = f"Keep cold, at {most:g} °C ({most * 1.8 + 32:.0f} °F) or below."
    reason = keeping.reasons[0].text if keeping.reasons else ""
    mark = mark_words(keeping, market)
    if not days:
        text = f"{cold} How long is not known."
        return LabelDurability(text, None, most, None, reason, mark)
    ends = _ends(keeping, days, made.day, parts)
    if ends is None:
        return LabelDurability(
            f"{mark}: ____________ {cold}", days, most, None, reason, mark, _first(keeping)
        )
    name, last = min(ends.items(), key=lambda each: (each[1], each[0]))
    text = f"{mark}: {spelled(last)}. {cold}"
    return LabelDurability(text, days, most, last.isoformat(), reason, mark, name)


def check_parts(made: MadeOn, names: Collection[str]) -> None:
    """Refuse a part that is not among these names, and one that was made after the whole."""
    for name, day in made.parts:
        if name not in names:
            listed = ", ".join(names) or "no parts"
            message = f"'{name}' is no part of it; there are: {listed}."
            raise InputError(message, field="made-part", got=name, want=listed)
        if made.day is not None and day > made.day:
            message = f"{name} is made on {day}, after the whole on {made.day}. Correct one of them"
            raise InputError(
                f"{message}.", field="made-part", got=day.isoformat(), want=f"up to {made.day}"
            )


def _ends(
    keeping: Keeping, days: int, made: date | None, parts: Mapping[str, date]
) -> dict[str, date] | None:
    """Last day of each part by its name; None while the day of one is not known."""
    ends: dict[str, date] = {}
    for part in keeping.components:
        day, own = parts.get(part.name, made), _days(part)
        if day is None or own is None:
            return None
        ends[part.name] = use_by(day, days=own)
    if made is not None and not parts:
        # All made on one day: the whole's own days, and the part that gives them.
        return {_first(keeping): use_by(made, days=days)}
    return ends or None


def _days(part: KeepComponent) -> int | None:
    """Whole days of one part, at most those of a date mark."""
    if part.cold_h is None:
        return None
    most = keep_rule("date-mark").cold_h.high
    return int(min(part.cold_h.low, most) // _HOURS_A_DAY) or None


def _first(keeping: Keeping) -> str:
    """The part that runs out first where all are made on one day."""
    known = [(part.cold_h.low, part.name) for part in keeping.components if part.cold_h is not None]
    return min(known)[1] if known else ""


def mark_words(keeping: Keeping, market: str) -> str:
    """Words of the date: by the most perishable of its parts, and by the market."""
    kind = "perishable" if any(map(is_perishable, keeping.components)) else "lasting"
    rows = {(row.text("market"), row.text("kind")): row for row in _marks()}
    found = rows.get((market, kind)) or rows[("eu", "perishable")]
    return found.text("words")


def is_perishable(part: KeepComponent) -> bool:
    """Whether a part is perishable; one of which that is not known counts as perishable.

    A measured acidity and water activity that need no cold speak for themselves, but not for egg
    that is not heated.
    """
    if part.rule is None or part.rule.key == "raw-egg":
        return True
    row = _kinds().get(part.rule.key)
    if row is None:
        return True
    return row.text("perishable") == "yes" and part.verdict != "non-tcs"


@cache
def _kinds() -> dict[str, Row]:
    return {row.text("key"): row for row in load("date_kinds.csv", KIND_COLUMNS)}


@cache
def _marks() -> tuple[Row, ...]:
    return load("date_marks.csv", MARK_COLUMNS)


def spelled(day: date) -> str:
    """A day in words.

    >>> spelled(date(2027, 6, 12))
    '12 June 2027'
    """
    return f"{day.day} {day:%B} {day.year}"
