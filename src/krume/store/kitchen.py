"""What the kitchen can do at once: the oven, mixer, fridge and hours of a book's `studio.toml`."""

from dataclasses import dataclass
from datetime import timezone, tzinfo
from functools import lru_cache
from pathlib import Path
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from krume.store.book import MARK, Book, book_bytes
from krume.store.studio import _offset, _parsed, _Settings


@dataclass(frozen=True, slots=True)
class KitchenSettings:
    """Settings of the kitchen; None is not said. Hours are of the clock, 7.5 is half past seven."""

    tins_per_load: int | None = None
    load_min: float | None = None
    recover_min: float | None = None
    bowl_l: float | None = None
    fridge_places: float | None = None
    day_opens_h: float | None = None
    day_begins_h: float | None = None
    day_closes_h: float | None = None
    zone: tzinfo | None = None


def kitchen_of(book: Book) -> KitchenSettings:
    """Kitchen of a book; without settings nothing is known of it."""
    data = book_bytes(book, MARK)
    return KitchenSettings() if data is None else _read(data, book.path / MARK)


@lru_cache(maxsize=16)
def _read(data: bytes, path: Path) -> KitchenSettings:
    settings = _Settings(_parsed(data, path), path)
    oven, mixer = settings.table("oven"), settings.table("mixer")
    fridge, hours = settings.table("fridge"), settings.table("hours")
    tins = oven.number("tins_per_load")
    return KitchenSettings(
        tins_per_load=None if tins is None else max(1, int(tins)),
        load_min=oven.number("load_min"),
        recover_min=oven.number("recover_min"),
        bowl_l=mixer.number("bowl_l"),
        fridge_places=fridge.number("cake_places"),
        day_opens_h=hours.number("opens"),
        day_begins_h=hours.number("begins"),
        day_closes_h=hours.number("closes"),
        zone=_zone(settings),
    )


def _zone(settings: _Settings) -> tzinfo | None:
    """The zone a book names, else its fixed offset, else none."""
    name = settings.text("zone")
    if name is None:
        is_said = settings.text("utc_offset") is not None
        offset: timezone | None = _offset(settings) if is_said else None
        return offset
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError) as error:
        raise settings._refused("zone", "a zone such as Europe/Berlin") from error  # noqa: SLF001
