"""What an order says of the people who will eat it, held against what is in it."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from krume.evidence import column, load, optional
from krume.label.gate import GlutenGate
from krume.label.gate_room import ROOM
from krume.label.product import Product, Used
from krume.label.statement import Statement

_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("words"),
    column("kind", "one of", "gluten", "allergen", "goods", "wish", "person", "decoration"),
    optional("avoids"),
    optional("caution"),
    column("status", "status"),
    column("source", "source"),
)
# What makes a food named in a note something that somebody must not eat.
_AGAINST = re.compile(
    r"all?erg|intoler|anaphyl|\breact|\bsensitiv|\bavoid|[ -]free\b|\bwithout\b|\bno\b|\bnon\b"
    r"|\bcan(?:no|['\u2019]?)t\b|\bmust(?:n['\u2019]?t| not)\b|\bdon['\u2019]?t\b|\bdo not\b"
    r"|\bdoes(?:n['\u2019]?t| not)\b|\bohne\b|\bkeine?n?\b|frei\b|unverträglich|verträgt|\bgf\b",
    re.IGNORECASE,
)
_ILLNESS = re.compile(
    r"all?erg|intoler|anaphyl|co?eliac|celiac|zöliak|unverträglich", re.IGNORECASE
)
_DENIED = re.compile(
    r"\b(?:no|not any|without|keine?)\s+(?:known\s+)?(?:food\s+)?(?:allerg\w*|diets?\b)"
    r"|\bno(?:body|ne|\s+one)\b[^.!?]*",
    re.IGNORECASE,
)
_RAW = re.compile(r"\braw\s+eggs?\b|\brohe?[snm]?\s+eier?\b", re.IGNORECASE)
_ALONE = ("gluten", "wish", "person", "decoration")


@dataclass(frozen=True, slots=True)
class DietRule:
    """A kind of diet: the words that name it, and what it keeps away from."""

    key: str
    label: str
    pattern: re.Pattern[str]
    kind: str
    avoids: tuple[str, ...]
    caution: str


@dataclass(frozen=True, slots=True)
class Diet:
    """A diet an order states: which, in whose words, on which line of the text."""

    key: str
    label: str
    kind: str
    words: str
    line: int
    read: str
    avoids: tuple[str, ...]
    caution: str


@dataclass(frozen=True, slots=True)
class Piece:
    """One thing an order holds, with what is known of it; `line` is where the order names it."""

    name: str
    line: int
    read: str
    product: Product
    statements: tuple[Statement, ...]
    gate: GlutenGate
    told: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class DietFinding:
    """How one diet stands with one piece.

    `verdict` is `contains` (the order contradicts itself), `may-contain`, `gate-shut`, `unknown`
    or `caution`; `opens` is the one thing that would settle it.
    """

    diet: Diet
    piece: str
    verdict: str
    what: tuple[str, ...]
    text: str
    opens: str


@cache
def diet_rules() -> tuple[DietRule, ...]:
    """Kinds of diet, in the order of the table."""
    return tuple(
        DietRule(
            row.text("key"),
            row.text("label"),
            re.compile(rf"(?:{'|'.join(row.text('words').split(';'))})", re.IGNORECASE),
            row.text("kind"),
            tuple(word for word in row.text("avoids").split(";") if word),
            row.text("caution"),
        )
        for row in load("diets.csv", _COLUMNS)
    )


def read_diets(lines: Iterable[tuple[int, str]]) -> tuple[Diet, ...]:
    """Diets that numbered lines of an order state, each once, in the order they stand.

    A food alone is no diet ("the walnut one looks nicest"); beside a word against it, it is. A
    line that speaks of an allergy and names nothing known is the diet `unclear`: it is never
    passed over.

    >>> [d.key for d in read_diets([(7, "One guest has coeliac disease. No nuts please!!")])]
    ['gluten', 'nuts']
    >>> [d.key for d in read_diets([(7, "allergic to kiwi")])]
    ['unclear']
    """
    found: dict[str, Diet] = {}
    for number, text in lines:
        for diet in _stated(number, text):
            found.setdefault(diet.key, diet)
    return tuple(sorted(found.values(), key=lambda diet: diet.line))


def _stated(number: int, text: str) -> list[Diet]:
    said = _DENIED.sub(" ", text)
    against = _AGAINST.search(said) is not None
    named = [
        rule
        for rule in diet_rules()
        if rule.pattern.search(_RAW.sub(" ", said) if rule.key == "egg" else said)
        and (against or rule.kind in _ALONE)
    ]
    named = [rule for rule in named if rule.kind != "gluten" or against or _speaks_of_gluten(said)]
    if not named and against and (_ILLNESS.search(said) or _looks_like_a_wish(said)):
        named = [_UNCLEAR]
    return [
        Diet(r.key, r.label, r.kind, _sentence(text, r), number, text, r.avoids, r.caution)
        for r in named
    ]


def _sentence(text: str, rule: DietRule) -> str:
    """The customer's own sentence that names it, else the whole line."""
    parts = [part.strip() for part in re.split(r"[.!?;]+", text) if part.strip()]
    return next((part for part in parts if rule.pattern.search(part)), text.strip())


def _speaks_of_gluten(said: str) -> bool:
    return re.search(r"co?eliac|celiac|zöliak|gluten", said, re.IGNORECASE) is not None


def _looks_like_a_wish(said: str) -> bool:
    """A short note against something: "no cinnamon", "ohne Zimt"."""
    return (
        re.search(r"\b(?:no|without|ohne|keine?n?)\s+\w{3,}|\w{3,}[ -]free\b", said, re.I)
        is not None
    )


_UNCLEAR = DietRule(
    "unclear", "not understood", re.compile(r"(?!)"), "unclear", (),
    "A note speaks against something that was not understood: read it, and ask.",
)  # fmt: skip


def is_illness(diet: Diet) -> bool:
    """Whether an allergy or an illness is spoken of: then words in writing do not help."""
    return _ILLNESS.search(diet.read) is not None


def judge_diets(diets: Iterable[Diet], pieces: Iterable[Piece]) -> tuple[DietFinding, ...]:
    """Every diet against every piece; what is not known of a piece is never read as fine."""
    pieces = tuple(pieces)
    return tuple(
        finding for diet in diets for piece in pieces for finding in _findings(diet, piece)
    )


def _findings(diet: Diet, piece: Piece) -> list[DietFinding]:
    if diet.kind == "decoration":
        return []
    if diet.kind == "unclear":
        return [_not_understood(diet, piece)]
    inside = _named(diet, piece, [word for s in piece.statements for word in s.contains])
    inside += [word for word in _goods(diet, piece) if word not in inside]
    if inside:
        return [_contains(diet, piece, tuple(inside))]
    # The gate's own records say more about gluten than a supplier's "may contain" does.
    if diet.kind == "gluten" and not piece.gate.claim_allowed:
        return [_gate_shut(diet, piece)]
    found = []
    traces = _named(diet, piece, [word for s in piece.statements for word in s.may_contain])
    if traces:
        found.append(_may_contain(diet, piece, tuple(traces)))
    if diet.kind in ("allergen", "goods", "wish"):
        found += _unknown(diet, piece)
    return found


def _named(diet: Diet, piece: Piece, words: list[str]) -> list[str]:
    hit = [w for w in words if any(w == a or w.startswith(f"{a} (") for a in diet.avoids)]
    told = _told(diet, piece)
    plain = dict.fromkeys(_plain(word) for word in hit)
    return [word for word in plain if word.casefold() not in told]


def _told(diet: Diet, piece: Piece) -> frozenset[str]:
    """What the customer was told of in writing: it settles a wish, never an allergy."""
    if is_illness(diet):
        return frozenset()
    return frozenset(word.casefold() for word in piece.told)


def _plain(word: str) -> str:
    """The species where one is named: `nuts (hazelnut)` is hazelnut."""
    match = re.fullmatch(r".*\((.+)\)", word)
    return match[1] if match else word


_GOODS_ROLES = {"gelatine": "gel", "alcohol": "spirit"}


def _goods(diet: Diet, piece: Piece) -> list[str]:
    """Goods that no allergen list names: gelatine, honey, alcohol, buckwheat."""
    told = _told(diet, piece)
    found = [
        used.name
        for word in diet.avoids
        for used in piece.product.used
        if _is(word, used) and used.name.casefold() not in told
    ]
    return list(dict.fromkeys(found))


def _is(word: str, used: Used) -> bool:
    named = word in used.label_name.casefold() or word in used.name.casefold()
    role = _GOODS_ROLES.get(word)
    if role is not None:
        return used.role == role and (named or word == "alcohol")
    return named and word in ("honey", "buckwheat")


def _contains(diet: Diet, piece: Piece, what: tuple[str, ...]) -> DietFinding:
    named = " and ".join(what)
    # A person's state is a caution; what somebody must not eat stands against the order itself.
    verdict = "caution" if diet.kind == "person" else "contains"
    text = f"“{diet.words}” (line {diet.line}) stands against {piece.name}: it holds {named}."
    return DietFinding(diet, piece.name, verdict, what, text, "Change it, or leave it out.")


def _may_contain(diet: Diet, piece: Piece, what: tuple[str, ...]) -> DietFinding:
    named = " and ".join(what)
    text = f"“{diet.words}”: {piece.name} may contain {named}."
    opens = f"A lot whose supplier excludes {named} opens it."
    return DietFinding(diet, piece.name, "may-contain", what, text, opens)


def _gate_shut(diet: Diet, piece: Piece) -> DietFinding:
    shut = [record for record in piece.gate.records if record.is_closed]
    why = " ".join(_record_words(r.lot, r.ingredient, r.text) for r in shut) or "see the room."
    text = f"“{diet.words}”. The gluten gate of {piece.name} is shut: {why}"
    return DietFinding(diet, piece.name, "gate-shut", piece.gate.missing, text, _opens(piece.gate))


def _record_words(lot: str | None, goods: str, text: str) -> str:
    return f"{goods}, lot {lot}, {text}." if lot else f"{goods}, {text}."


def _opens(gate: GlutenGate) -> str:
    """What opens a gate, lots first: where papers speak against one another, another lot."""
    shut = [record for record in gate.records if record.is_closed]
    against = {r.ingredient: r.lot for r in shut if r.state == "conflict" and r.lot}
    lots = [r.lot or r.ingredient for r in shut if r.ingredient not in against]
    said = [
        f"A valid test or certificate for the {goods} that go in opens it, of another lot than "
        f"{lot}"
        for goods, lot in against.items()
    ]
    if lots:
        verb = "opens" if len(lots) == 1 else "open"
        said.append(
            f"A valid test or certificate of {' and of '.join(dict.fromkeys(lots))} {verb} it"
        )
    names = {r.lot or r.ingredient for r in shut} | {ROOM}
    rest = [name for name in gate.missing if name not in names]
    if rest:
        said.append(f"still open: {', '.join(rest)}")
    if ROOM in gate.missing:
        said.append("the room's cleaning record of the day is still to be written")
    return "; ".join(said) + "."


def _unknown(diet: Diet, piece: Piece) -> list[DietFinding]:
    unknown = [u for s in piece.statements for u in s.unknown if "allergen" in u.what]
    names = tuple(dict.fromkeys(u.of for u in unknown))
    if not names:
        return []
    text = f"“{diet.words}”: what {', '.join(names)} in {piece.name} holds is not known."
    return [DietFinding(diet, piece.name, "unknown", names, text, unknown[0].opens)]


def _not_understood(diet: Diet, piece: Piece) -> DietFinding:
    text = f"“{diet.words}” (line {diet.line}) was not understood as a diet."
    opens = "Ask the customer, then write it plainly: “no walnuts”, “milk allergy”."
    return DietFinding(diet, piece.name, "unknown", (), text, opens)
