"""Which nuts the kitchen uses at all: said beside every cake that has none."""

from krume.base import NotFoundError
from krume.pantry import allergens
from krume.store import book_at, list_texts
from krume.usecases.answer import Asked
from krume.usecases.read import formula_of
from krume.usecases.remembering import Remembered

_NUT_WORDS = ("nuts (", "tree nut (")
_NUTS: Remembered[dict[str, str]] = Remembered(8)


def kitchen_nuts(asked: Asked, market: str) -> dict[str, str]:
    """Declaring word of each nut in the book's formulas, with the formula it is in."""
    return _NUTS.of(book_at(asked.book), market, lambda: _found(asked, market))


def _found(asked: Asked, market: str) -> dict[str, str]:
    found: dict[str, str] = {}
    for text in list_texts(book_at(asked.book)):
        if text.kind != "formula":
            continue
        formula = formula_of(str(text.path), Asked(book=asked.book)).formula
        for word in (w for line in formula.lines for w in _nut_words(line.ingredient, market)):
            found.setdefault(word, text.name)
    return found


def _nut_words(key: str | None, market: str) -> list[str]:
    if key is None:
        return []
    try:
        words = [a.word(market) for a in allergens(key) if a.presence == "contains"]
    except NotFoundError:
        return []
    return [word for word in words if word.startswith(_NUT_WORDS)]
