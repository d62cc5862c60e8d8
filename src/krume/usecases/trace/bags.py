"""Which bags: the batches of a thing with the lots each line may have taken, and those chosen."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date

from krume.base import InputError, Option, Problem
from krume.design import Formula
from krume.store import KeptBatch, KeptLot
from krume.usecases.trace.house import HouseLot, has_no_lot, lots_for

NOT_KNOWN = "not known"
_LOT_LIMIT = 60
_UNSAID = ("?", "not known", "unknown", "none")


@dataclass(frozen=True, slots=True)
class BagLine:
    """One ingredient of a formula, the lots of the house that may be in it, and those that are.

    `lots` is None where nobody said; empty is said to be not known. `named` are lots of the house
    that a `Lots:` line of the text names.
    """

    ingredient: str
    goods: str
    in_house: tuple[HouseLot, ...]
    lots: tuple[str, ...] | None = None
    named: tuple[str, ...] = ()

    @property
    def taken(self) -> tuple[str, ...]:
        """What is written down: what was said, else what the text names, else the only lot."""
        if self.lots is not None:
            return self.lots
        return self.named or tuple(lot.mark for lot in self.in_house if len(self.in_house) == 1)

    @property
    def is_open(self) -> bool:
        """Whether somebody has to say which: there are several, and none was named."""
        return self.lots is None and not self.named and len(self.in_house) > 1


@dataclass(frozen=True, slots=True)
class Bags:
    """A batch of a formula that is to be written down.

    `batch` is the chain of an earlier batch that was used, `is_unknown` says that nobody knows.
    """

    formula: str
    title: str
    made_on: date
    lines: tuple[BagLine, ...]
    batch: str = ""
    is_unknown: bool = False


@dataclass(frozen=True, slots=True)
class BagsSaid:
    """What a person said of one formula's batch: its day, an earlier batch, lots by ingredient.

    `named` are the lots of a `Lots:` line, which hold where nothing else is said.
    """

    made_on: date | None = None
    batch: str = ""
    is_unknown: bool = False
    lots: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    named: frozenset[str] = frozenset()


def lines_of(formula: Formula) -> tuple[tuple[str, str], ...]:
    """Ingredients of a formula with their pantry keys, each once; tap water has no lot."""
    merged: dict[str, tuple[str, str]] = {}
    for line in formula.lines:
        words, goods = " ".join((line.name or line.read).split()), line.ingredient or ""
        if not has_no_lot(goods):
            merged.setdefault(goods or words.casefold(), (words, goods))
    return tuple(merged.values())


def bags_of(
    name: str,
    title: str,
    lines: Iterable[tuple[str, str]],
    day: date,
    house: Iterable[HouseLot],
    said: BagsSaid | None = None,
) -> Bags:
    """The batch of a formula as it would be written down."""
    told = said or BagsSaid()
    made_on, there = told.made_on or day, tuple(house)
    found = tuple(_line(words, goods, there, made_on, told) for words, goods in lines)
    return Bags(name, title or name, made_on, found, told.batch, told.is_unknown)


def _line(
    words: str, goods: str, house: tuple[HouseLot, ...], day: date, told: BagsSaid
) -> BagLine:
    there = lots_for(words, goods, house, day)
    named = tuple(lot.mark for lot in there if lot.mark in told.named)
    return BagLine(words, goods, there, told.lots.get(words), named)


def bag_problems(bags: Iterable[Bags]) -> tuple[Problem, ...]:
    """One question for each line with several lots of which nobody said which went in."""
    return tuple(
        _question(each, line)
        for each in bags
        if not each.batch and not each.is_unknown
        for line in each.lines
        if line.is_open
    )


def _question(bags: Bags, line: BagLine) -> Problem:
    marks = [lot.mark for lot in line.in_house]
    options = [Option(f"{mark} went in", mark) for mark in marks]
    options.append(Option("all of them went in", ", ".join(marks)))
    options.append(Option("not known", NOT_KNOWN))
    ask = (
        f"Which bag of {line.ingredient} went into {bags.formula}? "
        f"{', '.join(marks[:-1])} and {marks[-1]} were in the house on {bags.made_on}."
    )
    where = f"{bags.formula} {line.ingredient}"
    return Problem("lot-open", where, line.ingredient, ask, tuple(options))


def marks_said(text: str) -> tuple[str, ...]:
    """Marks as typed, by comma; a question mark or “not known” is none.

    >>> marks_said("L-008, L-019"), marks_said("?")
    (('L-008', 'L-019'), ())
    """
    if " ".join(text.casefold().split()) in ("", *_UNSAID):
        return ()
    marks = dict.fromkeys(" ".join(part.split()) for part in text.split(",") if part.strip())
    long = next((mark for mark in marks if len(mark) > _LOT_LIMIT), None)
    if long is not None:
        message = (
            f"A mark of {len(long)} signs is none a bag has; {_LOT_LIMIT} are the most. Type what "
            "stands behind “lot” on the bag."
        )
        raise InputError(message, field="lot", got=long[:_LOT_LIMIT])
    return tuple(marks)


def kept_batch(bags: Bags, key: str, house: Iterable[HouseLot], *, trial: str = "") -> KeptBatch:
    """The record of a batch: a row for each lot that went in, one without where none is known."""
    there = {(lot.mark.casefold(), lot.ingredient): lot for lot in house}
    rows: list[KeptLot] = []
    for line in bags.lines:
        known = {lot.mark.casefold(): lot for lot in line.in_house}
        for mark in line.taken or ("",):
            lot = known.get(mark.casefold()) or _only(mark, there.values())
            supplier = "" if lot is None else lot.supplier
            rows.append(KeptLot(line.ingredient, line.goods, mark, supplier))
    return KeptBatch(
        key, bags.formula, bags.title, bags.made_on.isoformat(), tuple(rows), trial=trial
    )


def _only(mark: str, house: Iterable[HouseLot]) -> HouseLot | None:
    same = [lot for lot in house if lot.mark.casefold() == mark.casefold()]
    return same[0] if len(same) == 1 else None
