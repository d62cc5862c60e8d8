"""Entries of eggs in the shell, of whites and of yolks."""

import re

from krume.base import Interval, as_text
from krume.design.reader.amounts import EACH
from krume.design.reader.asking import Asking
from krume.design.reader.asks import ask_amount
from krume.design.reader.besides import grams_beside
from krume.design.reader.eggs import (
    Eggs,
    ask_mass_basis,
    mass_of,
    said_size,
    says_shelled,
    shown,
    size_agrees,
    sized,
    without_size,
)
from krume.design.reader.entry import Entry, made_entry
from krume.design.reader.items import Item
from krume.design.reader.naming import (
    Named,
)
from krume.design.reader.settings import Settings
from krume.design.reader.weights import Weight, weigh
from krume.pantry import Found, find

_WEIGH_FIRST = re.compile(r"\bweigh (?:the|your|them)\b|\bas much\b|\bsame weight\b", re.IGNORECASE)


_NO_FURTHER = re.compile(r"[,;]?\s*(?:,|;|\(|\s-\s|\bplus\b|\+|\bfor\b).*$", re.DOTALL)


_PART_OF_ANOTHER = re.compile(
    r"^\s*(?P<eggs>eggs?)\b[^,;]*\band\s+(?:the\s+)?(?P<part>yolk|white)s?\s+of\s+"
    r"(?:another|one more)\b",
    re.IGNORECASE,
)


def _ask_parts_apart(item: Item, other: re.Match[str], asking: Asking) -> None:
    """`1 egg and the yolk of another` is two things: each is asked for with its own count."""
    apart = f"{other['eggs']}, plus 1 egg {other['part']}"
    line = asking.edit(item.name_start, item.name_start + other.end(), apart)
    asking.ask(
        "egg-parts",
        f"Whole eggs and a {other['part']} in one phrase: write each with its own count.",
        (f"1 egg {other['part']} on top of the whole", line),
    )


def egg_entry(
    item: Item, name: Named, part: str | None, settings: Settings, asking: Asking
) -> Entry:
    """Entry of eggs, whites or yolks: counted by size, weighed, or measured."""
    part = part if part in ("white", "yolk") else None
    if (other := _PART_OF_ANOTHER.search(item.name)) is not None:
        part = None
        _ask_parts_apart(item, other, asking)
    bare = without_size(name.phrase.head)
    found = find(bare if part is None or not item.lead else f"egg {part}", own=settings.own)
    if found.kind != "known":
        found = find(f"egg {part}" if part else "eggs", own=settings.own)
    unit = item.amount.unit
    if unit is not EACH or item.amount.value is None:
        weight = weigh(item, found, asking)
        ask_amount(item, weight, name, asking)
        return made_entry(item, name, found, part, weight, None)
    if item.amount.about:
        asking.note("about", f"about {as_text(item.amount.best or 0)}: taken as it stands")
    return _counted_eggs(item, name, found, part, settings, asking)


def _counted_eggs(
    item: Item, name: Named, found: Found, part: str | None, settings: Settings, asking: Asking
) -> Entry:
    value = item.amount.value
    count = value if isinstance(value, (float, Interval)) else 0.0
    said = said_size(asking.source[item.amount.end : item.end], item.amount.end) or said_size(
        asking.source[item.start : item.amount.start], item.start
    )
    eggs = Eggs(count, part, item.amount.end, said, _end_of_name(item, asking))
    beside = grams_beside(item, asking)
    if beside is not None and beside.grams is not None:
        mass, at = beside.grams, (beside.start, beside.end)
        weight, key = _weighed_eggs(eggs, mass, at, settings, asking)
        return made_entry(item, name, found, part, weight, key)
    if said is None and settings.egg_size is None and _WEIGH_FIRST.search(asking.source):
        asking.note(
            "egg-weighed-first",
            "the eggs are weighed first; what follows them is fixed by their mass",
        )
        return made_entry(item, name, found, part, Weight(None, "egg", None, "declared", ""), None)
    size = sized(eggs, settings, asking)
    if size is None:
        return made_entry(item, name, found, part, Weight(None, "egg", None, "declared", ""), None)
    mass_g = mass_of(eggs, size)
    weight = Weight(mass_g.best, "egg", mass_g, size.status, size.source)
    return made_entry(item, name, found, part, weight, size.key)


def _end_of_name(item: Item, asking: Asking) -> int:
    """Where a size may be written in: behind the name, before what follows a comma or bracket."""
    text = asking.source[item.amount.end : item.end]
    match = _NO_FURTHER.search(text)
    end = item.amount.end + (
        match.start() if match and text[: match.start()].strip() else len(text)
    )
    if item.lead or not text.strip():
        end = item.end if match is None or not text.strip() else end
    return end


def _weighed_eggs(
    eggs: Eggs, mass_g: float, at: tuple[int, int], settings: Settings, asking: Asking
) -> tuple[Weight, str | None]:
    """Grams beside a count: taken where they are called shelled or fit the size, else asked."""
    weight = Weight(mass_g, "weighed", None, "declared", "")
    if eggs.part is not None or says_shelled(asking.source[eggs.after_count :]):
        return weight, None
    if eggs.said is None and settings.egg_size is None:
        ask_mass_basis(eggs, mass_g, at, asking)
        return weight, None
    quiet = Asking(asking.source)
    size = sized(eggs, settings, quiet)
    if size is None:
        ask_mass_basis(eggs, mass_g, at, asking)
        return weight, None
    if not size_agrees(eggs, size, mass_g):
        planned = mass_of(eggs, size)
        asking.ask(
            "egg-mass-differs",
            f"{as_text(mass_g, 1)} g does not fit {size.label}: these shelled are "
            f"{shown(planned)}. Which counts?",
            (
                f"{as_text(mass_g, 1)} g shelled",
                asking.edit(*at, f"{asking.source[at[0] : at[1]]} shelled"),
            ),
            (size.label, asking.edit(*at, f"{as_text(planned.best, 1)} g")),
        )
    return weight, size.key
