"""What a slice holds, for the page and the sheet of a torte: lines to print, the caution last."""

from krume.label import Product
from krume.usecases.asking.answer import Asked
from krume.usecases.label.nutrition import AS_PLANNED, nutrition_of
from krume.usecases.sold.papers import Papers, papers_of
from krume.usecases.sold.product import sold_of


def slice_lines(product: Product, papers: Papers, market: str) -> tuple[str, ...]:
    """Carbohydrate of a slice of each number that is planned; nothing where none is planned."""
    if not product.slices:
        return ()
    law = "us" if market == "us" else "eu"
    eaten = nutrition_of(product, papers.sheets, law, AS_PLANNED).nutrition
    if eaten is None or eaten.carbohydrate is None:
        return ("Carbohydrate of a slice: not known, because a mass in it is not known.",)
    found = eaten.carbohydrate
    lines = tuple(each.text for each in found.slices) or (found.text,)
    return (*lines, found.caution) if found.slices else lines


def slice_lines_of_all(name: str, asked: Asked, market: str) -> dict[str, tuple[str, ...]]:
    """The lines of every torte a name means, by its name."""
    papers = papers_of(asked)
    return {
        each.name: slice_lines(each.product, papers, market) for each in sold_of(name, asked).sold
    }
