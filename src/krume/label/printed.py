"""How a panel prints an amount: by rows of rounding, halves up, rounded once, the same anywhere."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from functools import cache

from krume.base import NotFoundError, OutOfRangeError
from krume.evidence import Row, column, load, optional

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


_MOST = 1_000_000_000
"""More than this, in mg or anything larger, no cake holds."""


@dataclass(frozen=True, slots=True)
class PanelAmount:
    """An amount as the panel prints it; the value is None where the law has words for it."""

    value: float | None
    text: str


def row_of(nutrient: str, rows: Iterable[Row], *, where: str) -> Row:
    """Row of a nutrient in a table, or the names that it has."""
    found = {row.text("key"): row for row in rows}
    if nutrient in found:
        return found[nutrient]
    raise NotFoundError(
        f"{where} has no nutrient '{nutrient}'. Type one of {', '.join(found)}.",
        field="nutrient", got=nutrient, want=", ".join(found),
    )  # fmt: skip


@cache
def _steps(file: str, rule: str) -> tuple[Row, ...]:
    return tuple(row for row in load(file, ROUNDING_COLUMNS) if row.text("rule") == rule)


def printed(amount: Decimal, file: str, rule: str, *, unit: str = "") -> PanelAmount:
    """An amount by the rows of a rule, the first row that holds it; `unit` stands behind it.

    >>> printed(Decimal("0.75"), "us_rounding.csv", "fat", unit="g").text
    '1 g'
    """
    row = next(row for row in _steps(file, rule) if _holds(row, not_negative(amount)))
    if row.text("words"):
        return PanelAmount(None, row.text("words"))
    rounded = to_step(amount, Decimal(repr(row.number_of("step"))))
    return PanelAmount(float(rounded), f"{_plain(rounded)} {unit}".rstrip())


def to_step(amount: Decimal, step: Decimal) -> Decimal:
    """The nearest multiple of a step, an exact half going up; a step of 0 prints 0.

    >>> str(to_step(Decimal("12.5"), Decimal(5))), str(to_step(Decimal("4.9"), Decimal(0)))
    ('15', '0')
    """
    if step == 0:
        return Decimal(0)
    return (amount / step).quantize(Decimal(1), ROUND_HALF_UP) * step


def not_negative(amount: Decimal) -> Decimal:
    """The amount itself; what no panel can hold is refused."""
    if amount.is_finite() and 0 <= amount <= _MOST:
        return amount
    is_much = amount.is_finite() and amount > _MOST
    want = f"at most {_MOST}" if is_much else "0 or more"
    raise OutOfRangeError(
        f"An amount of {amount:g} cannot stand on a panel. Type {want}.",
        field="amount", got=str(amount), want=want,
    )  # fmt: skip


def _holds(row: Row, amount: Decimal) -> bool:
    limit = row.maybe("up_to")
    if limit is None:
        return True
    bound = Decimal(repr(limit))
    return amount <= bound if row.flag("inclusive") else amount < bound


def _plain(amount: Decimal) -> str:
    text = f"{amount:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
