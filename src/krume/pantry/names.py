"""Everyday names: which ingredient a name means, what shares a name, what is known but not here."""

from dataclasses import dataclass
from functools import cache

from krume.evidence import column, load, optional
from krume.pantry.words import spelled

NAME_COLUMNS = (
    column("name"),
    optional("key", "key"),
    optional("ask", "key"),
    column("rank", "count"),
    optional("generic", "flag"),
    optional("notice"),
)
ASK_COLUMNS = (column("key", "key"), column("question"))
CHOICE_COLUMNS = (column("ask", "key"), column("label"), column("words"), optional("key", "key"))
GOOD_COLUMNS = (
    column("name"),
    column("class", "key"),
    optional("allergens"),
    optional("composite", "flag"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
QUALIFIER_COLUMNS = (column("words"),)
PERCENT_COLUMNS = (
    column("group", "key"),
    column("quantity", "one of", "fat", "cocoa", "alcohol"),
    column("low_pct", "number"),
    column("high_pct", "number"),
    column("key", "key"),
)


@dataclass(frozen=True, slots=True)
class Choice:
    """One good that a shared name may mean, and the words that say so without doubt."""

    label: str
    words: str
    key: str | None


@dataclass(frozen=True, slots=True)
class Good:
    """A known word that no composition table has: its class and the allergens it brings.

    `allergens` are plain names; None means only the supplier can say. A composite may bring more
    than those. `role` is what it does in a balance, where the person has said so.
    """

    name: str
    kind: str
    allergens: tuple[str, ...] | None
    note: str = ""
    role: str | None = None
    composite: bool = False


@dataclass(frozen=True, slots=True)
class Meaning:
    """What one name stands for: ranked keys, or a question, or a good without a row."""

    name: str
    keys: tuple[str, ...] = ()
    notice: str = ""
    ask: str = ""
    good: Good | None = None
    generic: bool = False


@dataclass(frozen=True, slots=True)
class Index:
    """All names by their one spelling, and by their words in any order."""

    exact: dict[str, Meaning]
    bags: dict[tuple[str, ...], Meaning | None]
    vocabulary: frozenset[str]
    qualifiers: frozenset[str]
    phrases: tuple[str, ...]


@cache
def index() -> Index:
    """Index over names.csv, asks and goods.csv; a name of the pantry goes before a good."""
    exact: dict[str, Meaning] = {}
    for meaning in (*_pantry_names(), *_goods()):
        for spelling in spellings(meaning.name):
            exact.setdefault(spelling, meaning)
    words = [
        _joined(row.text("words")) for row in load("qualifiers.csv", QUALIFIER_COLUMNS, ("words",))
    ]
    return Index(
        exact=exact,
        bags=_bags(exact),
        vocabulary=frozenset(word for name in exact for word in name.split(" ")),
        qualifiers=frozenset(word for word in words if " " not in word),
        phrases=tuple(sorted((w for w in words if " " in w), key=len, reverse=True)),
    )


def _joined(text: str) -> str:
    return " ".join(spelled(text).tokens)


def spellings(name: str) -> tuple[str, ...]:
    """Spellings a name is found by: ae for ä, and a bare a too, as keyboards give them."""
    plain = _joined(name)
    if name.isascii():
        return (plain,)
    bare = _joined(name.casefold().translate(_BARE))
    return (plain,) if bare == plain else (plain, bare)


_BARE = str.maketrans({"ä": "a", "ö": "o", "ü": "u"})


def _pantry_names() -> tuple[Meaning, ...]:
    ranked: dict[str, list[tuple[float, str, str, str, bool]]] = {}
    for row in load("names.csv", NAME_COLUMNS, ("name", "rank")):
        entry = (row.number_of("rank"), row.text("key"), row.text("ask"), row.text("notice"))
        ranked.setdefault(row.text("name"), []).append((*entry, row.flag("generic")))
    return tuple(_meaning(name, sorted(entries)) for name, entries in ranked.items())


def _meaning(name: str, entries: list[tuple[float, str, str, str, bool]]) -> Meaning:
    keys = tuple(key for _, key, _, _, _ in entries if key)
    _, _, ask, notice, generic = entries[0]
    return Meaning(name, keys, notice, ask, generic=generic)


def _goods() -> tuple[Meaning, ...]:
    rows = load("goods.csv", GOOD_COLUMNS, ("name",))
    return tuple(
        Meaning(
            row.text("name"),
            good=Good(
                row.text("name"),
                row.text("class"),
                _terms(row.text("allergens")),
                row.text("note"),
                composite=row.flag("composite"),
            ),
        )
        for row in rows
    )


def _terms(text: str) -> tuple[str, ...] | None:
    """Allergens of a cell: `?` is unknown, a blank is none."""
    if text == "?":
        return None
    return tuple(part.strip() for part in text.split(";") if part.strip())


def _bags(exact: dict[str, Meaning]) -> dict[tuple[str, ...], Meaning | None]:
    bags: dict[tuple[str, ...], Meaning | None] = {}
    for name, meaning in exact.items():
        bag = tuple(sorted(name.split(" ")))
        other = bags.get(bag, meaning)
        same = other is not None and _same(other, meaning)
        bags[bag] = meaning if same else None
    return bags


def _same(one: Meaning, other: Meaning) -> bool:
    return (one.keys[:1], one.ask, one.good) == (other.keys[:1], other.ask, other.good)


@cache
def questions() -> dict[str, tuple[str, tuple[Choice, ...]]]:
    """Question and choices of each shared name."""
    choices: dict[str, list[Choice]] = {}
    for row in load("choices.csv", CHOICE_COLUMNS, ("ask", "label")):
        choice = Choice(row.text("label"), row.text("words"), row.text("key") or None)
        choices.setdefault(row.text("ask"), []).append(choice)
    asks = load("asks.csv", ASK_COLUMNS)
    return {r.text("key"): (r.text("question"), tuple(choices[r.text("key")])) for r in asks}


@dataclass(frozen=True, slots=True)
class PercentRow:
    """Which row a percent figure chooses among goods of one name."""

    group: str
    quantity: str
    low_pct: float
    high_pct: float
    key: str


@cache
def percent_rows() -> tuple[PercentRow, ...]:
    """Rows of percents.csv."""
    rows = load("percents.csv", PERCENT_COLUMNS, ("group", "low_pct"))
    return tuple(
        PercentRow(
            row.text("group"),
            row.text("quantity"),
            row.number_of("low_pct"),
            row.number_of("high_pct"),
            row.text("key"),
        )
        for row in rows
    )
