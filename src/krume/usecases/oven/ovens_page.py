"""Tins measured against nominal, and the oven's offset with the readings it stands on."""

import math
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, replace

from krume.base import ConflictError, InputError, Problem, as_text
from krume.properties import constants
from krume.publish import HeatCurves, heat_drawing
from krume.size import Tin, area_cm2, read_tin, volume_ml
from krume.store import book_at, book_bytes, is_book, keep_text, kept_text, read_studio
from krume.usecases.asking.answer import Asked
from krume.usecases.book.rows import RowNow
from krume.usecases.book.studio_lines import Setting, with_settings
from krume.usecases.own_oven.own_oven import KnownOven, known_oven
from krume.usecases.own_oven.result import OvenRecordShown, OvenShown
from krume.usecases.own_oven.shown import oven_shown, places_known, records_shown
from krume.usecases.pantry.page import asked_table, can_edit

TINS, STUDIO = "tins.csv", "studio.toml"
_FIGURES = "pantry_page.csv"


@dataclass(frozen=True, slots=True)
class TinRow:
    """One row of the tins: what its size says it holds, and what water says.

    `tin` is None while its text asks something.
    """

    row: RowNow
    tin: Tin | None
    nominal_ml: float | None
    water_ml: float | None
    area_cm2: float | None
    questions: tuple[Problem, ...]

    @property
    def difference_ml(self) -> float | None:
        """Measured less nominal."""
        if self.water_ml is None or self.nominal_ml is None:
            return None
        return self.water_ml - self.nominal_ml

    @property
    def difference_pct(self) -> float | None:
        """The same in percent of the nominal volume."""
        if self.difference_ml is None or not self.nominal_ml:
            return None
        return 100 * self.difference_ml / self.nominal_ml


@dataclass(frozen=True, slots=True)
class OvenNow:
    """What `studio.toml` says of the oven; None is not said.

    `offset_c` is true less dial; `seen` is the version of the text, None where it is a plain file.
    """

    settings: dict[str, str | float | bool]
    seen: int | None
    refusal: str = ""

    def number(self, key: str) -> float | None:
        """A number of the oven."""
        value = self.settings.get(key)
        return None if isinstance(value, bool | str) or value is None else float(value)

    @property
    def offset_c(self) -> float | None:
        """True temperature less dial."""
        return self.number("offset_c")

    @property
    def measured_offset_c(self) -> float | None:
        """The same from the mean of the readings and the dial they were taken at."""
        mean, dial = self.number("mean_c"), self.number("dial_c")
        return None if mean is None or dial is None else mean - dial

    @property
    def words(self) -> str:
        """Which way it is off, in words."""
        offset = self.offset_c
        if offset is None:
            return "offset not known"
        if offset == 0:
            return "reads true: the oven is what its dial says"
        side = "low" if offset < 0 else "high"
        way = "below" if offset < 0 else "above"
        return f"reads {side}: the true temperature is {as_text(abs(offset))} K {way} the dial"

    @property
    def contradiction(self) -> str:
        """Where the written offset and the readings do not agree."""
        mine, read = self.offset_c, self.measured_offset_c
        if mine is None or read is None or math.isclose(mine, read, abs_tol=0.05):
            return ""
        return (
            f"The offset says {as_text(mine)} K, the readings say {as_text(read)} K. Which holds?"
        )


@dataclass(frozen=True, slots=True)
class OvenPlace:
    """One oven at one place: what is known, the picture of it, its records with their reasons.

    `svg` is nothing while no bake counts.
    """

    shown: OvenShown
    svg: str
    readings: tuple[OvenRecordShown, ...]
    bakes: tuple[OvenRecordShown, ...]


@dataclass(frozen=True, slots=True)
class OvensNow:
    """All tins and the ovens, with the dial for a temperature that was asked."""

    tins: tuple[TinRow, ...]
    questions: tuple[Problem, ...]
    oven: OvenNow
    want_c: float
    dial_c: float | None
    has_book: bool
    can_edit: bool
    places: tuple[OvenPlace, ...]
    dial_sd_c: float | None
    dial_f: float | None


def ovens_now(asked: Asked, *, want_c: float | None = None) -> OvensNow:
    """Tins and the oven of the book; measured tins with the largest difference first."""
    book, table = book_at(asked.book), asked_table(TINS, asked)
    tins = [tin_row(row, table.by_line.get(row.line, ())) for row in table.table.rows]
    oven, want = (
        oven_now(asked),
        constants(_FIGURES)["dial-shown"] if want_c is None else want_c,
    )
    known = known_oven(asked).at(want)
    offset = known.offset_c
    return OvensNow(
        tins=tuple(sorted(tins, key=_largest_first)),
        questions=table.whole,
        oven=oven,
        want_c=want,
        dial_c=None if offset is None else want - offset,
        has_book=is_book(book),
        can_edit=can_edit(book),
        places=_places(asked),
        dial_sd_c=known.offset_sd_c,
        dial_f=None if offset is None else (want - offset) * 1.8 + 32,
    )


def _places(asked: Asked) -> tuple[OvenPlace, ...]:
    """Every oven at every place of it; the records of an oven stand at its first place."""
    records, told, found = records_shown(asked), set[str](), []
    for number, known in enumerate(places_known(asked)):
        mine = () if known.name in told else tuple(r for r in records if r.oven == known.name)
        told.add(known.name)
        found.append(
            OvenPlace(
                oven_shown(known),
                _drawn(known, f"heat-{number}"),
                tuple(r for r in mine if r.kind == "reading"),
                tuple(r for r in mine if r.kind != "reading"),
            )
        )
    return tuple(found)


def _drawn(known: KnownOven, ident: str) -> str:
    heat = known.learnt.heat
    if heat is None or not known.bakes:
        return ""
    shown = oven_shown(known).heat
    curves = HeatCurves(heat.ln_heats, heat.prior_density, heat.density, shown, known.bakes)
    return heat_drawing(curves, ident=ident)


def _largest_first(each: TinRow) -> tuple[bool, float]:
    off = each.difference_pct
    return (off is None, -abs(off or 0.0))


def tin_row(row: RowNow, questions: tuple[Problem, ...]) -> TinRow:
    """One tin by its text, with the water apart from the size."""
    tin = read_tin(row.get("tin"), where=TINS).value
    if tin is None:
        return TinRow(row, None, None, None, None, questions)
    nominal = volume_ml(replace(tin, water_ml=None))
    return TinRow(row, tin, nominal, tin.water_ml, area_cm2(tin), questions)


def tin_words(text: str, water_g: str) -> str:
    """A tin's text with the water that fills it, in grams; without water it stays.

    >>> tin_words("round 20 x 7 cm", "2186")
    'round 20 x 7 cm, 2186 g water'
    """
    grams = water_g.strip().removesuffix("water").strip().removesuffix("g").strip()
    grams = "".join(grams.split()).replace(",", ".")
    if not grams:
        return text
    try:
        value = float(grams)
    except ValueError:
        value = math.nan
    if not 0 < value <= constants(_FIGURES)["water-most"]:
        message = f"'{water_g}' is no mass of water. Type grams, such as 2186."
        raise InputError(message, field="water_g", got=water_g, want="grams")
    found = read_tin(text).value
    if found is not None and found.water_ml is not None:
        text = text.rpartition(",")[0]
    return f"{text}, {as_text(value, 1)} g water"


def oven_now(asked: Asked) -> OvenNow:
    """The oven of a book; damaged settings are said, not taken by half."""
    book = book_at(asked.book)
    kept = kept_text(book, STUDIO)
    data = book_bytes(book, STUDIO)
    if data is None:
        return OvenNow({}, None)
    seen = None if kept is None else kept.revision
    try:
        found = tomllib.loads(data.decode("utf-8"))
    except (UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        return OvenNow({}, seen, f"studio.toml cannot be read: {error}. Correct that line.")
    oven = found.get("oven", {})
    plain = oven.items() if isinstance(oven, dict) else ()
    return OvenNow({k: v for k, v in plain if isinstance(v, str | int | float | bool)}, seen)


def save_oven(settings: Mapping[str, Setting], asked: Asked, *, seen: int | None) -> None:
    """Write the oven into `studio.toml`; all else in it stays. Sent twice it is kept once."""
    book = book_at(asked.book)
    kept = kept_text(book, STUDIO)
    data = b"" if kept is None else kept.body
    edited = with_settings(_text(data), "oven", settings)
    if edited.encode() == data:
        return
    read_studio(edited.encode(), book.path / STUDIO)
    if kept is not None and seen != kept.revision:
        message = "The settings changed since you opened them. Yours are kept here; look at both."
        raise ConflictError(message, where=STUDIO)
    keep_text(book, STUDIO, edited.encode(), seen=seen)


def _text(data: bytes) -> str:
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        message = "studio.toml is no plain text in UTF-8. Put a copy of it back first."
        raise InputError(message, field=STUDIO, got="no plain text", want="UTF-8") from error


def oven_settings(typed: Mapping[str, str]) -> tuple[dict[str, Setting], dict[str, str]]:
    """Settings of the oven as typed, and what is wrong with them by field.

    The offset is the mean of the readings less the dial where both are typed.

    >>> oven_settings({"dial_c": "160", "mean_c": "148"})[0]["offset_c"]
    -12.0
    """
    wrong: dict[str, str] = {}
    found: dict[str, Setting] = {"name": " ".join(typed.get("name", "").split()) or None}
    for key, (low, high) in _limits().items():
        whole = key in _WHOLE
        found[key], said = _number(typed.get(key, ""), low, high, is_whole=whole)
        wrong |= {key: said} if said else {}
    for key in ("fan", "bakes_with_fan"):
        found[key] = {"yes": True, "no": False}.get(typed.get(key, ""))
    if isinstance(found["dial_c"], float) and isinstance(found["mean_c"], float):
        found["offset_c"] = round(found["mean_c"] - found["dial_c"], 3)
    return found, wrong


_WHOLE = frozenset({"readings", "shelves", "tins_per_load"})


def _limits() -> dict[str, tuple[float, float]]:
    """Settings that are numbers, each with the least and the most that is no slip of typing."""
    most = constants(_FIGURES)
    hot, minutes, many = most["oven-most"], most["load-most"], most["count-most"]
    return {
        "dial_c": (0.0, hot),
        "mean_c": (0.0, hot),
        "readings": (1.0, many),
        "offset_c": (-hot, hot),
        "spread_c": (0.0, hot),
        "shelves": (1.0, many),
        "tins_per_load": (1.0, many),
        "load_min": (0.01, minutes),
        "recover_min": (0.01, minutes),
    }


def _number(typed: str, low: float, high: float, *, is_whole: bool) -> tuple[float | None, str]:
    """A number as typed, and what is wrong with it."""
    text = typed.strip().replace("−", "-").replace(",", ".")
    if not text:
        return None, ""
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    kind = "a whole number" if is_whole else "a number"
    if not low <= value <= high or (is_whole and value != int(value)):
        return None, f"'{typed.strip()}' is not {kind} from {as_text(low, 2)} to {as_text(high)}."
    return value, ""
