"""The US nutrition box as values: its words, its groups, and the sizes its rule fixes."""

import re
from dataclasses import dataclass
from functools import cache

from krume.base import OutOfRangeError
from krume.evidence import Row, column, load
from krume.properties import constants

FACTS_COLUMNS = (
    column("key", "key"),
    column("printed"),
    column("status", "status"),
    column("source", "source"),
    column("page"),
)
ARRANGEMENTS = ("vertical", "tabular", "linear")
_VITAMINS = ("vitamin-d", "calcium", "iron", "potassium")
_INCLUDES = "Includes "
_UNIT = re.compile(r"(?<=\d) (?=(?:g|mg|mcg)\b)")


@dataclass(frozen=True, slots=True)
class FactsColumn:
    """One basis of the box: its head (empty where there is one only) and its calories."""

    head: str
    calories: str


@dataclass(frozen=True, slots=True)
class FactsRow:
    """A nutrient by its key and name, with one amount and one percentage for each column.

    `level` is how deep it is indented; a percentage that is not printed is empty.
    """

    key: str
    name: str
    level: int
    amounts: tuple[str, ...]
    percents: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FactsBox:
    """The box before it is drawn; a figure is as the rounding rules print it."""

    servings: str
    serving_size: str
    columns: tuple[FactsColumn, ...]
    rows: tuple[FactsRow, ...]

    def __post_init__(self) -> None:
        for row in self.rows:
            if not len(row.amounts) == len(row.percents) == len(self.columns):
                raise OutOfRangeError(
                    f"{row.key} has {len(row.amounts)} amounts and {len(row.percents)} percentages "
                    f"for {len(self.columns)} columns.",
                    field=row.key, got=str(len(row.amounts)), want=str(len(self.columns)),
                )  # fmt: skip


@dataclass(frozen=True, slots=True)
class FactsLine:
    """A row of the box as printed: its name in parts, how deep it stands, what is set strong."""

    key: str
    name: str
    amounts: tuple[str, ...]
    percents: tuple[str, ...]
    level: int
    is_strong: bool


@cache
def _words() -> dict[str, Row]:
    return {row.text("key"): row for row in load("facts_words.csv", FACTS_COLUMNS)}


def facts_lines(box: FactsBox, group: str) -> tuple[FactsLine, ...]:
    """Rows of one group: `main`, or the `vitamin` ones below the bar."""
    is_below = group == "vitamin"
    return tuple(_line(row) for row in box.rows if (row.key in _VITAMINS) == is_below)


def _line(row: FactsRow) -> FactsLine:
    name, amounts = row.name, tuple(_closed_up(amount) for amount in row.amounts)
    if len(amounts) == 1 and name.startswith(_INCLUDES):
        # With one column the amount stands inside the name, with two in their columns.
        name, amounts = f"{_INCLUDES}{amounts[0]} {name.removeprefix(_INCLUDES)}", ("",)
    return FactsLine(
        key=row.key,
        name=name,
        amounts=amounts,
        percents=row.percents,
        level=row.level,
        is_strong=row.level == 0 and row.key not in _VITAMINS,
    )


def _closed_up(amount: str) -> str:
    """An amount with its unit appended to the figure, as the rule shows it.

    >>> _closed_up("less than 5 mg")
    'less than 5mg'
    """
    return _UNIT.sub("", amount)


def footnote(*, is_small: bool = False) -> str:
    """What stands under the box; a small package may have the short one."""
    return _words()["footnote-small" if is_small else "footnote"].text("printed")


def arrangements_let(height_mm: float | None, area_cm2: float | None) -> tuple[str, ...]:
    """Arrangements of the box that its rule lets a label of this height and package have.

    `area_cm2` is the surface that can bear labels, None where it is not said; `height_mm` is None
    on an endless roll.

    >>> arrangements_let(150.0, None), arrangements_let(60.0, None), arrangements_let(60.0, 70.0)
    (('vertical',), ('vertical', 'tabular'), ('vertical', 'tabular', 'linear'))
    """
    limits = constants("facts_box.csv")
    is_low = height_mm is not None and height_mm < limits["tabular-below-mm"]
    is_small = area_cm2 is not None and area_cm2 <= limits["small-area-cm2"]
    if is_small:
        return ARRANGEMENTS
    return ("vertical", "tabular") if is_low else ("vertical",)


def printed_facts(box: FactsBox, area_cm2: float | None = None) -> dict[str, object]:
    """Words and measures of the box for paper."""
    limits = constants("facts_box.csv")
    is_small = area_cm2 is not None and area_cm2 <= limits["small-area-cm2"]
    return {
        "servings": box.servings,
        "serving-size": _closed_up(box.serving_size),
        "columns": [{"head": each.head, "calories": each.calories} for each in box.columns],
        "main": [_printed(line) for line in facts_lines(box, "main")],
        "vitamins": [_printed(line) for line in facts_lines(box, "vitamin")],
        "footnote": footnote(),
        "footnote-small": footnote(is_small=True),
        "is-small": is_small,
        "m": limits,
    }


def _printed(line: FactsLine) -> dict[str, object]:
    return {
        "name": line.name,
        "amounts": list(line.amounts),
        "percents": list(line.percents),
        "level": line.level,
        "strong": line.is_strong,
    }
