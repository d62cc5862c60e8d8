"""The lot code that stands on a label: of what was made for an order, or for none."""

from krume.store import book_at, cakes_of_kind, cakes_of_order
from krume.usecases.asking.answer import Asked


def lot_codes(name: str, asked: Asked) -> dict[str, str]:
    """Lot code of each thing that was written down for a text, by the thing's name in the book.

    Of a torte or a formula that no order asked for it is the last one. Nothing is made up: what
    is not written down has no code. Two makings of one thing for one order have both codes.
    """
    book, name = book_at(asked.book), name.rpartition("/")[2].removesuffix(".txt")
    found: dict[str, list[str]] = {}
    for cake in cakes_of_order(book, name):
        if cake.state == "made":
            found.setdefault(cake.what, []).append(cake.code)
    if not found:
        last = next((each for each in cakes_of_kind(book, name) if each.state == "made"), None)
        return {} if last is None else {last.what: last.code}
    return {what: " ".join(codes) for what, codes in found.items()}


def lot_code(name: str, what: str, asked: Asked) -> str | None:
    """Lot code of one thing of an order (`what` its name in the book); None where none is there."""
    return lot_codes(name, asked).get(what)
