"""What a composite is made of, its allergens and its animal: only what the lots in use say."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fnmatch import fnmatchcase
from functools import cache

from krume.evidence import Row, column, load, optional
from krume.label.product import Used
from krume.pantry import (
    Allergen,
    Ingredient,
    Lot,
    allergens,
    allergens_of_words,
    allergens_said,
    find,
    is_tree_nut,
    lot_words,
    lots_of,
    without_share,
)

COMPOSITE_COLUMNS = (
    column("key", "key"),
    column("pattern"),
    optional("base"),
    column("wanted"),
    optional("not_asked_in"),
    column("status", "status"),
    column("source", "source"),
)


@dataclass(frozen=True, slots=True)
class Unknown:
    """Something not known: of what, what it closes (`label` or `panel`), and what opens it."""

    of: str
    what: str
    closes: str
    opens: str

    @property
    def text(self) -> str:
        """One line that names it and what opens it."""
        return f"{self.of}: {self.what} not known. {self.opens}"


@dataclass(frozen=True, slots=True)
class Opened:
    """Goods with what is in them: parts to print, allergens, traces, animal, what is open."""

    used: Used
    lots: tuple[Lot, ...]
    parts: tuple[str, ...]
    contains: tuple[Allergen, ...]
    traces: tuple[Allergen, ...]
    animal: str | None
    unknown: tuple[Unknown, ...]


def lots_in_use(used: Used, lots: tuple[Lot, ...], chosen: frozenset[str]) -> tuple[Lot, ...]:
    """Lots of these goods that go in: those named by the person, else all in the house."""
    found = lots_of(used.name, used.key, lots)
    named = tuple(lot for lot in found if lot.key in chosen)
    return named or found


def opened(
    used: Used,
    lots: tuple[Lot, ...],
    chosen: frozenset[str] = frozenset(),
    *,
    market: str = "eu",
    sheet: Ingredient | None = None,
) -> Opened:
    """Open one of the goods; what no lot in use says stays unknown and closes the label.

    `sheet` is the supplier's sheet of the goods, where the book holds one.
    """
    in_use = lots_in_use(used, lots, chosen)
    parts, missing_parts = _parts(used, in_use, market)
    contains, missing_allergens = _contains(used, in_use, sheet)
    animal, missing_animal = _animal(used, in_use)
    traces, missing_traces = _traces(used, in_use, sheet)
    if animal is not None:
        contains = (*contains, *allergens_of_words(animal))
    open_ones = (
        *_kind(used, in_use), *missing_parts, *missing_allergens, *missing_animal, *missing_traces,
        *_contradicted(used, in_use, contains, traces),
    )  # fmt: skip
    return Opened(used, in_use, parts, contains, traces, animal, open_ones)


@cache
def _composites() -> tuple[Row, ...]:
    return load("composites.csv", COMPOSITE_COLUMNS)


@dataclass(frozen=True, slots=True)
class _Composite:
    """What must be known of a composite; `base` is what it surely is, beside it."""

    base: str
    wanted: str


@cache
def _composite(key: str | None, name: str, market: str) -> _Composite | None:
    if key is None:
        good = find(name).good
        is_one = good is not None and good.composite
        return _Composite("", "its list of parts") if is_one else None
    row = next((r for r in _composites() if fnmatchcase(key, r.text("pattern"))), None)
    if row is None or market in row.text("not_asked_in").split(";"):
        return None
    return _Composite(row.text("base"), row.text("wanted"))


def _who(lots: tuple[Lot, ...], used: Used) -> str:
    named = " and ".join(lot.key for lot in lots)
    return f"A specification of {named or 'a lot of ' + used.name}"


def _parts(
    used: Used, lots: tuple[Lot, ...], market: str
) -> tuple[tuple[str, ...], tuple[Unknown, ...]]:
    wanted = _composite(used.key, used.name, market)
    if wanted is None:
        return (), ()
    said = [lot_words(lot) for lot in lots]
    base = wanted.base
    whole = all(w.is_complete or (base and w.parts) for w in said)
    if not said or not whole:
        opens = f"{_who(lots, used)} with its parts opens it."
        return (), (Unknown(used.label_name, wanted.wanted, "label", opens),)
    found = [part for words in said for part in words.parts]
    kept = [part for part in found if part != base]
    return tuple(dict.fromkeys((*([base] if base else []), *map(without_share, kept)))), ()


def _kind(used: Used, lots: tuple[Lot, ...]) -> tuple[Unknown, ...]:
    """What the text leaves open of goods that are in the pantry; lots that name it settle it."""
    wanted = "" if used.key is None else find(used.name).wanted
    if not wanted or (lots and not any(find(lot.ingredient).wanted for lot in lots)):
        return ()
    opens = f"Its kind in the text, such as {used.label_name}, or a lot of it opens it."
    return (Unknown(used.name, wanted, "label", opens),)


def _contains(
    used: Used, lots: tuple[Lot, ...], sheet: Ingredient | None
) -> tuple[tuple[Allergen, ...], tuple[Unknown, ...]]:
    by_itself = allergens(used.key) if used.key is not None else allergens_of_words(used.name)
    known = [a for a in by_itself if a.presence == "contains"]
    is_open = any(a.presence == "unknown" for a in by_itself)
    said = [lot_words(lot) for lot in lots if lot.is_specified]
    words = [part for each in said for part in each.parts]
    if sheet is not None and sheet.contains is not None:
        return _with_said(known, [*words, *sheet.contains], used, lots)
    if is_open and (not said or not all(w.parts or w.may_contain for w in said)):
        opens = f"{_who(lots, used)} that says its allergens opens it."
        return tuple(known), (Unknown(used.label_name, "its allergens", "label", opens),)
    return _with_said(known, words, used, lots)


def _with_said(
    known: list[Allergen], words: Iterable[str], used: Used, lots: tuple[Lot, ...]
) -> tuple[tuple[Allergen, ...], tuple[Unknown, ...]]:
    """Allergens by the words of a record; a word that means nothing known stays open."""
    open_ones: list[Unknown] = []
    for word in dict.fromkeys(words):
        found = allergens_said(word)
        known += [a for a in found if a.presence == "contains"]
        if any(a.presence == "unknown" for a in found):
            opens = f"{_who(lots, used)} in plainer words opens it."
            what = f"what “{word}” means for its allergens"
            open_ones.append(Unknown(used.label_name, what, "label", opens))
    return tuple(dict.fromkeys(known)), tuple(open_ones)


def _traces(
    used: Used, lots: tuple[Lot, ...], sheet: Ingredient | None
) -> tuple[tuple[Allergen, ...], tuple[Unknown, ...]]:
    words = [word for lot in lots for word in lot_words(lot).may_contain]
    words += () if sheet is None else sheet.may_contain or ()
    return _with_said([], words, used, lots)


def _contradicted(
    used: Used, lots: tuple[Lot, ...], contains: Iterable[Allergen], traces: Iterable[Allergen]
) -> list[Unknown]:
    """Where a record says that something is not in it, and the goods or another record say so."""
    denied = {
        allergen.allergen: word
        for lot in lots
        for word in lot_words(lot).denies
        for allergen in allergens_said(word)
        if allergen.presence == "contains"
    }
    both = [each.allergen for each in (*contains, *traces) if _is_denied(each.allergen, denied)]
    opens = f"{_who(lots, used)} that says one thing opens it."
    what = "whether it holds {} (its records say both)"
    return [
        Unknown(used.label_name, what.format(name), "label", opens) for name in dict.fromkeys(both)
    ]


def _is_denied(allergen: str, denied: Mapping[str, str]) -> bool:
    return allergen in denied or ("tree nut" in denied and is_tree_nut(allergen))


def _animal(used: Used, lots: tuple[Lot, ...]) -> tuple[str | None, tuple[Unknown, ...]]:
    if used.key is None or not used.key.startswith("gelatin"):
        return None, ()
    said = {lot_words(lot).animal for lot in lots}
    if len(said) == 1 and None not in said:
        return said.pop(), ()
    opens = f"{_who(lots, used)} that names the animal opens it."
    return None, (Unknown(used.label_name, "its animal", "label", opens),)
