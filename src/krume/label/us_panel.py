"""Amounts and percentages as a US nutrition panel prints them; halves go up, rounded once."""

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from functools import cache

from krume.base import NotFoundError, OutOfRangeError
from krume.evidence import Row, column, load, optional

NUTRIENT_COLUMNS = (
    column("key", "key"),
    column("unit", "one of", "kcal", "g", "mg", "ug"),
    optional("daily_value", "number"),
    optional("daily_status", "status"),
    column("percent_rule", "one of", "none", "whole", "steps"),
    column("rounding", "key"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
    optional("note"),
)
ROUNDING_COLUMNS = (
    column("key", "key"),
    column("rule", "key"),
    optional("up_to", "number"),
    optional("inclusive", "flag"),
    optional("step", "number"),
    optional("words"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


@dataclass(frozen=True, slots=True)
class PanelAmount:
    """An amount as the panel prints it; the value is None where the law has words for it."""

    value: float | None
    text: str


def us_nutrients() -> tuple[str, ...]:
    """Nutrients of the panel, in its order."""
    return tuple(row.text("key") for row in load("us_nutrients.csv", NUTRIENT_COLUMNS))


def panel_unit(nutrient: str) -> str:
    """Unit the panel has a nutrient in: kcal, g, mg or ug."""
    return _nutrient(nutrient).text("unit")


def _nutrient(key: str) -> Row:
    found = {row.text("key"): row for row in load("us_nutrients.csv", NUTRIENT_COLUMNS)}
    if key not in found:
        message = f"The panel has no nutrient '{key}'. Type one of {', '.join(found)}."
        raise NotFoundError(message, field="nutrient", got=key, want=", ".join(found))
    return found[key]


@cache
def _steps(rule: str) -> tuple[Row, ...]:
    rows = load("us_rounding.csv", ROUNDING_COLUMNS)
    return tuple(row for row in rows if row.text("rule") == rule)


def us_amount(nutrient: str, amount: Decimal) -> PanelAmount:
    """Amount of a nutrient in a serving as the panel prints it.

    >>> us_amount("sodium", Decimal(145)).text
    '150 mg'
    >>> us_amount("cholesterol", Decimal(3)).text
    'less than 5 mg'
    """
    row = _nutrient(nutrient)
    step = _step(_steps(row.text("rounding")), _not_negative(amount))
    if step.text("words"):
        return PanelAmount(None, step.text("words"))
    rounded = _rounded(amount, step)
    unit = "" if row.text("unit") == "kcal" else f" {_printed_unit(row.text('unit'))}"
    return PanelAmount(float(rounded), f"{_plain(rounded)}{unit}")


def us_daily_value_pct(nutrient: str, amount: Decimal) -> float:
    """Percent of the daily value as the panel prints it.

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
    percent = 100 * _not_negative(amount) / Decimal(repr(daily))
    return float(_rounded(percent, _step(_steps(row.text("percent_rule")), percent)))


def _not_negative(amount: Decimal) -> Decimal:
    if not (amount.is_finite() and amount >= 0):
        raise OutOfRangeError(
            f"An amount of {amount} cannot stand on a panel. Type 0 or more.",
            field="amount", got=str(amount), want="0 or more",
        )  # fmt: skip
    return amount


def _step(rows: tuple[Row, ...], amount: Decimal) -> Row:
    return next(row for row in rows if _holds(row, amount))


def _holds(row: Row, amount: Decimal) -> bool:
    limit = row.maybe("up_to")
    if limit is None:
        return True
    bound = Decimal(repr(limit))
    return amount <= bound if row.flag("inclusive") else amount < bound


def _rounded(amount: Decimal, row: Row) -> Decimal:
    step = Decimal(repr(row.number_of("step")))
    if step == 0:
        return Decimal(0)
    return (amount / step).quantize(Decimal(1), ROUND_HALF_UP) * step


def _plain(amount: Decimal) -> str:
    text = f"{amount:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _printed_unit(unit: str) -> str:
    return "mcg" if unit == "ug" else unit
