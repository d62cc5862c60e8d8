"""Days of making as they were written down for an order: of each thing, and of its parts."""

from datetime import date

from krume.keep import Keeping
from krume.store import KeptBatch, KeptCake, batches_now, book_at, cakes_of_order
from krume.usecases.asking.answer import Asked
from krume.usecases.label.durability import NOT_SAID, MadeOn


def written_days(name: str, asked: Asked) -> dict[str, MadeOn]:
    """Day of each thing of an order and of its parts, by the thing's name in the book.

    A thing one of whose parts came from no known batch has none: its date stays a blank. Of two
    makings of one thing the earlier counts.
    """
    book, name = book_at(asked.book), name.rpartition("/")[2].removesuffix(".txt")
    cakes = [cake for cake in cakes_of_order(book, name) if cake.state == "made"]
    chains = {part.batch for cake in cakes for part in cake.parts if part.batch}
    batches = {batch.chain: batch for batch in batches_now(book, chains=chains)} if chains else {}
    found: dict[str, list[MadeOn | None]] = {}
    for cake in cakes:
        found.setdefault(cake.what, []).append(_days(cake, batches))
    return {what: _earliest(days) for what, made in found.items() if (days := _known(made))}


def _days(cake: KeptCake, batches: dict[str, KeptBatch]) -> MadeOn | None:
    """Days of one making; None where that of a part is not known, or after the whole."""
    whole, parts = date.fromisoformat(cake.made_on), []
    for part in cake.parts:
        batch = batches.get(part.batch)
        day = None if batch is None else date.fromisoformat(batch.made_on)
        if batch is None or day is None or batch.state != "made" or day > whole:
            return None
        parts.append((part.formula, day))
    return MadeOn(whole, tuple(parts))


def _known(made: list[MadeOn | None]) -> list[MadeOn]:
    """All makings of a thing, or none of them where one is not known."""
    return [each for each in made if each is not None] if None not in made else []


def _earliest(made: list[MadeOn]) -> MadeOn:
    """The first day of the whole, and of each part, over several makings."""
    parts: dict[str, date] = {}
    for each in made:
        for name, day in each.parts:
            parts[name] = min(day, parts.get(name, day))
    days = [each.day for each in made if each.day is not None]
    return MadeOn(min(days), tuple(sorted(parts.items())))


def days_of(keeping: Keeping, typed: MadeOn, written: MadeOn | None) -> MadeOn:
    """What is typed, else what was written down where that is of the same parts; else nothing."""
    if typed != NOT_SAID or written is None:
        return typed
    names = {part.name for part in keeping.components}
    return written if {name for name, _ in written.parts} == names else NOT_SAID
