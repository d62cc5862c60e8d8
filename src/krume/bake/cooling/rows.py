"""Every number of cooling is a row; this is the table by key."""

from functools import cache

from krume.base import Figure
from krume.evidence import column, load, optional

COOLING_COLUMNS = (
    column("key", "key"),
    optional("symbol"),
    column("value", "number"),
    column("unit"),
    optional("half_width", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@cache
def cooling_figures() -> dict[str, Figure]:
    """All parameters of cooling with their papers."""
    return {
        row.text("key"): Figure(
            row.number_of("value"),
            row.text("unit"),
            row.text("note"),
            row.text("status"),
            row.text("source"),
            row.maybe("half_width"),
        )
        for row in load("cooling.csv", COOLING_COLUMNS)
    }


@cache
def cooling_value(key: str) -> float:
    """Value of a parameter of cooling."""
    return cooling_figures()[key].value


@cache
def cooling_doubt(key: str) -> float:
    """Half-width of a parameter of cooling, 0 where its row has none."""
    return cooling_figures()[key].half_width or 0.0
