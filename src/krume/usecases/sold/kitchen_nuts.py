"""Which nuts the kitchen uses at all: said beside every cake that has none."""

from functools import lru_cache

from krume.base import NotFoundError
from krume.design import decode_text, read
from krume.pantry import allergens, is_tree_nut
from krume.store import book_at, folder_bytes, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.remembering import Remembered

_REMEMBERED = 8192
_NUTS: Remembered[dict[str, str]] = Remembered(8)


def kitchen_nuts(asked: Asked, market: str) -> dict[str, str]:
    """Declaring word of each nut in the book's formulas, with the formula it is in."""
    return _NUTS.of(book_at(asked.book), market, lambda: _found(asked, market))


def _found(asked: Asked, market: str) -> dict[str, str]:
    book = book_at(asked.book)
    region = studio_of(book).eggs_region
    found: dict[str, str] = {}
    for name, data in folder_bytes(book, "formulas").items():
        for word in _nuts_in(data, region, market):
            found.setdefault(word, name)
    return found


@lru_cache(maxsize=_REMEMBERED)
def _nuts_in(held: bytes, region: str | None, market: str) -> tuple[str, ...]:
    """Nuts of one text: an edit of one formula reads only that one again."""
    formula = read(decode_text(held).value, eggs_region=region).value
    return tuple(w for line in formula.lines for w in _nut_words(line.ingredient, market))


def _nut_words(key: str | None, market: str) -> list[str]:
    if key is None:
        return []
    try:
        nuts = [each for each in allergens(key) if is_tree_nut(each.allergen)]
    except NotFoundError:
        return []
    return [word for nut in nuts for word in nut.words(market)]
