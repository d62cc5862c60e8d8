"""What the lots in use declare of each torte and each formula that a name means."""

from krume.label import Statement, product_of_formula, statement
from krume.usecases.asking.answer import Asked
from krume.usecases.sold.papers import papers_of
from krume.usecases.sold.product import sold_of


def declared_of_all(name: str, asked: Asked, market: str) -> dict[str, Statement]:
    """The label's own list of each torte and formula, by its name in the book.

    A book without lots declares nothing: then nothing is judged.
    """
    papers = papers_of(asked)
    lots, sheets = papers.lots, papers.sheets
    if not lots:
        return {}
    said: dict[str, Statement] = {}
    for sold in sold_of(name, asked).sold:
        for what, formula in sold.formulas.items():
            product = product_of_formula(what, formula)
            said[what] = statement(product, lots, market=market, chosen=sold.chosen, sheets=sheets)
        said[sold.name] = statement(
            sold.product, lots, market=market, chosen=sold.chosen, sheets=sheets
        )
    return said
