"""The lots of the house: whom each came from, since when, until when, and what lines take it."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from functools import cache

from krume.base import Notice
from krume.evidence import column, load
from krume.pantry import Lot, find, lots_of
from krume.store import book_at, table_rows
from krume.usecases.asking.answer import Asked
from krume.usecases.sold.papers import papers_of

LOTS = "lots.csv"
_COLUMNS = (
    column("key", "key"),
    column("rule", "one of", "no-lot", "apart", "class"),
    column("why"),
    column("status", "status"),
    column("source", "source"),
)


@dataclass(frozen=True, slots=True)
class HouseLot:
    """One lot of the house; an empty supplier is not known, and so is a day that is None."""

    mark: str
    ingredient: str
    supplier: str
    came: date | None
    used_up: date | None

    def was_there(self, day: date) -> bool:
        """Whether nothing written says that it was not in the house on a day."""
        is_after = self.came is None or self.came <= day
        return is_after and (self.used_up is None or day <= self.used_up)


def house_lots(asked: Asked) -> tuple[HouseLot, ...]:
    """Lots of the book, each mark of an ingredient once; what any of its rows says holds."""
    said = _said_of_marks(asked)
    found: dict[tuple[str, str], HouseLot] = {}
    for lot in papers_of(asked).lots:
        key = (_folded(lot.key), _folded(lot.ingredient))
        if lot.key and lot.ingredient and key not in found:
            row = said.get(key[0], {})
            came, used_up = _day(row.get("came", "")), _day(row.get("used_up", ""))
            found[key] = HouseLot(lot.key, lot.ingredient, row.get("supplier", ""), came, used_up)
    return tuple(found.values())


def _said_of_marks(asked: Asked) -> dict[str, dict[str, str]]:
    """The first word of each column over all rows of a mark."""
    said: dict[str, dict[str, str]] = {}
    for row in _rows(asked):
        known = said.setdefault(_folded(row.get("lot", "")), {})
        for name, cell in row.items():
            if cell:
                known.setdefault(name, cell)
    return said


def day_notices(asked: Asked) -> tuple[Notice, ...]:
    """Days of the table of lots that are none: they rule nothing out."""
    return tuple(
        Notice("lot-day-unread", f"{row.get('lot')}: “{cell}” is no day. Type 2027-06-12.", LOTS)
        for row in _rows(asked)
        for name in ("came", "used_up")
        if (cell := row.get(name, "")) and _day(cell) is None
    )


def _rows(asked: Asked) -> list[dict[str, str]]:
    rows = table_rows(book_at(asked.book), LOTS)
    return [{name.casefold(): cell for name, cell in row.items()} for row in rows]


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def _folded(words: str) -> str:
    return " ".join(words.casefold().split())


def lots_for(
    ingredient: str, goods: str, house: Iterable[HouseLot], day: date
) -> tuple[HouseLot, ...]:
    """Lots that a line may take on a day: of its goods, and not ruled out by their days."""
    return tuple(
        lot for lot in house if lot.was_there(day) and takes(ingredient, goods, lot.ingredient)
    )


@cache
def takes(ingredient: str, goods: str, words: str) -> bool:
    """Whether a line may take a lot of what these words name; doubt counts as yes.

    Yolks come out of eggs and juice out of lemons, so that goods of one word are kin, but for
    those of which each is bagged by itself.
    """
    lot = Lot(words, words, "")
    if lots_of(ingredient, goods or None, (lot,)):
        return True
    stem = goods.partition("-")[0]
    return bool(stem) and stem not in _rules("apart") and stem in _stems(words)


def may_take(ingredient: str, goods: str, words: str) -> bool:
    """Whether nothing rules out that a line took a lot of what these words name.

    What the pantry does not know, in the line or in the words, may be anything; a bag called only
    flour or oil may be any of them.
    """
    any_of = _class_of(words)
    if any_of:
        return not goods or goods.partition("-")[0] == any_of
    return not goods or not is_known(words) or takes(ingredient, goods, words)


def _class_of(words: str) -> str:
    """The stem of the goods that words name only by their class; nothing where they name one."""
    found = find(words)
    name = "-".join(("any", *words.casefold().split()))
    is_class = found.wanted or name in _rules("class")
    return (found.key or "").partition("-")[0] if is_class else ""


def is_known(words: str) -> bool:
    """Whether the pantry knows what these words name."""
    return bool(_stems(words))


def goods_of(words: str) -> str:
    """The pantry's key of what these words name; nothing where it has none."""
    return find(words).key or ""


@cache
def _stems(words: str) -> frozenset[str]:
    found = find(words)
    return frozenset(key.partition("-")[0] for key in (found.key, *found.others) if key)


@cache
def _rules(rule: str) -> frozenset[str]:
    rows = load("trace_goods.csv", _COLUMNS)
    return frozenset(row.text("key") for row in rows if row.text("rule") == rule)


def has_no_lot(goods: str) -> bool:
    """Whether goods come without a lot, like water from the tap."""
    return goods in _rules("no-lot")
