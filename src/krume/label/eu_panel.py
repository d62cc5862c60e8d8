"""Amounts as an EU nutrition declaration prints them; halves go up, rounded once."""

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from functools import cache

from krume.base import NotFoundError, OutOfRangeError
from krume.evidence import Row, column, load, optional
from krume.label.us_panel import PanelAmount

EU_NUTRIENT_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("unit", "one of", "kJ", "kcal", "g"),
    column("rounding", "key"),
    optional("reference_intake", "number"),
    optional("must", "flag"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)
EU_ROUNDING_COLUMNS = (
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
class EuNutrient:
    """A row of the declaration: its key, its words, its unit, and whether it must stand there."""

    key: str
    label: str
    unit: str
    is_mandatory: bool


def eu_nutrients() -> tuple[EuNutrient, ...]:
    """Rows of the declaration, in its order."""
    rows = load("eu_nutrients.csv", EU_NUTRIENT_COLUMNS)
    return tuple(
        EuNutrient(r.text("key"), r.text("label"), r.text("unit"), r.flag("must")) for r in rows
    )


def _nutrient(key: str) -> Row:
    found = {row.text("key"): row for row in load("eu_nutrients.csv", EU_NUTRIENT_COLUMNS)}
    if key not in found:
        message = f"The declaration has no nutrient '{key}'. Type one of {', '.join(found)}."
        raise NotFoundError(message, field="nutrient", got=key, want=", ".join(found))
    return found[key]


@cache
def _steps(rule: str) -> tuple[Row, ...]:
    rows = load("eu_rounding.csv", EU_ROUNDING_COLUMNS)
    return tuple(row for row in rows if row.text("rule") == rule)


def eu_amount(nutrient: str, amount: Decimal) -> PanelAmount:
    """Amount of a nutrient per 100 g as the declaration prints it.

    >>> eu_amount("fat", Decimal("18.5")).text, eu_amount("salt", Decimal("0.625")).text
    ('19 g', '0.63 g')
    >>> eu_amount("sugars", Decimal("0.4")).text
    '<0.5 g'
    """
    row = _nutrient(nutrient)
    step = _step(_steps(row.text("rounding")), _not_negative(amount))
    if step.text("words"):
        return PanelAmount(None, step.text("words"))
    width = Decimal(repr(step.number_of("step")))
    rounded = (amount / width).quantize(Decimal(1), ROUND_HALF_UP) * width
    return PanelAmount(float(rounded), f"{_plain(rounded)} {row.text('unit')}")


def eu_intake_pct(nutrient: str, amount: Decimal) -> float:
    """Share of an adult's reference intake, nearest whole percent.

    >>> eu_intake_pct("energy-kj", Decimal(1549)), eu_intake_pct("fat", Decimal(18))
    (18.0, 26.0)
    """
    intake = _nutrient(nutrient).maybe("reference_intake")
    if intake is None:
        raise OutOfRangeError(
            f"'{nutrient}' has no reference intake, so no percentage is printed for it.",
            field="nutrient", got=nutrient, want="a nutrient with a reference intake",
        )  # fmt: skip
    percent = 100 * _not_negative(amount) / Decimal(repr(intake))
    return float(percent.quantize(Decimal(1), ROUND_HALF_UP))


def _not_negative(amount: Decimal) -> Decimal:
    if not (amount.is_finite() and amount >= 0):
        raise OutOfRangeError(
            f"An amount of {amount} cannot stand in a declaration. Type 0 or more.",
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


def _plain(amount: Decimal) -> str:
    text = f"{amount:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
