"""The kitchen of a book as the planner knows it, with what was assumed; and its clock."""

from datetime import datetime, tzinfo

from krume.base import Notice, StoreError
from krume.plan import Kitchen, Pack, usual_kitchen
from krume.size import read_tin, tin_text
from krume.store import Book, KitchenSettings, kitchen_of, studio_of, table_rows
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import now

_MINUTES = 60


def plan_kitchen(book: Book) -> tuple[Kitchen, tuple[Notice, ...]]:
    """Kitchen of a book; what it does not say is the row of the table, and told."""
    said, usual = kitchen_of(book), usual_kitchen()
    kitchen = Kitchen(
        tins_a_load=said.tins_per_load or usual.tins_a_load,
        load_min=_or(said.load_min, usual.load_min),
        recover_min=_or(said.recover_min, usual.recover_min),
        bowl_ml=None if said.bowl_l is None else said.bowl_l * 1000,
        fridge_places=said.fridge_places,
        tins=_tins(book),
        opens_min=_minute(said.day_opens_h, usual.opens_min),
        begins_min=_minute(said.day_begins_h, usual.begins_min),
        closes_min=_minute(said.day_closes_h, usual.closes_min),
    )
    return kitchen, _assumed(said, kitchen)


def _or(value: float | None, usual: int) -> int:
    return usual if value is None else round(value)


def _minute(hour: float | None, usual: int) -> int:
    return usual if hour is None else round(hour * _MINUTES)


def _assumed(said: KitchenSettings, kitchen: Kitchen) -> tuple[Notice, ...]:
    found = []
    if said.day_opens_h is None or said.day_closes_h is None:
        hours = f"{_clock(kitchen.opens_min)} to {_clock(kitchen.closes_min)}"
        text = f"Working hours {hours} are assumed, a usual start at {_clock(kitchen.begins_min)}."
        found.append(Notice("hours-assumed", text))
    if said.fridge_places is None:
        found.append(Notice("fridge-unknown", "Places of the fridge are not known: not checked."))
    if said.tins_per_load is None:
        text = f"Tins a load are not known: {kitchen.tins_a_load} is taken."
        found.append(Notice("load-assumed", text))
    return tuple(found)


def _clock(minute: int) -> str:
    return f"{minute // _MINUTES:02d}:{minute % _MINUTES:02d}"


def _tins(book: Book) -> tuple[tuple[str, int], ...]:
    """How many there are of each tin, by the tin's own text."""
    counts: dict[str, int] = {}
    for row in table_rows(book, "tins.csv"):
        tin = read_tin(row.get("tin") or "", where="tins.csv").value
        count = row.get("count") or ""
        if tin is not None and count.isascii() and count.isdigit():
            counts[tin_text(tin)] = counts.get(tin_text(tin), 0) + int(count)
    return tuple(counts.items())


def packs_of(book: Book) -> dict[str, Pack]:
    """Packs and stock by the ingredient's name, from `packs.csv` where the book has one."""
    return {
        (row.get("item") or "").casefold(): Pack(
            _grams(row.get("pack_g"), book),
            (row.get("where") or "").strip() or None,
            _grams(row.get("stock_g"), book),
        )
        for row in table_rows(book, "packs.csv")
    }


def _grams(text: str | None, book: Book) -> float | None:
    if not text:
        return None
    try:
        value = float(text)
    except ValueError:
        value = -1.0
    if not 0 <= value < 1e9:
        where = str(book.path / "packs.csv")
        message = f"{where}: {text} is no mass. Type grams, such as 1000."
        raise StoreError(message, field="packs.csv", got=text, want="grams", where=where)
    return value


def plan_now(asked: Asked, book: Book, start: datetime | None) -> datetime:
    """The moment a plan begins at, in the book's zone."""
    moment = now(studio_of(book), on=asked.on)
    zone: tzinfo | None = kitchen_of(book).zone or moment.tzinfo
    if start is None:
        return moment.astimezone(zone)
    return start.replace(tzinfo=zone) if start.tzinfo is None else start.astimezone(zone)
