"""Figures of what stands round the tin; every one a row of around.csv."""

from functools import cache

from krume.base import Figure
from krume.evidence import column, load, optional

_COLUMNS = (
    column("key", "key"),
    optional("symbol"),
    column("value", "number"),
    column("unit"),
    column("half_width", "number"),
    column("status", "status"),
    column("source", "source"),
    column("note"),
)


@cache
def around_figures() -> dict[str, Figure]:
    """All figures of what stands round the tin, with their papers."""
    return {
        row.text("key"): Figure(
            row.number_of("value"),
            row.text("unit"),
            row.text("note"),
            row.text("status"),
            row.text("source"),
            row.maybe("half_width"),
        )
        for row in load("around.csv", _COLUMNS)
    }


def around_value(key: str) -> float:
    """Value of a figure."""
    return around_figures()[key].value
