"""The figures of standing by their names."""

from functools import cache

from krume.properties import constants

_FILE = "standing.csv"


@cache
def value(key: str) -> float:
    """Value of a figure of `standing.csv`.

    >>> value("gravity")
    9.80665
    """
    return constants(_FILE)[key]
