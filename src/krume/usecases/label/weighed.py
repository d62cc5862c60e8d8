"""The finished mass of a formula by a bake that was weighed, where no Baked: line is measured."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from krume.base import Notice, as_text, read_number
from krume.label import Product
from krume.properties import constants
from krume.store import Book, KeptStep, book_at, steps_of, table_rows, trials_of
from krume.usecases.asking.answer import Asked
from krume.usecases.sold.product import Sold, SoldRead

_LOOKED_AT = 20
"""So many of the newest trials are looked at for one whose batter and bake are both weighed."""
_NOT_WEIGHED = ("assumed", "unknown")
_LINES = ("in", "got", "not-weighed", "no-more")


@dataclass(frozen=True, slots=True)
class WeighedBake:
    """A batter and what it weighed baked, with the words of the record."""

    batter_g: float
    baked_g: float
    record: str

    @property
    def share(self) -> float:
        """What is left of the batter."""
        return self.baked_g / self.batter_g


def read_as_weighed(read: SoldRead, asked: Asked) -> SoldRead:
    """Things to sell at their weighed masses, each said; as planned where nothing was weighed.

    A `Baked:` line that is measured itself stands; a torte stands as its plan has it.
    """
    pairs = [(each, *_as_weighed(each, asked)) for each in read.sold]
    sold = tuple(replace(each, product=product) for each, product, _ in pairs)
    notices = (notice for _, _, told in pairs for notice in told)
    return replace(read, sold=sold, notices=(*read.notices, *notices))


def _as_weighed(sold: Sold, asked: Asked) -> tuple[Product, tuple[Notice, ...]]:
    product = sold.product
    mixed_g = product.mixed_g
    if product.kind != "formula" or product.finished_status not in _NOT_WEIGHED or mixed_g is None:
        return product, ()
    found = weighed_bake(book_at(asked.book), sold.name)
    if found is None:
        return product, ()
    finished_g = mixed_g * found.share
    text = (
        f"{sold.name}: shares and panel stand on {as_text(finished_g, 0)} g. {found.record}: "
        f"{as_text(found.batter_g, 0)} g of batter weighed {as_text(found.baked_g, 0)} g baked."
    )
    weighed = replace(product, finished_g=finished_g, finished_status="measured")
    return weighed, (Notice("weighed-mass", text),)


def weighed_bake(book: Book, name: str) -> WeighedBake | None:
    """The newest bake of a formula whose batter and cake were both weighed; None without one."""
    return next((each for each in (*_at_bench(book, name), *_in_table(book, name))), None)


def _at_bench(book: Book, name: str) -> Iterator[WeighedBake]:
    for trial in trials_of(book, place=f"formulas/{name}.txt", most=_LOOKED_AT):
        if trial.baked_g is None or trial.weighing is None:
            continue
        batter_g = _batter_g(steps_of(book, trial.weighing))
        if batter_g is not None and _is_whole(batter_g, trial.baked_g):
            yield WeighedBake(batter_g, trial.baked_g, f"By the trial of {trial.at}")


def _batter_g(steps: Iterable[KeptStep]) -> float | None:
    """Grams in the bowl by a weighing.

    None where a line was not weighed, or a way was chosen that may have put some in a jar.
    """
    alive = [step for step in steps if not step.is_undone]
    if any(step.kind == "choose" for step in alive):
        return None
    said = [step for step in alive if step.kind in _LINES and step.said]
    last = {step.position: step for step in said if step.position is not None}
    grams = [step.got_g for step in last.values() if step.got_g is not None]
    return math.fsum(grams) if grams and len(grams) == len(last) else None


def _in_table(book: Book, name: str) -> Iterator[WeighedBake]:
    """Rows of the table of trials, the last first; what is invented is no weighing."""
    for row in reversed(table_rows(book, "trials.csv")):
        if row.get("formula") != name or row.get("status") != "measured":
            continue
        batter_g, baked_g = (_grams(row.get(key, "")) for key in ("batter_g", "baked_g"))
        if batter_g is not None and baked_g is not None and _is_whole(batter_g, baked_g):
            yield WeighedBake(batter_g, baked_g, f"By the trial {row.get('trial', '')}".rstrip())


def _grams(text: str | None) -> float | None:
    found = read_number(text or "", comma_is_decimal=True)
    return None if found is None else found.value


def _is_whole(batter_g: float, baked_g: float) -> bool:
    """Whether a bake can have come of this batter: it gains nothing, nor dries away."""
    least = 1 - constants("declared.csv")["loss-most-pct"] / 100
    return batter_g > 0 and least * batter_g <= baked_g <= batter_g
