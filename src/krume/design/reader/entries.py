"""From an item to an entry: which ingredient, which part, how many grams, and what is asked."""

import re

from krume.design.reader.asking import Asking
from krume.design.reader.asks import ask_amount, ask_name
from krume.design.reader.cleaning import NOTHING
from krume.design.reader.eggentries import egg_entry
from krume.design.reader.entry import Entry, made_entry
from krume.design.reader.items import Item
from krume.design.reader.naming import (
    Named,
    is_egg,
    named,
    part_of,
    phrase_of,
    says_juice,
    says_zest,
)
from krume.design.reader.settings import Settings
from krume.design.reader.weights import weigh
from krume.pantry import Found, find


def entry_of(item: Item, settings: Settings, asking: Asking) -> Entry:
    """Entry of one item, with its questions asked."""
    name = named(item.name.replace(NOTHING, ""), settings.own)
    part = part_of(name.phrase.head, name.phrase.whole) or _lead_part(item) or _part_at_end(item)
    if is_egg(name.phrase.head, part) or (item.lead and part in ("yolk", "white")):
        return egg_entry(item, name, part, settings, asking)
    found = _found_with_lead(item, name, part)
    weight = weigh(item, found, asking)
    ask_name(item, name, found, asking)
    ask_amount(item, weight, name, asking)
    return made_entry(item, name, found, part, weight, None)


def _part_at_end(item: Item) -> str | None:
    """`eggs, whites 3`: the part stands last before the number."""
    match = (
        _LAST_PART.search(item.name)
        if item.form in ("of_some", "named") and not item.lead
        else None
    )
    phrase = phrase_of(item.name)
    if match is None and is_egg(phrase.head, None):
        match = _PART_ALONE.match(phrase.note)
    if match is None and item.form == "counted" and says_zest(phrase.note):
        return "zest"
    return None if match is None else match[1].casefold()


_LAST_PART = re.compile(r"^\W*eggs?\b.*\b(white|yolk)s?(?:\s+of)?[\s.,:]*$", re.IGNORECASE)


_PART_ALONE = re.compile(r"^(?:egg\s+)?(white|yolk)s?(?:\s+only)?$", re.IGNORECASE)


def _lead_part(item: Item) -> str | None:
    if not item.lead:
        return None
    part = part_of(item.lead, item.lead)
    if part is None and item.lead.strip().casefold().split()[-1:] == ["white"]:
        return "white"
    return part or ("juice" if says_juice(item.lead) else None)


def _found_with_lead(item: Item, name: Named, part: str | None) -> Found:
    """`grated rind` and `lemon` is lemon rind; `juice` and `lemon` is lemon juice."""
    if not item.lead:
        if item.form != "counted" or says_zest(name.phrase.head) or says_juice(name.phrase.head):
            return name.found
        asked = (part == "zest", says_juice(name.phrase.note))
        word = {(True, False): "zest", (False, True): "juice"}.get(asked)
        return _joined(name.phrase.head, word, name.found) if word else name.found
    word = {"zest": "zest", "juice": "juice"}.get(part or "", item.lead.strip())
    return _joined(name.phrase.head, word, name.found)


def _joined(fruit: str, word: str, otherwise: Found) -> Found:
    german = {"zest": ("Abrieb einer", "schale"), "juice": ("Saft einer", "saft")}.get(word)
    tries = [f"{fruit} {word}", f"{word} {fruit}", f"{word} of {fruit}"]
    tries += (
        [f"{german[0]} {fruit}", f"{fruit}{german[1]}", f"{fruit}n{german[1]}"] if german else []
    )
    for words in tries:
        found = find(words)
        if found.kind == "known":
            return found
    return otherwise


def unit_missing(item: Item, entry: Entry, asking: Asking) -> bool:
    """Ask for the unit of a bare number where the thing is not counted in pieces."""
    if item.form not in ("counted", "of_some") or entry.mass_g is not None or entry.role is None:
        return False
    if entry.role not in (
        "flour",
        "starch",
        "sugar",
        "fat",
        "liquid",
        "water",
        "dairy",
        "binder",
        "leavening",
        "salt",
        "gel",
        "cocoa",
        "acid",
    ):
        return False
    number = asking.source[item.amount.start : item.amount.end]
    asking.ask(
        "unit-missing",
        f"{number} of {entry.name}: which unit?",
        *(
            (
                f"{number} {unit}",
                asking.edit(item.amount.start, item.amount.end, f"{number} {unit}"),
            )
            for unit in ("g", "oz", "cup", "tbsp")
        ),
    )
    return True
