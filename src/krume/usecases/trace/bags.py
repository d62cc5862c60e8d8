"""Which bags: the batches of a thing with the lots each line may have taken, and those chosen."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date

from krume.base import InputError, Notice, Option, Problem
from krume.design import Formula
from krume.store import KeptBatch, KeptLot
from krume.usecases.trace.house import HouseLot, has_no_lot, lots_for, may_take

NOT_KNOWN = "not known"
_LOT_LIMIT = 60
_UNSAID = ("?", "not known", "unknown", "none")


@dataclass(frozen=True, slots=True)
class BagLine:
    """One ingredient of a formula, the lots of the house that may be in it, and those that are.

    `lots` is None where nobody said; empty is said to be not known. `named` are lots of the house
    that a `Lots:` line of the text names. `of_others` are lots of other goods whose mark was said,
    `strange` marks that no table of lots has.
    """

    ingredient: str
    goods: str
    in_house: tuple[HouseLot, ...]
    lots: tuple[str, ...] | None = None
    named: tuple[str, ...] = ()
    of_others: tuple[HouseLot, ...] = ()
    strange: tuple[str, ...] = ()

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
    lots = told.lots.get(words)
    of_others, strange = _astray(lots or (), words, goods, house)
    return BagLine(words, goods, there, lots, named, of_others, strange)


def _astray(
    marks: Iterable[str], words: str, goods: str, house: tuple[HouseLot, ...]
) -> tuple[tuple[HouseLot, ...], tuple[str, ...]]:
    """Lots that a line cannot have taken though their mark was said, and marks nobody knows."""
    of_others: list[HouseLot] = []
    strange: list[str] = []
    for mark in marks:
        same = [lot for lot in house if lot.mark.casefold() == mark.casefold()]
        if not same:
            strange.append(mark)
        elif not any(may_take(words, goods, lot.ingredient) for lot in same):
            of_others.append(same[0])
    return tuple(of_others), tuple(strange)


def bag_problems(bags: Iterable[Bags]) -> tuple[Problem, ...]:
    """A question for each line whose lot nobody named, or whose mark is of something else."""
    return tuple(
        _question(each, line) if line.is_open else _doubt(each, line)
        for each in _new_ones(bags)
        for line in each.lines
        if line.is_open or line.of_others
    )


def _new_ones(bags: Iterable[Bags]) -> Iterable[Bags]:
    return (each for each in bags if not each.batch and not each.is_unknown)


def check_marks(bags: Iterable[Bags]) -> None:
    """Refuse a mark that is of something else: a recall would go past the cake."""
    for each in _new_ones(bags):
        line = next((line for line in each.lines if line.of_others), None)
        if line is not None:
            raise InputError(
                f"{_of_what(each, line)} Type the mark that stands on the bag, or “not known”; "
                "if the mark is right, put the table of lots right first.",
                field="lot",
                got=", ".join(lot.mark for lot in line.of_others),
            )


def strange_marks(bags: Iterable[Bags]) -> tuple[Notice, ...]:
    """One notice of the marks that were said and are in no table of lots."""
    found = dict.fromkeys(
        f"{mark} ({line.ingredient})"
        for each in _new_ones(bags)
        for line in each.lines
        for mark in line.strange
    )
    text = (
        f"Not in the table of lots: {', '.join(found)}. Look at the bag again; if the mark is "
        "right, add it to the table of lots."
    )
    return (Notice("lot-strange", text),) if found else ()


def _of_what(bags: Bags, line: BagLine) -> str:
    """`F2: L-005 is potato starch in the table of lots, not millet flour.`"""
    told = " and ".join(f"{lot.mark} is {lot.ingredient}" for lot in line.of_others)
    return f"{bags.formula}: {told} in the table of lots, not {line.ingredient}."


def _doubt(bags: Bags, line: BagLine) -> Problem:
    """The question where a mark is of something else: the bags there were, or not known."""
    ask = (
        f"{_of_what(bags, line)} Which bag of {line.ingredient} went in? If the mark is right, "
        "put the table of lots right first."
    )
    read = ", ".join(line.lots or ())
    where = f"{bags.formula} {line.ingredient}"
    return Problem("lot-of-other", where, read, ask, _options([x.mark for x in line.in_house]))


def _options(marks: list[str]) -> tuple[Option, ...]:
    options = [Option(f"{mark} went in", mark) for mark in marks]
    if len(marks) > 1:
        options.append(Option("all of them went in", ", ".join(marks)))
    return (*options, Option("not known", NOT_KNOWN))


def _question(bags: Bags, line: BagLine) -> Problem:
    marks = [lot.mark for lot in line.in_house]
    ask = (
        f"Which bag of {line.ingredient} went into {bags.formula}? "
        f"{', '.join(marks[:-1])} and {marks[-1]} were in the house on {bags.made_on}."
    )
    where = f"{bags.formula} {line.ingredient}"
    return Problem("lot-open", where, line.ingredient, ask, _options(marks))


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
