"""Constants of nature and of models, by name, each a row of constants.csv with its papers."""

from functools import cache

from krume.base import OutOfRangeError, as_text
from krume.evidence import column, load, optional

CONSTANT_COLUMNS = (
    column("key", "key"),
    column("quantity"),
    column("value", "number"),
    column("unit"),
    optional("basis"),
    optional("half_width", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


@cache
def constants(file: str = "constants.csv") -> dict[str, float]:
    """Values of a table of constants, by key, in the unit its row names."""
    rows = load(file, CONSTANT_COLUMNS)
    return {row.text("key"): row.number_of("value") for row in rows}


def constant(key: str) -> float:
    """Value of one constant.

    >>> constant("molar-water")
    18.01528
    """
    return constants()[key]


def within(name: str, amount: float, low: float, high: float, unit: str = "") -> float:
    """The amount itself, or OutOfRangeError naming the range it must lie in.

    >>> within("sugar_pct", 50.0, 0.0, 90.0)
    50.0
    """
    if low <= amount <= high and amount != float("inf"):
        return amount
    tail = f" {unit}" if unit else ""
    if high == float("inf"):
        want = f"{as_text(low)}{tail} or more"
    else:
        want = f"{as_text(low)} to {as_text(high)}{tail}"
    raise OutOfRangeError(
        f"{name} is {amount:g}{tail}; this sum holds for {want}.",
        field=name,
        got=f"{amount:g}",
        want=want,
    )
