"""The book's own tins and ovens, to bake in without typing them."""

from dataclasses import dataclass

from krume.size import area_cm2, read_tin, tin_text
from krume.store import book_at, table_rows
from krume.usecases.asking.answer import Asked
from krume.usecases.own_oven.gathered import NO_NAME
from krume.usecases.own_oven.own_oven import oven_names

_TINS = "tins.csv"


@dataclass(frozen=True, slots=True)
class BakePlaces:
    """Texts of the tins a book has, each once, and the names of its ovens, one's own first."""

    tins: tuple[str, ...]
    ovens: tuple[str, ...]


def places_to_bake(asked: Asked) -> BakePlaces:
    """What a book offers to bake in; a tin whose text asks something is left out."""
    found: dict[str, None] = {}
    for row in table_rows(book_at(asked.book), _TINS):
        tin = read_tin(row.get("tin") or "", where=_TINS).value
        if tin is not None and area_cm2(tin) is not None:
            found[tin_text(tin)] = None
    ovens = tuple(name for name in oven_names(asked) if name != NO_NAME)
    return BakePlaces(tuple(found), ovens)
