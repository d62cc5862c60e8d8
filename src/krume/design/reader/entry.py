"""What one ingredient of a line was read as."""

from typing import NamedTuple

from krume.base import Interval
from krume.design.reader.eggs import (
    without_size,
)
from krume.design.reader.items import Item
from krume.design.reader.naming import (
    Named,
)
from krume.design.reader.weights import Weight
from krume.pantry import Found, ingredient


class Entry(NamedTuple):
    """What one ingredient of a line was read as; number and section are added later."""

    amount: float | Interval | None
    unit: str | None
    mass_g: float | None
    basis: str
    name: str
    ingredient: str | None
    part: str | None
    note: str | None
    mass_interval_g: Interval | None
    status: str
    source: str
    egg_size: str | None
    role: str | None
    kind: str = "known"


def made_entry(
    item: Item, name: Named, found: Found, part: str | None, weight: Weight, egg_size: str | None
) -> Entry:
    """Entry of an item that was named and weighed."""
    note = ", ".join(n for n in (item.how_full, name.phrase.note) if n) or None
    unit = item.amount.unit
    called = (
        name.phrase.whole
        if found.kind == "good" and found.good is not None and " as a " in found.words
        else name.phrase.head
    )
    shown = " ".join(without_size(name.phrase.head).split()) if weight.basis == "egg" else called
    role = found.good.role if found.good is not None else None
    key = found.key if found.kind == "known" else None
    return Entry(
        item.amount.value, unit.name if unit else None, weight.mass_g, weight.basis,
        shown or name.phrase.head, key, part, note, weight.interval_g, weight.status, weight.source,
        egg_size, role or (ingredient_role(key) if key else None), found.kind,
    )  # fmt: skip


def ingredient_role(key: str) -> str:
    """Role of a key; one's own keys are looked up by the caller."""
    return ingredient(key).role
