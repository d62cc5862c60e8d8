"""How the gluten gate stands, in the one sentence that a sheet at the bench has room for."""

from krume.label import ROOM, GlutenGate, Product, product_of_formula
from krume.usecases.asking.answer import Asked
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.papers import Papers, papers_of
from krume.usecases.sold.product import SoldRead, sold_of

_MOST = 3
RECORD_STATES = {
    "good": "good",
    "expired": "ran out",
    "missing": "no record",
    "conflict": "speaks against it",
    "not-yet-valid": "not in force yet",
    "not-needed": "none needed",
}
"""How the record of a lot stands, in the words of a sheet."""


def gluten_words(product: Product, papers: Papers, read: SoldRead, chosen: frozenset[str]) -> str:
    """“No gluten sentence” with what is missing; an open gate stands on the label alone."""
    gate = gate_of(product, papers, on=read.on, chosen=chosen)
    return gate_words(gate)


def gate_words(gate: GlutenGate) -> str:
    """The sentence of a gate that was judged."""
    if gate.claim_allowed:
        return "Gluten records complete for the day; the sentence stands on the label alone."
    if gate.missing == (ROOM,):
        return "Gluten: open on ingredients; no sentence before the room's cleaning record."
    if gate.is_open_on_ingredients:
        return f"Gluten: open on ingredients; no sentence yet: {_short(gate.missing)}."
    shut = ", ".join(r.lot or f"no lot of {r.ingredient}" for r in gate.records if r.is_closed)
    return f"No gluten sentence: {shut}."


def _short(names: tuple[str, ...]) -> str:
    """The first of what is missing, and how many more: a sheet has room for one line."""
    more = len(names) - _MOST
    return ", ".join(names[:_MOST]) + (f" and {more} more" if more > 0 else "")


def gluten_of_all(name: str, asked: Asked) -> dict[str, str]:
    """That sentence for each torte and each formula a name means, by its name in the book."""
    read, papers = sold_of(name, asked), papers_of(asked)
    if not papers.lots:
        return {}
    said: dict[str, str] = {}
    for sold in read.sold:
        said[sold.name] = gluten_words(sold.product, papers, read, sold.chosen)
        for what, formula in sold.formulas.items():
            product = product_of_formula(what, formula)
            said[what] = gluten_words(product, papers, read, sold.chosen)
    return said
