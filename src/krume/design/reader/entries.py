"""From an item to an entry: which ingredient, which part, how many grams, and what is asked."""

import re
from typing import NamedTuple

from krume.base import Interval, as_text
from krume.design.reader.amounts import EACH
from krume.design.reader.asking import Asking, left_out
from krume.design.reader.besides import grams_beside
from krume.design.reader.cleaning import NOTHING
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
from krume.design.reader.settings import Settings, limit
from krume.design.reader.weights import Weight, weigh
from krume.pantry import Found, find, ingredient

_NUT_SIGNS = ("🥜", "🌰")
_NUTS = ("almonds", "hazelnuts", "walnuts", "peanuts")
_SEVERAL_BOWLS = "in several bowls"
_WEIGH_FIRST = re.compile(r"\bweigh (?:the|your|them)\b|\bas much\b|\bsame weight\b", re.IGNORECASE)
_NO_FURTHER = re.compile(r"[,;]?\s*(?:,|;|\(|\bplus\b|\+|\bfor\b).*$", re.DOTALL)


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


def entry_of(item: Item, settings: Settings, asking: Asking) -> Entry:
    """Entry of one item, with its questions asked."""
    name = named(item.name.replace(NOTHING, ""), settings.own)
    part = part_of(name.phrase.head, name.phrase.whole) or _lead_part(item) or _part_at_end(item)
    if is_egg(name.phrase.head, part) or (item.lead and part in ("yolk", "white")):
        return _egg_entry(item, name, part, settings, asking)
    found = _found_with_lead(item, name, part)
    weight = weigh(item, found, part, asking)
    _ask_name(item, name, found, asking)
    _ask_amount(item, weight, name, asking)
    return _entry(item, name, found, part, weight, None)


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


def _entry(
    item: Item, name: Named, found: Found, part: str | None, weight: Weight, egg_size: str | None
) -> Entry:
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


def _ask_name(item: Item, name: Named, found: Found, asking: Asking) -> None:
    """Ask what a name means, where it means several goods, looks like one, or is unknown."""
    if any(sign in item.name for sign in _NUT_SIGNS):
        _ask_nut(item, asking)
        return
    if name.instead:
        asking.note(
            "alternative",
            f"'{name.phrase.head}' is planned; the text allows {name.instead} instead",
        )
    if found.notice:
        asking.note("ingredient-assumed", found.notice)
    if found.kind in ("known", "good"):
        return
    if item.amount.value is None and found.kind == "ask":
        asking.note("which-ingredient", f"{found.question} It has no amount, so it is not asked")
        return
    code = {
        "ask": "which-ingredient",
        "close": "which-ingredient-close",
        "lookalike": "lookalike",
    }.get(found.kind, "ingredient-unknown")
    if code == "ingredient-unknown":
        asking.note(
            code,
            f"'{name.phrase.head}' is unknown to the table: its mass counts, its composition is unknown",
        )
        if item.amount.value is None or not name.phrase.head:
            return
    options = tuple(
        (
            choice.label,
            renamed(item, name.phrase.head, choice.words.replace(", as a ", " as a "), asking),
        )
        for choice in found.choices[:4]
    )
    if len(options) == 1 and item.start <= len(asking.source) - len(asking.source.lstrip()) + 8:
        options = (*options, ("something else: leave it out for now", left_out(asking.source)))
    asking.ask(code, found.question, *options)


def _ask_nut(item: Item, asking: Asking) -> None:
    sign = next(s for s in _NUT_SIGNS if s in item.name)
    at = asking.source.find(sign, item.start)
    options = tuple(
        (f"ground {nut}", asking.edit(item.name_start, item.end, f"ground {nut}")) for nut in _NUTS
    )
    asking.ask("which-ingredient-nut", f"Which nut is {sign if at >= 0 else 'meant'}?", *options)


def renamed(item: Item, head: str, words: str, asking: Asking) -> str:
    """The source line with an ingredient's name replaced and the rest kept."""
    at = asking.source.find(head, item.name_start, item.name_end) if head else -1
    if at < 0:
        return asking.edit(item.name_start, item.name_end, words)
    return asking.edit(at, at + len(head), words)


def _ask_amount(item: Item, weight: Weight, name: Named, asking: Asking) -> None:
    if weight.mass_g is None:
        _note_no_mass(item, name, asking)
        return
    if weight.mass_g == 0:
        asking.note("amount-zero", f"0 of {name.phrase.head or 'this'}: it counts as nothing")
    if weight.mass_g > limit("heaviest-line") and _SEVERAL_BOWLS not in asking.source:
        _ask_heavy(item, weight.mass_g, asking)


def _note_no_mass(item: Item, name: Named, asking: Asking) -> None:
    if item.amount.value is None:
        asking.note(
            "amount-missing",
            f"no amount is written for {name.phrase.head or 'this'}: its mass is unknown",
        )
    else:
        unit = item.amount.unit.name if item.amount.unit else "each"
        asking.note(
            "mass-unknown",
            f"no table says what one {unit} of {name.phrase.head} weighs: type grams",
        )


def _ask_heavy(item: Item, mass_g: float, asking: Asking) -> None:
    start, end = item.amount.start, item.amount.end
    options = [
        (f"{as_text(mass_g / d)} g", asking.edit(start, end, f"{as_text(mass_g / d)} g"))
        for d in (1e3, 1e4, 1e6, 1e7)
        if limit("heaviest-line") >= mass_g / d >= 1
    ]
    kept = asking.edit(item.end, item.end, f", {_SEVERAL_BOWLS}")
    asking.ask(
        "amount-heavy",
        f"{as_text(mass_g / 1000)} kg is heavier than any bowl here. Is it {as_text(mass_g / 1000)} kg?",
        (f"{as_text(mass_g / 1000)} kg, {_SEVERAL_BOWLS}", kept),
        *options[:3],
    )


def _egg_entry(
    item: Item, name: Named, part: str | None, settings: Settings, asking: Asking
) -> Entry:
    part = part if part in ("white", "yolk") else None
    bare = without_size(name.phrase.head)
    found = find(bare if part is None or not item.lead else f"egg {part}", own=settings.own)
    if found.kind != "known":
        found = find(f"egg {part}" if part else "eggs", own=settings.own)
    unit = item.amount.unit
    if unit is not EACH or item.amount.value is None:
        weight = weigh(item, found, part, asking)
        _ask_amount(item, weight, name, asking)
        return _entry(item, name, found, part, weight, None)
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
        weight, size = _weighed_eggs(eggs, mass, at, settings, asking)
        return _entry(item, name, found, part, weight, size)
    if said is None and settings.egg_size is None and _WEIGH_FIRST.search(asking.source):
        asking.note(
            "egg-weighed-first",
            "the eggs are weighed first; what follows them is fixed by their mass",
        )
        return _entry(item, name, found, part, Weight(None, "egg", None, "declared", ""), None)
    size = sized(eggs, settings, asking)
    if size is None:
        return _entry(item, name, found, part, Weight(None, "egg", None, "declared", ""), None)
    mass_g = mass_of(eggs, size)
    weight = Weight(mass_g.best, "egg", mass_g, size.status, size.source)
    return _entry(item, name, found, part, weight, size.key)


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
            f"{as_text(mass_g, 1)} g does not fit {size.label}: these shelled are {shown(planned)}. Which counts?",
            (
                f"{as_text(mass_g, 1)} g shelled",
                asking.edit(*at, f"{asking.source[at[0] : at[1]]} shelled"),
            ),
            (size.label, asking.edit(*at, f"{as_text(planned.best, 1)} g")),
        )
    return weight, size.key


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


def negative(source: str, start: int, asking: Asking) -> None:
    """A negative amount cannot be used."""
    asking.ask(
        "negative-amount",
        "A mass cannot be negative. Type the amount that goes in, or leave the line out.",
        ("leave it out", left_out(source)),
        (
            "without the minus sign",
            source[:start] + source[start:].replace("-", "", 1).replace("−", "", 1).lstrip(),
        ),
    )
