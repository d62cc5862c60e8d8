"""The few settings a studio begins with, written into `studio.toml` beside all that is there."""

import re
from dataclasses import dataclass

from krume.base import HEAT_UNITS, ConflictError, InputError
from krume.design import decode_text
from krume.pantry import MARKETS
from krume.store import (
    book_at,
    book_bytes,
    is_book,
    keep_text,
    kept_text,
    read_studio,
    studio_of,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.book.book import init_book
from krume.usecases.book.studio_lines import Setting, with_settings

_PLACE = "studio.toml"
_REGIONS = ("eu", "us")
_CHOICES = {"market": MARKETS, "eggs_region": _REGIONS, "units": HEAT_UNITS}
_NUMBER = re.compile(r"(?P<sign>[-\u2212+]?)\s*(?P<digits>[0-9]{1,5}(?:[.,][0-9]{1,3})?)")
_WHERE = {
    "name": ("", "name"),
    "address": ("", "address"),
    "market": ("", "market"),
    "units": ("", "units"),
    "eggs_region": ("eggs", "region"),
    "scale_step_g": ("scales", "step_g"),
    "oven_offset_c": ("oven", "offset_c"),
}
_NUMBERS = {
    "scale_step_g": "Type the smallest step its display shows, in grams, such as 1 or 0.1.",
    "oven_offset_c": "Type true minus dial in °C, such as -12 for an oven 12 under its dial.",
}
_LISTED = ("scales",)


@dataclass(frozen=True, slots=True)
class StudioSettings:
    """Settings as they are typed, nothing where they are not said, and the version they are of."""

    name: str = ""
    market: str = ""
    eggs_region: str = ""
    scale_step_g: str = ""
    oven_offset_c: str = ""
    units: str = ""
    address: str = ""
    seen: int | None = None
    is_plain_file: bool = False

    @property
    def is_said(self) -> bool:
        """Whether anything was said yet."""
        return any(_typed(self).values())


def settings_now(asked: Asked) -> StudioSettings:
    """The settings as the book has them."""
    book = book_at(asked.book)
    data = book_bytes(book, _PLACE)
    if data is None:
        return StudioSettings()
    studio, kept = read_studio(data, book.path / _PLACE), kept_text(book, _PLACE)
    return StudioSettings(
        name=studio.name or "",
        address=studio.address or "",
        market=studio.market or "",
        units=studio.units or "",
        eggs_region=studio.eggs_region or "",
        scale_step_g=f"{studio.scales[0].step_g:g}" if studio.scales else "",
        oven_offset_c="" if studio.oven_offset_c is None else f"{studio.oven_offset_c:g}",
        seen=None if kept is None else kept.revision,
        is_plain_file=kept is None,
    )


def units_of(asked: Asked) -> str:
    """How this studio reads temperatures: `c`, `f` or `both`; nothing said is °C."""
    return studio_of(book_at(asked.book)).units or "c"


def settings_text(asked: Asked) -> str:
    """The whole text of the settings as it is now."""
    data = book_bytes(book_at(asked.book), _PLACE)
    return "" if data is None else decode_text(data).value


def save_settings(wish: StudioSettings, asked: Asked) -> None:
    """Write what was said; what is left empty stays as it is. Sent twice it is kept once.

    Raises ConflictError where the settings were changed since `wish.seen`.
    """
    book = book_at(asked.book)
    is_new = not is_book(book)
    text = _with_all(settings_text(asked) if not is_new else "", wish)
    if is_new:
        init_book(asked)
        text = _with_all(settings_text(asked), wish)
    kept = kept_text(book, _PLACE)
    if kept is not None and decode_text(kept.body).value == text:
        return
    seen = kept.revision if kept is not None and is_new else wish.seen
    if kept is not None and seen != kept.revision:
        raise ConflictError(
            "The settings were changed since you opened them. Yours are kept here; look at both.",
            field="seen",
            got=str(seen),
            want=str(kept.revision),
        )
    keep_text(book, _PLACE, text.encode(), seen=seen)


def settings_wished(wish: StudioSettings, asked: Asked) -> str:
    """The text that the settings would become."""
    return _with_all(settings_text(asked), wish)


def _typed(wish: StudioSettings) -> dict[str, str]:
    return {key: getattr(wish, key).strip() for key in _WHERE}


def _with_all(text: str, wish: StudioSettings) -> str:
    made = text
    for key, typed in _typed(wish).items():
        if typed:
            table, name = _WHERE[key]
            setting = {name: _value(key, typed)}
            made = with_settings(made, table, setting, is_listed=table in _LISTED)
    return made


def _value(key: str, typed: str) -> Setting:
    """A value as the text keeps it, or what is wrong with it."""
    if key in _NUMBERS:
        return _number(key, typed)
    allowed = _CHOICES.get(key, (typed,))
    if typed not in allowed:
        want = " or ".join(allowed)
        raise InputError(f"'{typed}' is none of {want}.", field=key, got=typed, want=want)
    return typed


def _number(key: str, typed: str) -> float:
    read = _NUMBER.fullmatch(typed)
    is_negative = read is not None and read["sign"] not in ("", "+")
    value = 0.0 if read is None else float(read["digits"].replace(",", "."))
    if read is None or (key == "scale_step_g" and (is_negative or not value)):
        raise InputError(f"'{typed}' is no such number. {_NUMBERS[key]}", field=key, got=typed)
    return -value if is_negative else value
