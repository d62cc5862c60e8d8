"""The flours a blend may be made of: those the book has lots of, and the formula's own."""

from dataclasses import dataclass

from krume.usecases.asking.answer import Asked
from krume.usecases.blend.flours import Flour, flours_of
from krume.usecases.blend.match import aim_of
from krume.usecases.blend.papers import flours_in_house, market_of, ran_out, records_of
from krume.usecases.blend.request import PROPERTIES
from krume.usecases.sold.papers import papers_of


@dataclass(frozen=True, slots=True)
class BlendHand:
    """A flour that may be at hand: its lot and how its record stands, whether the formula has it.

    `is_taken` says that it is taken where nobody names flours.
    """

    ingredient: str
    name: str
    lot: str | None
    state: str
    text: str
    was_g: float | None
    is_taken: bool


def flours_at_hand(match: str | None, asked: Asked) -> tuple[BlendHand, ...]:
    """Flours of the book's lots, then a formula's own that it has no lots of."""
    papers = papers_of(asked)
    found = None if match is None else aim_of(match, None, PROPERTIES, asked, papers).match
    own = {} if found is None else {part.flour.key: part for part in found.parts}
    housed = flours_in_house(papers)
    names = (*housed, *(part.flour.name for part in own.values()))
    named = [(name, "") for name in dict.fromkeys(names)]
    flours = flours_of(named, asked, papers.sheets).value
    records = {r.ingredient: r for r in records_of(flours, frozenset(), papers, market_of(asked))}
    old = {name for name in housed if ran_out(name, papers)}

    def row(flour: Flour) -> BlendHand:
        record, part = records.get(flour.key), own.get(flour.key)
        return BlendHand(
            flour.key,
            flour.name,
            None if record is None else record.lot,
            "" if record is None else record.state,
            "" if record is None else record.text,
            None if part is None else part.mass_g,
            part is not None or flour.name not in old,
        )

    return tuple(map(row, flours))
