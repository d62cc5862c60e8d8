"""Cells of an oven's tables as a baker writes them: figures with or without their unit, words."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from krume.base import Option, Problem, as_text, read_number
from krume.evidence import figures
from krume.learn import SHELVES, TESTS, oven_figure

READINGS, BAKES, OVENS = "oven_readings.csv", "bakes.csv", "ovens.csv"
READINGS_HEAD = (
    "day", "oven", "dial_c", "read_c", "after_min", "fan", "shelf", "sure", "status", "note",
)  # fmt: skip
BAKES_HEAD = (
    "day", "oven", "formula", "tin", "batter_g", "dial_c", "oven_c", "done_min", "not_done_min",
    "core_c", "test", "fan", "shelf", "density_g_ml", "sure", "status", "note",
)  # fmt: skip
OVENS_HEAD = ("oven", "until", "note")

_NUMBER = re.compile(r"^([\d.,]+)\s*(.*)$")
_UNITS = {"°c": "c", "c": "c", "celsius": "c", "°f": "f", "f": "f", "fahrenheit": "f"}
_YES = frozenset({"yes", "true", "1", "fan", "on", "x"})
_NO = frozenset({"", "no", "false", "0", "still", "off", "no fan"})
_SHELF_WORDS = {
    "": "middle", "middle": "middle", "centre": "middle", "low": "low", "lower": "low",
    "bottom": "low", "high": "high", "upper": "high", "top": "high",
}  # fmt: skip
_TEST_WORDS = {
    "probe": "probe", "thermometer": "probe", "skewer": "skewer", "toothpick": "skewer",
    "spring": "skewer", "touch": "skewer", "colour": "colour", "color": "colour",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Fault:
    """What is wrong in one cell, with what to type in its place."""

    field: str
    code: str
    ask: str
    options: tuple[str, ...] = ()

    def at(self, where: str, read: str) -> Problem:
        """The same as a question at a place."""
        return Problem(self.code, where, read, self.ask, tuple(Option(o, o) for o in self.options))


class Cells:
    """The cells of one row; what cannot be read is collected, one fault for each cell."""

    def __init__(self, cells: Mapping[str, str]) -> None:
        self._cells = cells
        self.faults: list[Fault] = []

    def text(self, field: str) -> str:
        """The words of a cell on one line."""
        return " ".join(self._cells.get(field, "").split())

    def fault(self, field: str, code: str, ask: str, *options: str) -> None:
        """Note what is wrong."""
        self.faults.append(Fault(field, code, ask, options))

    def number(self, field: str, code: str, example: str, unit: str) -> float | None:
        """A figure above nought, its unit written or not; None where the cell is empty."""
        typed = self.text(field)
        if not typed:
            return None
        found = figure_of(typed)
        if found is None or found[0] <= 0 or found[1] not in ("", unit):
            self.fault(field, code, f"'{typed}' is not a figure here. Type {example}.")
            return None
        return found[0]

    def degrees(self, field: str, code: str, example: str) -> float | None:
        """A temperature in °C; °F where it says so, asked where it may be either."""
        typed = self.text(field)
        if not typed:
            return None
        found = figure_of(typed)
        unit = None if found is None else _UNITS.get(found[1], "" if not found[1] else None)
        if found is None or unit is None:
            ask = f"'{typed}' is no temperature. Type {example}, or with its unit: 325 F."
            self.fault(field, code, ask)
            return None
        if not unit and found[0] > figures("reader.csv")["fahrenheit-from"].value:
            plain = as_text(found[0])
            ask = f"{plain} has no unit. Is it °C or °F?"
            self.fault(field, f"{code.rpartition('-')[0]}-unit", ask, f"{plain} C", f"{plain} F")
            return None
        return to_c(found[0]) if unit == "f" else found[0]

    def flag(self, field: str, *, usual: bool = False) -> bool:
        """Yes or no; the usual where the cell is empty."""
        typed = self.text(field).casefold()
        if not typed:
            return usual
        if typed not in _YES | _NO:
            self.fault(field, f"oven-{field}", f"'{self.text(field)}': type yes or no.")
        return typed in _YES

    def shelf(self) -> str:
        """Low, middle or high; the middle where none is named."""
        typed = self.text("shelf").casefold().removesuffix(" shelf")
        if typed not in _SHELF_WORDS:
            ask = f"'{self.text('shelf')}' is no shelf here. Type {', '.join(SHELVES)}."
            self.fault("shelf", "oven-shelf", ask)
        return _SHELF_WORDS.get(typed, "middle")

    def test(self, *, core: bool) -> str:
        """Which test called it done: a core that was read was a probe."""
        typed = self.text("test").casefold()
        if typed and typed not in _TEST_WORDS:
            ask = f"'{self.text('test')}' is no test here. Type {', '.join(TESTS)}."
            self.fault("test", "bake-test", ask)
        return _TEST_WORDS.get(typed, "probe" if core else "skewer")

    def day(self) -> str:
        """A day as 2027-06-10, or none."""
        typed = self.text("day")
        try:
            return date.fromisoformat(typed).isoformat() if typed else ""
        except ValueError:
            self.fault("day", "oven-day", f"'{typed}' is no day. Type it as 2027-06-10.")
            return ""

    def looks(self) -> tuple[float, ...]:
        """The looks at a thermometer, in °C."""
        typed = self.text("read_c")
        try:
            found = looks_of(typed)
        except ValueError:
            ask = f"'{typed}' are no temperatures. Type what it showed: 148; 152; 145."
            self.fault("read_c", "reading-unread", ask)
            return ()
        low, high = oven_figure("reading-least"), oven_figure("reading-most")
        off = [t for t in found if not low <= t <= high]
        if not found:
            ask = "What did the thermometer show? Look a few times over ten minutes: 148; 152; 145."
            self.fault("read_c", "reading-missing", ask)
        elif off:
            ask = (
                f"{as_text(off[0], 0)} °C is no oven that is on: {as_text(low, 0)} to "
                f"{as_text(high, 0)} °C can be. Correct it."
            )
            self.fault("read_c", "reading-unread", ask)
        return found


def figure_of(typed: str) -> tuple[float, str] | None:
    """A figure and the words behind it: ("38 min") is (38.0, "min")."""
    match = _NUMBER.match(typed.strip())
    found = None if match is None else read_number(match[1])
    if match is None or found is None:
        return None
    return found.value, match[2].strip().casefold()


def looks_of(typed: str, *, unit: str = "") -> tuple[float, ...]:
    """Temperatures of a list, in °C; the unit may stand behind any of them, or is `unit`.

    A semicolon parts them where there is one, and then a comma is a decimal comma.

    >>> looks_of("148; 152,5"), looks_of("300, 302 F")
    ((148.0, 152.5), (148.9, 150.0))
    """
    parts = [p.strip() for p in re.split(r";" if ";" in typed else r"[,\s]+(?=[\d])", typed)]
    found = [figure_of(part) for part in parts if part]
    if any(each is None for each in found):
        raise ValueError(typed)
    known = [each for each in found if each is not None]
    units = {_UNITS.get(each[1]) for each in known if each[1]} or {_UNITS.get(unit.casefold(), "c")}
    if None in units or len(units) > 1:
        raise ValueError(typed)
    is_f = units == {"f"}
    return tuple(round(to_c(each[0]), 1) if is_f else each[0] for each in known)


def to_c(value_f: float) -> float:
    """Degrees Celsius of degrees Fahrenheit."""
    return (value_f - 32) / 1.8
