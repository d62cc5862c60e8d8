"""Figures of building: usual heights, what a thick layer wants, how batches are halved."""

from krume.base import Figure, NotFoundError
from krume.evidence import figures

_FILE = "building.csv"


def figure(key: str) -> Figure:
    """Figure of a key of `building.csv`.

    >>> figure("cream-usual").value, figure("cream-usual").unit
    (10.0, 'mm')
    """
    found = figures(_FILE).get(key)
    if found is None:
        message = f"building.csv has no figure '{key}'."
        raise NotFoundError(message, field="key", got=key, want="a key of building.csv")
    return found
