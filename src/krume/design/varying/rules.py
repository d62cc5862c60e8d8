"""The rules of swaps: which lines may move, what carries the foam, what nobody knows of a swap."""

from dataclasses import dataclass
from fnmatch import fnmatchcase
from functools import cache

from krume.evidence import Row, column, load, optional

_SWAP_COLUMNS = (
    column("key", "key"),
    column("from_roles"),
    column("to_roles"),
    column("label"),
    optional("moves"),
    column("status", "status"),
    column("source", "source"),
    column("note"),
)
_UNKNOWN_COLUMNS = (
    column("key", "key"),
    column("from_pattern"),
    column("to_pattern"),
    optional("needs", "one of", "soda", "foam", "butter", "tart"),
    column("text"),
    column("status", "status"),
    column("source", "source"),
)
_CARRIER_COLUMNS = (
    column("key", "key"),
    column("kind", "one of", "foam", "set", "bind"),
    column("carries"),
    column("status", "status"),
    column("source", "source"),
)
_DIET_COLUMNS = (
    column("key", "key"),
    column("avoids", "one of", "milk", "nuts", "gelatine", "honey", "egg"),
    column("pattern"),
    optional("to_key", "key"),
    column("text"),
    column("status", "status"),
    column("source", "source"),
)
_WISH_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("words"),
    column("avoids"),
    column("status", "status"),
    column("source", "source"),
)
_COCOA_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("liquid_per_g", "number"),
    column("sugar_per_g", "number"),
    column("most_flour_pct", "number"),
    column("status", "status"),
    column("source", "source"),
    column("note"),
)


@dataclass(frozen=True, slots=True)
class SwapRule:
    """How one kind of thing stands in for another, and which lines may move for it.

    `moves` holds `swap` (the new line itself), `fat`, `liquid`, `sugar`; `fat-always` moves even
    where little is missing, `fat-there` only a fat that is there.
    """

    key: str
    label: str
    moves: tuple[str, ...]
    status: str
    source: str
    note: str
    from_roles: tuple[str, ...]
    to_roles: tuple[str, ...]

    def fits(self, from_role: str, to_role: str) -> bool:
        """Whether it is the rule of these two."""
        return _among(from_role, self.from_roles) and _among(to_role, self.to_roles)


@dataclass(frozen=True, slots=True)
class Carrier:
    """What eggs do in a family: `foam`, `set` or only `bind`."""

    family: str
    kind: str
    carries: str
    status: str


@dataclass(frozen=True, slots=True)
class DietSwap:
    """What stands in for a line that a diet avoids; `to_key` is None where nothing is known."""

    key: str
    to_key: str | None
    text: str
    status: str


@dataclass(frozen=True, slots=True)
class DietWish:
    """For whom a formula is varied: what the wish is called, and what it avoids."""

    key: str
    label: str
    words: tuple[str, ...]
    avoids: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CocoaRule:
    """One of the rules in use for cocoa in place of flour."""

    key: str
    label: str
    liquid_per_g: float
    sugar_per_g: float
    most_flour_pct: float
    status: str
    note: str


def _among(role: str, roles: tuple[str, ...]) -> bool:
    return role in roles or (role != "none" and "any" in roles)


@cache
def swap_rules() -> tuple[SwapRule, ...]:
    """All rules, the closest first."""
    return tuple(_rule(row) for row in load("swaps.csv", _SWAP_COLUMNS))


def _rule(row: Row) -> SwapRule:
    return SwapRule(
        key=row.text("key"),
        label=row.text("label"),
        moves=tuple(word for word in row.text("moves").split(";") if word),
        status=row.text("status"),
        source=row.text("source"),
        note=row.text("note"),
        from_roles=tuple(row.text("from_roles").split(";")),
        to_roles=tuple(row.text("to_roles").split(";")),
    )


def rule_of(from_role: str, to_role: str) -> SwapRule:
    """The rule of a swap; `none` stands for a line that comes or goes alone.

    >>> rule_of("nut", "nut").key, rule_of("fat", "fat").moves, rule_of("sugar", "none").key
    ('nut', ('swap', 'liquid'), 'sugar-cut')
    """
    return next(rule for rule in swap_rules() if rule.fits(from_role, to_role))


@cache
def _unknowns() -> tuple[Row, ...]:
    return load("swap_unknowns.csv", _UNKNOWN_COLUMNS)


def unknowns_of(from_what: str, to_what: str, facts: frozenset[str]) -> tuple[str, ...]:
    """What is not known of a swap; both sides as `role:key`, `cut:` for less of a line.

    >>> unknowns_of("nut:hazelnuts", "nut:pistachios-raw", frozenset())[0]
    'Pistachio is bright green only if pale nuts go in untoasted.'
    """
    return tuple(
        row.text("text")
        for row in _unknowns()
        if _fits(from_what, row.text("from_pattern"))
        and _fits(to_what, row.text("to_pattern"))
        and (not row.text("needs") or row.text("needs") in facts)
    )


def _fits(what: str, patterns: str) -> bool:
    return any(fnmatchcase(what, pattern) for pattern in patterns.split(";"))


@cache
def _carriers() -> dict[str, Carrier]:
    return {
        row.text("key"): Carrier(
            row.text("key"), row.text("kind"), row.text("carries"), row.text("status")
        )
        for row in load("carriers.csv", _CARRIER_COLUMNS)
    }


_UNTOLD = Carrier("", "foam", "What the eggs carry in it is not known", "assumed")


def carrier_of(family: str | None) -> Carrier:
    """What eggs do in a family; where nobody has said it, no less than the foam.

    >>> carrier_of("tart").kind, carrier_of("roulade").kind, carrier_of(None).kind
    ('bind', 'foam', 'foam')
    """
    return _carriers().get(family or "", _UNTOLD)


@cache
def _diet_rows() -> tuple[Row, ...]:
    return load("diet_swaps.csv", _DIET_COLUMNS)


def diet_swap(avoids: str, what: str) -> DietSwap:
    """What stands in for a thing, `role:key`, that a diet avoids; the closest pattern counts.

    >>> [diet_swap("milk", what).to_key for what in ("dairy:milk-whole", "dairy:cream-sour")]
    ['rice-drink-unsweetened', None]
    """
    fitting = [
        row
        for row in _diet_rows()
        if row.text("avoids") == avoids and fnmatchcase(what, row.text("pattern"))
    ]
    best = max(fitting, key=lambda row: len(row.text("pattern")))
    return DietSwap(
        best.text("key"), best.text("to_key") or None, best.text("text"), best.text("status")
    )


@cache
def diet_wishes() -> tuple[DietWish, ...]:
    """All wishes that are known, with the words people say them in."""
    return tuple(
        DietWish(
            row.text("key"),
            row.text("label"),
            tuple(row.text("words").split(";")),
            tuple(row.text("avoids").split(";")),
        )
        for row in load("diet_wishes.csv", _WISH_COLUMNS)
    )


def diet_wish(words: str) -> DietWish | None:
    """The wish that words name; None where nobody knows it.

    >>> diet_wish("Dairy free").key, diet_wish("gluten-free")
    ('no-milk', None)
    """
    plain = " ".join(words.casefold().replace("-", " ").split())
    said = ((wish, word.replace("-", " ")) for wish in diet_wishes() for word in wish.words)
    return next((wish for wish, word in said if word == plain), None)


@cache
def cocoa_rules() -> tuple[CocoaRule, ...]:
    """Both rules in use for cocoa in place of flour."""
    return tuple(
        CocoaRule(
            row.text("key"),
            row.text("label"),
            row.number_of("liquid_per_g"),
            row.number_of("sugar_per_g"),
            row.number_of("most_flour_pct"),
            row.text("status"),
            row.text("note"),
        )
        for row in load("cocoa_rules.csv", _COCOA_COLUMNS)
    )
