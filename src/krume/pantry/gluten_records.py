"""Which goods need a gluten record, and how the papers of a lot stand on a day."""

from dataclasses import dataclass
from datetime import date
from fnmatch import fnmatchcase
from functools import cache, lru_cache

from krume.base import NotFoundError
from krume.evidence import Row, column, load, optional
from krume.pantry.allergens import allergens, contains_gluten_grain
from krume.pantry.finding import find
from krume.pantry.gluten_claims import ClaimRule, claim_rule
from krume.pantry.gluten_methods import GlutenMethod, method_of
from krume.pantry.ingredients import ROLES, Ingredient, ingredient
from krume.pantry.lot_words import grain_said, lot_words, says_gluten
from krume.pantry.lots import Lot, LotRecord
from krume.pantry.typed_rows import plain_word
from krume.pantry.warned import warning_unread

NEED_COLUMNS = (
    column("key", "key"),
    column("pattern"),
    optional("role", "one of", *ROLES),
    optional("word"),
    optional("composite", "flag"),
    column("needed", "one of", "yes", "no", "unless-plain"),
    column("why"),
    column("status", "status"),
    column("source", "source"),
)
STATES = ("good", "expired", "missing", "conflict", "not-needed", "not-yet-valid")


@dataclass(frozen=True, slots=True)
class RecordNeed:
    """Whether a gluten claim needs a record of these goods, and why."""

    is_needed: bool
    why: str


@cache
def _needs() -> tuple[Row, ...]:
    return load("gluten_need.csv", NEED_COLUMNS)


@lru_cache(maxsize=4096)
def record_need(name: str, key: str | None, *, lot: Lot | None = None) -> RecordNeed:
    """Need of a record by the goods' class; what is on neither list needs one.

    >>> record_need("egg", "egg-whole-fresh").is_needed, record_need("oil", None).is_needed
    (False, True)
    """
    goods = _goods(key)
    if goods is None or key is None:
        return RecordNeed(is_needed=True, why="unknown to the pantry")
    if goods.gluten_grain:
        return RecordNeed(is_needed=True, why=f"made of {goods.gluten_grain}")
    composite = any(a.presence == "unknown" for a in allergens(key))
    words = _plain_words(name)
    row = next(r for r in _needs() if _fits(r, goods, words, is_composite=composite))
    if row.text("needed") == "unless-plain":
        plain = lot is not None and lot_words(lot).is_complete
        return RecordNeed(not plain, "nothing but fruit" if plain else row.text("why"))
    return RecordNeed(row.text("needed") == "yes", row.text("why"))


def _goods(key: str | None) -> Ingredient | None:
    try:
        return None if key is None else ingredient(key)
    except NotFoundError:
        return None


def _plain_words(name: str) -> tuple[str, ...]:
    return tuple(name.casefold().replace("é", "e").replace(",", " ").split())


def _fits(row: Row, goods: Ingredient, words: tuple[str, ...], *, is_composite: bool) -> bool:
    return (
        fnmatchcase(goods.key, row.text("pattern"))
        and row.text("role") in ("", goods.role)
        and (not row.text("word") or row.text("word") in words)
        and (is_composite or not row.flag("composite"))
    )


@dataclass(frozen=True, slots=True)
class RecordStanding:
    """One paper of a lot on a day: its state, and what is against it in a baker's words."""

    record: LotRecord
    state: str
    why: str = ""


def record_state(lot: Lot, *, on: date, market: str = "eu", key: str | None = None) -> str:
    """State of a lot's papers on a day, one of `STATES`.

    `key` is the goods' key of the pantry; without it the lot's own words are looked up. One test
    or certificate in force makes it good while no paper speaks against the lot; what speaks
    against it is not outweighed and does not run out. A test in the US reads below the limit.
    """
    found = key or find(lot.ingredient).key
    standings = record_standings(lot, on=on, market=market)
    if _is_grain(found) or says_gluten(lot) or any(s.state == "conflict" for s in standings):
        return "conflict"
    if any(record.is_unread for record in lot.records):
        return "missing"
    if not record_need(lot.ingredient, found, lot=lot).is_needed:
        return "not-needed"
    state = min((s.state for s in standings), key=_BEST.index)
    is_oat = found is not None and (goods := _goods(found)) and goods.gluten_grain == "oat"
    if state == "good" and is_oat and not lot_words(lot).says_clean_oats:
        return "missing"
    return state


UNREAD = "its row is not understood"
_BEST = ("good", "expired", "not-yet-valid", "missing", "conflict")


def _is_grain(key: str | None) -> bool:
    return key is not None and _goods(key) is not None and contains_gluten_grain(key)


def record_standings(lot: Lot, *, on: date, market: str = "eu") -> tuple[RecordStanding, ...]:
    """Each paper of a lot on a day, in the order of its lines."""
    return tuple(_standing(record, on, claim_rule(market)) for record in lot.records)


def _standing(record: LotRecord, on: date, rule: ClaimRule) -> RecordStanding:
    against = _against(record, on, rule)
    if against:
        return RecordStanding(record, "conflict", against)
    lacks = _lacks(record, rule)
    if lacks:
        return RecordStanding(record, "missing", lacks)
    if record.valid_from is not None and on < record.valid_from:
        return RecordStanding(record, "not-yet-valid", f"in force from {record.valid_from}")
    if record.valid_to is not None and on > record.valid_to:
        return RecordStanding(record, "expired", f"ran out on {record.valid_to}")
    return RecordStanding(record, "good")


def _against(record: LotRecord, on: date, rule: ClaimRule) -> str:
    """What in a paper speaks against the lot, whatever its dates; empty where nothing does."""
    if record.kind.doubts and not _is_over(record, on):
        since = "" if record.valid_from is None else f" since {record.valid_from}"
        return f"in doubt in this kitchen{since}"
    if grain_said(record):
        return "its own paper names what must not be in it"
    unread = warning_unread(record)
    if unread:
        return f"what “{unread}” warns of is not understood, and may be a grain"
    if record.kind.is_record and record.result is not None and rule.is_judged:
        return "" if _is_within(record, rule) or record.result.is_below else _above(record, rule)
    return ""


def _is_over(record: LotRecord, on: date) -> bool:
    """Whether a doubt has been ended before the day; dates the wrong way round end nothing."""
    if record.valid_to is None or (record.valid_from or record.valid_to) > record.valid_to:
        return False
    return on > record.valid_to


def _above(record: LotRecord, rule: ClaimRule) -> str:
    printed = "" if record.result is None else record.result.printed
    return f"{printed} is not {rule.words}"


def _lacks(record: LotRecord, rule: ClaimRule) -> str:
    """What a paper lacks to be a record at all; empty where it lacks nothing."""
    if record.is_unread:
        return f"{UNREAD} (line {record.line} of the lots)"
    if record.kind.doubts:
        return "a doubt that is over; it is no record"
    if not record.kind.is_record:
        return f"{record.kind.name}: no record of gluten"
    if record.result is None:
        return "no result that can be read"
    if not rule.is_judged:
        return rule.why
    method = record_method(record)
    if (method is None and record.method) or (method is not None and not method.counts):
        named = record.method if method is None else method.name
        return f"{named} gives no figure of gluten that counts"
    if not _is_within(record, rule):
        return f"{record.result.printed} does not show {rule.words}"
    first, last = record.valid_from, record.valid_to
    if first is None or last is None or last < first:
        return "without the days from and to which it is in force"
    return ""


def record_method(record: LotRecord) -> GlutenMethod | None:
    """How a paper says it was measured: in its own place, else in its words."""
    return method_of(record.method or record.notes)


def _is_within(record: LotRecord, rule: ClaimRule) -> bool:
    """Whether the result is inside the limit; a certificate's own limit is of the ingredient."""
    if record.result is None:
        return False
    is_below = record.result.is_below or record.evidence != "lab-test"
    return rule.allows(record.result.most_ppm, is_below=is_below)


def lots_of(name: str, key: str | None, lots: tuple[Lot, ...]) -> tuple[Lot, ...]:
    """Lots in the house of the goods that a line names, by what the words mean."""
    folded = plain_word(name)
    return tuple(
        lot
        for lot in lots
        if (key is not None and key in _keys_of(lot.ingredient))
        or plain_word(lot.ingredient) == folded
    )


@cache
def _keys_of(words: str) -> frozenset[str]:
    found = find(plain_word(words))
    return frozenset(k for k in (found.key, *found.others) if k)
