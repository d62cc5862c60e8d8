"""Whether a food must be kept cold, by its water activity and its acidity."""

from functools import cache

from krume.evidence import Row, column, load, optional
from krume.properties import within

TCS_COLUMNS = (
    column("key", "key"),
    column("table", "one of", "packaged", "open"),
    column("aw_up_to", "number"),
    optional("aw_inclusive", "flag"),
    column("ph_up_to", "number"),
    optional("ph_inclusive", "flag"),
    column("verdict", "one of", "non-tcs", "tcs", "assess"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


@cache
def _table(name: str) -> tuple[Row, ...]:
    return tuple(row for row in load("tcs.csv", TCS_COLUMNS) if row.text("table") == name)


def needs_cold(
    aw_value: float | None, ph_value: float | None, *, heat_treated_packaged: bool
) -> str:
    """Verdict `non-tcs`, `assess` or `tcs`: keep cold, until a product study says otherwise.

    the first row of the table whose limits hold the food

    Parameters
    ----------
    aw_value : water activity, 0 to 1; None is unknown
    ph_value : acidity, 0 to 14; None is unknown
    heat_treated_packaged : heat treated to kill growing cells, and packed afterwards

    Returns
    -------
    `non-tcs`: need not be kept cold by these two numbers · `assess`: keep it cold until a product
    study says otherwise · `tcs`: a number is unknown, so it is kept cold

    Raises
    ------
    OutOfRangeError : aw_value is outside 0 to 1, or ph_value outside 0 to 14

    Valid for
    ---------
    The interaction of the two numbers only; not for garlic in oil, sprouts, cut melon and the
    like. Local law and licensed practice decide.

    Source
    ------
    `fda-food-code-2022`, 1-201.10(B), tables A and B

    Examples
    --------
    >>> needs_cold(0.93, 5.2, heat_treated_packaged=False)
    'assess'
    """
    if aw_value is None or ph_value is None:
        return "tcs"
    within("aw", aw_value, 0.0, 1.0)
    within("ph", ph_value, 0.0, 14.0)
    for row in _table("packaged" if heat_treated_packaged else "open"):
        if _holds(row, "aw", aw_value) and _holds(row, "ph", ph_value):
            return row.text("verdict")
    return "tcs"


def _holds(row: Row, name: str, amount: float) -> bool:
    limit = row.number_of(f"{name}_up_to")
    return amount <= limit if row.flag(f"{name}_inclusive") else amount < limit
