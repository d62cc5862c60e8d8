"""Nutrients of an EU declaration, their amounts and shares of the reference intake as printed."""

from dataclasses import dataclass
from decimal import Decimal
from functools import cache

from krume.base import OutOfRangeError
from krume.evidence import Row, column, load, optional
from krume.label.printed import PanelAmount, not_negative, printed, row_of, to_step

EU_NUTRIENT_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("level", "number"),
    column("unit", "one of", "kJ", "kcal", "g"),
    column("rounding", "key"),
    optional("reference_intake", "number"),
    optional("must", "flag"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


@dataclass(frozen=True, slots=True)
class EuNutrient:
    """A row of the declaration: its key, words and unit, its indent, whether it must be there."""

    key: str
    label: str
    unit: str
    is_mandatory: bool
    level: int = 0
    has_intake: bool = True


@cache
def eu_nutrients() -> tuple[EuNutrient, ...]:
    """Rows of the declaration, in its order."""
    return tuple(
        EuNutrient(
            r.text("key"), r.text("label"), r.text("unit"), r.flag("must"),
            int(r.number_of("level")), r.maybe("reference_intake") is not None,
        )
        for r in _rows()
    )  # fmt: skip


def _rows() -> tuple[Row, ...]:
    return load("eu_nutrients.csv", EU_NUTRIENT_COLUMNS)


def _nutrient(key: str) -> Row:
    return row_of(key, _rows(), where="The declaration")


def eu_amount(nutrient: str, amount: Decimal) -> PanelAmount:
    """Amount of a nutrient as the declaration prints it.

    >>> eu_amount("fat", Decimal("18.5")).text, eu_amount("salt", Decimal("0.625")).text
    ('19 g', '0.63 g')
    >>> eu_amount("sugars", Decimal("0.4")).text
    '<0.5 g'
    """
    row = _nutrient(nutrient)
    return printed(amount, "eu_rounding.csv", row.text("rounding"), unit=row.text("unit"))


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
    return float(to_step(100 * not_negative(amount) / Decimal(repr(intake)), Decimal(1)))
