"""The gluten gate of a product by the papers of the book: the one place that judges it."""

from datetime import date

from krume.label import GlutenGate, Product, gluten_gate
from krume.usecases.sold.papers import Papers


def gate_of(
    product: Product,
    papers: Papers,
    *,
    on: date,
    market: str | None = None,
    chosen: frozenset[str] = frozenset(),
    made: date | None = None,
    names: tuple[str, ...] = (),
) -> GlutenGate:
    """Judge a product by everything the book holds about it, in the book's market if none is said.

    Whatever prints, lists or holds asks here, so that no surface can leave a paper out. `names`
    are others than its title under which a test of the finished cake may stand among the lots.
    """
    return gluten_gate(
        product, papers.lots, papers.cleaning, on=on, market=market or papers.market,
        chosen=chosen, made=made, today=papers.today, room=papers.room,
        names=(product.name, *names),
    )  # fmt: skip
