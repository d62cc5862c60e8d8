"""The figures of this folder, by name, each a row of tins.csv with its papers."""

from krume.base import Figure
from krume.evidence import figures


def figure(key: str) -> Figure:
    """Figure of tins.csv."""
    return figures("tins.csv")[key]


def value(key: str) -> float:
    """Value of a figure of tins.csv, in the unit its row names."""
    return figure(key).value
