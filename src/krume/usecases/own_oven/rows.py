"""Rows of an oven's tables as records: readings, finished bakes, and the end of an old oven."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from functools import lru_cache

from krume.bake import Batter
from krume.base import STATUSES, as_text
from krume.design import Formula, balance, decode_text, family, read
from krume.learn import FinishedBake, Reading
from krume.properties import constants
from krume.size import Tin, area_cm2, read_tin, tin_text
from krume.store import Book, book_at, bytes_of_path, find_texts, list_texts, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.formula.size import density_of
from krume.usecases.own_oven.cells import Cells, Fault


@dataclass(frozen=True, slots=True)
class OvenRecord:
    """A row of a table: the oven it names, and what is asked about it by field.

    `value` is None while something is asked; `line` is its words.
    """

    key: str
    oven: str
    value: Reading | FinishedBake | None
    faults: tuple[Fault, ...]
    line: str
    day: str = ""


@dataclass(frozen=True, slots=True)
class Habit:
    """How a studio bakes where a row does not say."""

    fan: bool = False
    status: str = "measured"


def reading_of(key: str, row: Mapping[str, str], habit: Habit) -> OvenRecord:
    """A row of `oven_readings.csv`."""
    cells = Cells(row)
    dial = cells.degrees("dial_c", "dial-unread", "160")
    looks = cells.looks()
    if dial is None and not cells.text("dial_c"):
        cells.fault("dial_c", "dial-missing", "What was the dial set to? Type it: 160.")
    after = cells.number("after_min", "after-unread", "the minutes since switching on: 40", "min")
    reading = Reading(
        key=key, dial_c=dial or 0.0, temps_c=looks or (0.0,),
        fan=cells.flag("fan", usual=habit.fan), shelf=cells.shelf(), after_min=after,
        day=cells.day(), is_sure=cells.flag("sure"), status=_status(cells, habit),
    )  # fmt: skip
    broken = constants("ovens.csv")["offset-most"]
    if not cells.faults and abs(reading.offset_c) > broken:
        ask = (
            f"{as_text(reading.offset_c, 0)} °C off its dial is a slip or a broken oven. "
            "Correct the dial or what was read."
        )
        cells.fault("read_c", "reading-unread", ask)
    faults = tuple(cells.faults)
    line = f"dial {as_text(reading.dial_c, 0)}: {', '.join(as_text(t, 1) for t in looks)}"
    value = None if faults else reading
    return OvenRecord(key, cells.text("oven"), value, faults, line, cells.text("day"))


def cake_of(name: str, tin: Tin) -> str:
    """What all bakes of one cake go by: its formula, and the floor and wall of its tin."""
    floor = replace(tin, height_cm=None, water_ml=None, greased=None)
    return f"{name.casefold()} in {tin_text(floor)}"


def _status(cells: Cells, habit: Habit) -> str:
    typed = cells.text("status").casefold()
    if typed and typed not in STATUSES:
        cells.fault("status", "oven-status", f"'{typed}' is no status. Type measured or declared.")
    return typed or habit.status


def bake_of(key: str, row: Mapping[str, str], habit: Habit, asked: Asked) -> OvenRecord:
    """A row of `bakes.csv`; its formula is one of the book's."""
    cells = Cells(row)
    made = _formula(cells, asked)
    tin = _tin(cells, None if made is None else made.formula)
    batter = None if made is None else _batter(cells, made)
    core = cells.degrees("core_c", "core-unread", "95")
    dial, true = (cells.degrees(f, "dial-unread", "170") for f in ("dial_c", "oven_c"))
    done = cells.number("done_min", "minutes-unread", "the minutes in the oven: 38", "min")
    before = cells.number("not_done_min", "not-done-unread", "minutes: 34", "min")
    test = cells.test(core=core is not None)
    _missing(cells, done=done, dial=dial if true is None else true, core=core, test=test)
    bake = None
    if made is not None and batter is not None and tin is not None and done is not None:
        bake = FinishedBake(
            key=key, cake=cake_of(made.name, tin), batter=batter, tin=tin,
            done_min=done, test=test, dial_c=dial, oven_c=true, not_done_min=before, core_c=core,
            fan=cells.flag("fan", usual=habit.fan), shelf=cells.shelf(), day=cells.day(),
            is_sure=cells.flag("sure"), status=_status(cells, habit),
        )  # fmt: skip
    faults = (*cells.faults, *(_never(bake) if bake is not None and not cells.faults else ()))
    value = None if faults else bake
    return OvenRecord(key, cells.text("oven"), value, faults, _line(cells), cells.text("day"))


@dataclass(frozen=True, slots=True)
class _Made:
    """The formula a bake was made by: the name it goes by, its text, what it says."""

    name: str
    data: bytes
    eggs_region: str | None
    formula: Formula


def _formula(cells: Cells, asked: Asked) -> _Made | None:
    """The book's formula a row names; a name is never a path."""
    name = cells.text("formula")
    if not name:
        cells.fault("formula", "formula-missing", "Which formula was it? Type its name: F1.")
        return None
    book = book_at(asked.book)
    found = [t for t in find_texts(book, name) if t.kind == "formula"]
    if not found:
        cells.fault("formula", "formula-unknown", *_unknown(name, book))
        return None
    data = bytes_of_path(book, found[0].path) or b""
    region = studio_of(book).eggs_region
    formula, ask = _read(data, region)
    if formula is None:
        cells.fault("formula", "formula-open", f"{name} asks something itself: {ask}")
        return None
    if kind := _no_batter(formula):
        ask = f"{name} is a {kind}, no batter in a tin: its minutes tell nothing of the oven."
        cells.fault("formula", "not-a-batter", ask)
        return None
    return _Made(found[0].name, data, region, formula)


def _unknown(name: str, book: Book) -> tuple[str, ...]:
    """What is asked of a name that no formula of the book has, and the names that come near."""
    names = {t.name.casefold(): t.name for t in list_texts(book) if t.kind == "formula"}
    stem = name.rpartition("/")[2].removesuffix(".txt")
    ask = f"The book has no formula called {name}."
    if stem != name:
        ask += (
            " An oven learns from the formula as the book keeps it: take the file in first "
            "(krume book import FILE), then name it."
        )
    return (ask, *(names[near] for near in get_close_matches(stem.casefold(), names, n=3)))


def _no_batter(formula: Formula) -> str:
    """What a formula is that has no batter in a tin; empty for a batter."""
    key = balance(formula).family
    return "" if key is None or family(key).has_batter_in_tin else family(key).label


@lru_cache(maxsize=64)
def _read(data: bytes, eggs_region: str | None) -> tuple[Formula | None, str]:
    """A formula by its text, or what it asks; the same text is read once."""
    found = read(decode_text(data).value, eggs_region=eggs_region)
    return (None, found.problems[0].ask) if found.problems else (found.value, "")


@lru_cache(maxsize=64)
def _whole(
    data: bytes, eggs_region: str | None, density_g_ml: float, *, is_measured: bool
) -> Batter | str:
    """The whole batter of a formula's text, or what is asked about it; worked out once."""
    from krume.bake import batter_of

    formula, ask = _read(data, eggs_region)
    if formula is None:
        return ask
    found = batter_of(
        formula, family=balance(formula).family, density_g_ml=density_g_ml,
        density_measured=is_measured,
    )  # fmt: skip
    return found.problems[0].ask if found.value is None else found.value


def _tin(cells: Cells, formula: Formula | None) -> Tin | None:
    typed = cells.text("tin")
    if not typed:
        own = None if formula is None else formula.tin
        if formula is not None and own is None:
            cells.fault("tin", "tin-missing", "Which tin was it in? Type its inside: round 20 cm.")
        return own
    read = read_tin(typed)
    if read.value is None or area_cm2(read.value) is None:
        options = [o.line for p in read.problems for o in p.options]
        ask = read.problems[0].ask if read.problems else f"'{typed}' has no floor. Type its inside."
        cells.fault("tin", "tin-unread", ask, *options)
        return None
    return read.value


def _batter(cells: Cells, made: _Made) -> Batter | None:
    """The batter that went in: the formula's, as much and as dense as the row says."""
    grams = cells.number("batter_g", "batter-unread", "the grams of batter in the tin: 540", "g")
    own = cells.number("density_g_ml", "density-unread", "grams of a millilitre: 0.48", "g/ml")
    planned = density_of(made.formula)
    density = own or planned.value_g_ml
    if density is None:
        ask = "Its density is not known. Weigh a level cup: 0.48 g/ml."
        cells.fault("density_g_ml", "density-missing", ask)
        return None
    is_measured = own is not None or planned.status == "measured"
    found = _whole(made.data, made.eggs_region, density, is_measured=is_measured)
    if isinstance(found, str):
        cells.fault("formula", "formula-open", found)
        return None
    return found if grams is None else replace(found, mass_g=grams)


def _missing(
    cells: Cells, *, done: float | None, dial: float | None, core: float | None, test: str
) -> None:
    """What a bake cannot do without."""
    asked = {fault.field for fault in cells.faults}
    if done is None and "done_min" not in asked:
        ask = "How long was it in the oven? Type the minutes: 38."
        cells.fault("done_min", "minutes-missing", ask)
    if dial is None and not asked & {"dial_c", "oven_c"}:
        cells.fault("dial_c", "dial-missing", "What was the dial set to? Type it: 170.")
    if core is None and test == "probe" and "core_c" not in asked:
        cells.fault("core_c", "core-missing", "What did the probe say at the end? Type it: 95.")


_FIELD = {
    "bake-minutes": "done_min", "bake-order": "not_done_min", "bake-oven": "dial_c",
    "bake-rim": "batter_g", "bake-core": "core_c",
}  # fmt: skip


def _never(bake: FinishedBake) -> tuple[Fault, ...]:
    """What cannot have been, whatever the oven: refused with words."""
    from krume.learn import why_not

    found = why_not(bake, bake.oven_c or bake.dial_c or 0.0)
    if found is None or found[0] not in _FIELD:
        return ()
    return (Fault(_FIELD[found[0]], found[0], f"{found[1][:1].upper()}{found[1][1:]}."),)


def _line(cells: Cells) -> str:
    """A bake in one line, as it would be typed."""
    words = {
        "formula": "{}", "tin": "{}", "batter_g": "{} g", "dial_c": "dial {}", "oven_c": "oven {}",
        "not_done_min": "not done at {}", "done_min": "{} min", "core_c": "core {}", "test": "{}",
    }  # fmt: skip
    return ", ".join(w.format(cells.text(f)) for f, w in words.items() if cells.text(f))
