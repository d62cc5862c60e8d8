"""Which goods need a gluten record, and how a lot's record stands on a day."""

from dataclasses import dataclass
from datetime import date
from fnmatch import fnmatchcase
from functools import cache, lru_cache

from krume.base import NotFoundError
from krume.evidence import Row, column, figures, load, optional
from krume.pantry.allergens import allergens, contains_gluten_grain
from krume.pantry.finding import find
from krume.pantry.ingredients import ROLES, Ingredient, ingredient
from krume.pantry.lot_words import lot_words, says_gluten
from krume.pantry.lots import Lot

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


def record_state(lot: Lot, *, on: date, market: str = "eu", key: str | None = None) -> str:
    """State of a lot's record on a day, one of `STATES`.

    `key` is the goods' key of the pantry; without it the lot's own words are looked up. Words on
    a bag and a specification are no record; a test in the US has to read below the limit.
    """
    found = key or find(lot.ingredient).key
    if found is not None and _goods(found) is not None and contains_gluten_grain(found):
        return "conflict"
    if says_gluten(lot):
        return "conflict"
    if not record_need(lot.ingredient, found, lot=lot).is_needed:
        return "not-needed"
    state = _state_of_record(lot, on, market)
    is_oat = found is not None and (goods := _goods(found)) and goods.gluten_grain == "oat"
    if state == "good" and is_oat and not lot_words(lot).says_clean_oats:
        return "missing"
    return state


def _state_of_record(lot: Lot, on: date, market: str) -> str:
    if not lot.is_record or lot.result is None:
        return "missing"
    if not _is_within(lot, market):
        return "conflict"
    if lot.valid_from is None or lot.valid_to is None or lot.valid_to < lot.valid_from:
        return "missing"
    if on < lot.valid_from:
        return "not-yet-valid"
    return "expired" if on > lot.valid_to else "good"


def _is_within(lot: Lot, market: str) -> bool:
    """Whether the result is inside the limit: in the US a test reads below it."""
    if lot.result is None:
        return False
    limit = figures("declared.csv")[
        f"{market}-gluten-{'below' if market == 'us' else 'most'}"
    ].value
    strict = market == "us" and lot.evidence == "lab-test" and not lot.result.is_below
    return lot.result.most_ppm < limit if strict else lot.result.most_ppm <= limit


def lots_of(name: str, key: str | None, lots: tuple[Lot, ...]) -> tuple[Lot, ...]:
    """Lots in the house of the goods that a line names, by what the words mean."""
    folded = " ".join(name.casefold().split())
    return tuple(
        lot
        for lot in lots
        if (key is not None and key in _keys_of(lot.ingredient))
        or " ".join(lot.ingredient.casefold().split()) == folded
    )


@cache
def _keys_of(words: str) -> frozenset[str]:
    found = find(words)
    return frozenset(k for k in (found.key, *found.others) if k)
