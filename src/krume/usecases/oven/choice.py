"""What may go into the oven, chosen by a tap, and what it would do to the loads that are in."""

import re
from dataclasses import dataclass
from datetime import tzinfo

from krume.base import as_text
from krume.store import book_at, kitchen_of, table_rows
from krume.usecases.asking.answer import Asked
from krume.usecases.book.texts import TextRow, text_now, texts_of
from krume.usecases.oven.load import Load
from krume.usecases.oven.loads import if_it_went_in, loads_now
from krume.usecases.oven.oven import clock_at

_SHOWN = 12
_TIN = re.compile(r"^\s*(?:tin|ring|pan)\s*:\s*(?P<tin>.+)$", re.IGNORECASE | re.MULTILINE)


@dataclass(frozen=True, slots=True)
class OvenChoice:
    """A formula that may go in: its name, its title, its own tin as written."""

    formula: str
    title: str
    tin: str


def tins_at_hand(asked: Asked) -> tuple[str, ...]:
    """The tins of the book, as written in its table, each once."""
    rows = table_rows(book_at(asked.book), "tins.csv")
    return tuple(dict.fromkeys(text for row in rows if (text := (row.get("tin") or "").strip())))


@dataclass(frozen=True, slots=True)
class OvenChoices:
    """The formulas to tap; `more` are left out, and found by typing a piece of their names."""

    shown: tuple[OvenChoice, ...]
    more: int


def oven_choices(asked: Asked, *, search: str = "") -> OvenChoices:
    """Formulas with a tin of their own, those of the last hours first, then by name."""
    lately = [load.formula for load in reversed(loads_now(asked)) if load.formula]
    rows = sorted(
        texts_of("formula", asked, search=search),
        key=lambda row: (row.name not in lately, row.name.casefold()),
    )
    found: list[OvenChoice] = []
    for place, row in enumerate(rows):
        if len(found) == _SHOWN:
            return OvenChoices(tuple(found), len(rows) - place)
        if choice := _choice(row, asked):
            found.append(choice)
    return OvenChoices(tuple(found), 0)


def choice_for_oven(name: str, asked: Asked) -> OvenChoice:
    """One formula by its name; raises NotFoundError where the book has none."""
    now = text_now("formula", name, asked)
    tin = _TIN.search(now.text)
    return OvenChoice(now.name, now.title, tin["tin"].strip() if tin else "")


def _choice(row: TextRow, asked: Asked) -> OvenChoice | None:
    """A formula with a tin; a cream has none and does not go into the oven."""
    found = choice_for_oven(row.name, asked)
    return found if found.tin else None


def others_if_in(formula: str, tin: str, tins: int, asked: Asked) -> tuple[str, ...]:
    """What a load would do to those that are in, and they to it, in words; nothing is kept."""
    before = {load.client_id: load for load in loads_now(asked)}
    after = if_it_went_in(formula, tin, asked, tins=tins)
    kitchen = kitchen_of(book_at(asked.book))
    zone = kitchen.zone
    said = [_other(before[x.client_id], x, zone) for x in after if x.client_id in before]
    new = next(load for load in after if load.client_id not in before)
    full = _full(sum(load.tins for load in after), kitchen.tins_per_load)
    return tuple(text for text in (full, *said, _new(new, zone)) if text)


def _full(tins: int, most: int | None) -> str:
    if most is None or tins <= most:
        return ""
    return f"{tins} tins would be in; this oven takes {most} at once, by your own figure."


def _other(was: Load, load: Load, zone: tzinfo | None) -> str:
    """Where the first check and the latest out of a load would go."""
    if load.check_min is None or load.core_c is not None:
        return ""
    number = f"Load {load.number}"
    if (was.check_min, was.latest_min) == (load.check_min, load.latest_min):
        return f"{number} stays as it is."
    check = " → ".join(clock_at(load.in_at, m, zone) for m in (was.check_min, load.check_min))
    latest = " → ".join(clock_at(load.in_at, m, zone) for m in (was.latest_min, load.latest_min))
    return f"{number}: first check {check}, latest out {latest}."


def _new(load: Load, zone: tzinfo | None) -> str:
    """What the new load itself may expect."""
    if load.check_min is None or load.latest_min is None:
        return load.said
    check, latest = (clock_at(load.in_at, m, zone) for m in (load.check_min, load.latest_min))
    minutes = f"{as_text(load.check_min, 0)}–{as_text(load.latest_min, 0)} min"
    said = f" {load.said}" if load.said else ""
    why = f" {load.why}" if load.why else ""
    return f"In now: first check {check}, latest out {latest} ({minutes}).{why}{said}"
