"""What holds for a whole text while its lines are read, and the reader's own limits."""

from functools import cache
from typing import NamedTuple

from krume.evidence import figures
from krume.pantry import Ingredient


class Settings(NamedTuple):
    """Egg region and size, whether commas are decimals, the table's unit, own ingredients.

    `by_book` says that the region is the book's, not the text's; `speaks_american` that the text
    measures in US cups or bakes in Fahrenheit.
    """

    region: str | None = None
    egg_size: str | None = None
    comma_is_decimal: bool = False
    table_unit: str | None = None
    table: tuple[str, ...] = ()
    own: tuple[Ingredient, ...] = ()
    by_book: bool = False
    speaks_american: bool = False


@cache
def limit(key: str) -> float:
    """A limit or default of the reader, from its row in reader.csv."""
    return float(figures("reader.csv")[key].value)
