"""The studio's own settings: the text `studio.toml` of a book."""

import tomllib
from dataclasses import dataclass
from datetime import datetime, timedelta, timezone
from decimal import Decimal
from functools import lru_cache
from pathlib import Path

from krume.base import HEAT_UNITS, STATUSES, StoreError, currency_named
from krume.store.book import MARK, Book, book_bytes

REGIONS = ("eu", "us")
MARKETS = ("eu", "us", "uk", "ca", "au-nz")
LISTS = ("one", "parts")
ADDITIVES = ("names", "numbers")
_OFFSET_LENGTH = 6


@dataclass(frozen=True, slots=True)
class Scale:
    """A scale of the studio: its step and what it can carry."""

    step_g: float
    limit_g: float | None = None


@dataclass(frozen=True, slots=True)
class StudioCost:
    """What one torte is planned to take, in the studio's own money; None is not said."""

    fixed_a_month: Decimal | None = None
    tortes_a_month: Decimal | None = None
    own_work_h: Decimal | None = None
    own_work_rate: Decimal | None = None
    energy_kwh: Decimal | None = None
    boxes: Decimal | None = None
    labels: Decimal | None = None
    currency: str = ""
    status: str = "assumed"


@dataclass(frozen=True, slots=True)
class Studio:
    """What a book says about its studio; None is not said."""

    name: str | None = None
    address: str | None = None
    person: str | None = None
    today: datetime | None = None
    market: str | None = None
    label_list: str | None = None
    label_additives: str | None = None
    units: str | None = None
    eggs_region: str | None = None
    egg_size: str | None = None
    scales: tuple[Scale, ...] = ()
    oven_name: str | None = None
    oven_offset_c: float | None = None
    oven_spread_c: float | None = None
    oven_readings: int | None = None
    oven_dial_c: float | None = None
    bakes_with_fan: bool | None = None
    sheet_note: str | None = None
    invented_note: str | None = None
    cost: StudioCost = StudioCost()


def studio_of(book: Book) -> Studio:
    """Settings of a book; a book without them has none."""
    data = book_bytes(book, MARK)
    return Studio() if data is None else read_studio(data, book.path / MARK)


@lru_cache(maxsize=16)
def read_studio(data: bytes, path: Path) -> Studio:
    """Read the settings, or say which one cannot be used."""
    settings = _Settings(_parsed(data, path), path)
    eggs, oven = settings.table("eggs"), settings.table("oven")
    label = settings.table("label")
    return Studio(
        name=settings.text("name"),
        address=settings.text("address"),
        person=settings.text("person"),
        today=_today(settings),
        market=settings.one_of("market", MARKETS),
        label_list=label.one_of("list", LISTS),
        label_additives=label.one_of("additives", ADDITIVES),
        units=settings.one_of("units", HEAT_UNITS),
        eggs_region=eggs.one_of("region", REGIONS),
        egg_size=eggs.text("buys"),
        scales=tuple(
            Scale(scale.number_of("step_g"), scale.number("limit_g"))
            for scale in settings.tables("scales")
        ),
        oven_name=oven.text("name"),
        oven_offset_c=oven.signed("offset_c"),
        oven_spread_c=oven.signed("spread_c"),
        oven_readings=oven.whole("readings"),
        oven_dial_c=oven.signed("dial_c"),
        bakes_with_fan=oven.flag("bakes_with_fan"),
        sheet_note=settings.text("sheet_note"),
        invented_note=settings.text("invented_note"),
        cost=_cost(settings.table("cost"), settings.one_of("status", STATUSES)),
    )


def _cost(cost: "_Settings", status: str | None) -> StudioCost:
    """Planned values; what is not said of their status is that of the book, else assumed."""
    return StudioCost(
        fixed_a_month=cost.decimal("fixed_a_month"),
        tortes_a_month=cost.decimal("tortes_a_month", above_zero=True),
        own_work_h=cost.decimal("own_work_h"),
        own_work_rate=cost.decimal("own_work_rate"),
        energy_kwh=cost.decimal("energy_kwh"),
        boxes=cost.decimal("boxes"),
        labels=cost.decimal("labels"),
        currency=currency_named(cost.text("currency") or ""),
        status=cost.one_of("status", STATUSES) or status or "assumed",
    )


@lru_cache(maxsize=16)
def _parsed(data: bytes, path: Path) -> dict[str, object]:
    """Settings as a table, which is only read: a thousand formulas ask for the same one."""
    try:
        return tomllib.loads(data.decode("utf-8"))
    except UnicodeDecodeError as error:
        raise _damaged(path, "the text", "bytes that are no UTF-8", "UTF-8") from error
    except tomllib.TOMLDecodeError as error:
        raise _damaged(path, "the text", str(error), "TOML") from error


def _damaged(path: Path, name: str, got: str, want: str) -> StoreError:
    message = f"{path}: {name} reads {got}; want {want}. Correct that line and try again."
    return StoreError(message, field=name, got=got, want=want, where=str(path))


@dataclass(frozen=True, slots=True)
class _Settings:
    """A table of the settings that says where a value of the wrong kind stands."""

    values: dict[str, object]
    path: Path
    prefix: str = ""

    def text(self, key: str) -> str | None:
        value = self.values.get(key)
        if value is None or (isinstance(value, str) and value.strip()):
            return value
        raise self._refused(key, "a text in quotes")

    def one_of(self, key: str, allowed: tuple[str, ...]) -> str | None:
        value = self.text(key)
        if value is not None and value not in allowed:
            raise self._refused(key, " or ".join(allowed))
        return value

    def signed(self, key: str) -> float | None:
        value = self.values.get(key)
        if value is None:
            return None
        if isinstance(value, bool) or not isinstance(value, int | float) or not abs(value) < 1e9:
            raise self._refused(key, "a number")
        return float(value)

    def whole(self, key: str) -> int | None:
        value = self.signed(key)
        return None if value is None else int(value)

    def number(self, key: str) -> float | None:
        value = self.signed(key)
        if value is not None and value <= 0:
            raise self._refused(key, "a number above 0")
        return value

    def decimal(self, key: str, *, above_zero: bool = False) -> Decimal | None:
        value = self.number(key) if above_zero else self.signed(key)
        if value is not None and value < 0:
            raise self._refused(key, "a number of 0 or more")
        return None if value is None else Decimal(str(value))

    def flag(self, key: str) -> bool | None:
        value = self.values.get(key)
        if value is None or isinstance(value, bool):
            return value
        raise self._refused(key, "true or false")

    def number_of(self, key: str) -> float:
        value = self.number(key)
        if value is None:
            raise self._refused(key, "a number above 0")
        return value

    def table(self, key: str) -> "_Settings":
        value = self.values.get(key, {})
        if not isinstance(value, dict):
            raise self._refused(key, f"a table [{key}]")
        return _Settings(value, self.path, f"{key}.")

    def tables(self, key: str) -> "tuple[_Settings, ...]":
        value = self.values.get(key, [])
        if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
            raise self._refused(key, f"tables [[{key}]]")
        return tuple(_Settings(item, self.path, f"{key}.") for item in value)

    def _refused(self, key: str, want: str) -> StoreError:
        got = repr(self.values.get(key)) if key in self.values else "nothing"
        return _damaged(self.path, self.prefix + key, got, want)


def _today(settings: _Settings) -> datetime | None:
    """The day a book's clock stands at, with its offset from UTC."""
    value = settings.values.get("today")
    if value is None:
        return None
    if not isinstance(value, datetime):
        raise _damaged(settings.path, "today", repr(value), "a day and time, 2027-06-10T08:00:00")
    if value.tzinfo is not None:
        return value
    return value.replace(tzinfo=_offset(settings))


def _offset(settings: _Settings) -> timezone:
    text = settings.text("utc_offset") or "+00:00"
    digits = text[1:3] + text[4:6]
    shaped = len(text) == _OFFSET_LENGTH and text[0] in "+-" and text[3] == ":"
    if not (shaped and digits.isascii() and digits.isdigit() and int(text[1:3]) < 24):
        raise _damaged(settings.path, "utc_offset", text, "an offset such as +02:00")
    minutes = int(text[1:3]) * 60 + int(text[4:6])
    return timezone(timedelta(minutes=minutes if text[0] == "+" else -minutes))
