"""Nutrients of a US panel, their amounts and percentages as printed."""

from dataclasses import dataclass
from decimal import Decimal
from functools import cache

from krume.base import OutOfRangeError
from krume.evidence import Row, column, load, optional
from krume.label.printed import PanelAmount, not_negative, printed, row_of

NUTRIENT_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("level", "number"),
    column("unit", "one of", "kcal", "g", "mg", "ug"),
    optional("daily_value", "number"),
    optional("daily_status", "status"),
    column("percent_rule", "one of", "none", "whole", "steps"),
    column("on_panel", "one of", "percent", "amount"),
    column("rounding", "key"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
    optional("note"),
)
_ROUNDING = "us_rounding.csv"


@dataclass(frozen=True, slots=True)
class UsNutrient:
    """A line of the panel: its key, its words, how far it is indented, and its percentage."""

    key: str
    label: str
    level: int
    unit: str
    has_percent: bool


@cache
def us_lines() -> tuple[UsNutrient, ...]:
    """Lines of the panel, in its order."""
    return tuple(
        UsNutrient(
            r.text("key"), r.text("label"), int(r.number_of("level")), r.text("unit"),
            r.text("on_panel") == "percent",
        )
        for r in _rows()
    )  # fmt: skip


def us_nutrients() -> tuple[str, ...]:
    """Nutrients of the panel, in its order."""
    return tuple(row.text("key") for row in _rows())


def panel_unit(nutrient: str) -> str:
    """Unit the panel has a nutrient in: kcal, g, mg or ug."""
    return _nutrient(nutrient).text("unit")


def _rows() -> tuple[Row, ...]:
    return load("us_nutrients.csv", NUTRIENT_COLUMNS)


def _nutrient(key: str) -> Row:
    return row_of(key, _rows(), where="The panel")


def us_amount(nutrient: str, amount: Decimal) -> PanelAmount:
    """Amount of a nutrient in a serving as the panel prints it.

    >>> us_amount("sodium", Decimal(145)).text
    '150 mg'
    >>> us_amount("cholesterol", Decimal(3)).text
    'less than 5 mg'
    """
    row = _nutrient(nutrient)
    unit = {"kcal": "", "ug": "mcg"}.get(row.text("unit"), row.text("unit"))
    return printed(amount, _ROUNDING, row.text("rounding"), unit=unit)


def us_daily_value_pct(nutrient: str, amount: Decimal) -> float:
    """Percent of the daily value as the panel prints it, from the amount before its rounding.

    >>> us_daily_value_pct("added-sugars", Decimal(25))
    50.0
    """
    row = _nutrient(nutrient)
    daily = row.maybe("daily_value")
    if daily is None:
        raise OutOfRangeError(
            f"'{nutrient}' has no daily value, so the panel prints no percentage for it.",
            field="nutrient", got=nutrient, want="a nutrient with a daily value",
        )  # fmt: skip
    percent = 100 * not_negative(amount) / Decimal(repr(daily))
    return printed(percent, _ROUNDING, row.text("percent_rule")).value or 0.0
