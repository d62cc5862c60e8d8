"""Every number of cooling is a row; this is the table by key."""

from functools import cache

from krume.bake.parameters import half_width_of, model_figures
from krume.base import Figure


@cache
def cooling_figures() -> dict[str, Figure]:
    """All parameters of cooling with their papers."""
    return model_figures("cooling.csv")


@cache
def cooling_value(key: str) -> float:
    """Value of a parameter of cooling."""
    return cooling_figures()[key].value


@cache
def cooling_doubt(key: str) -> float:
    """Half-width of a parameter of cooling, or DataError where its row has none."""
    return half_width_of("cooling.csv", key, cooling_figures()[key])
