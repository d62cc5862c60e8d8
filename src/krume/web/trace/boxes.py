"""The boxes of “which bags?”: a box for each lot in the house, one for another mark."""

from dataclasses import dataclass
from datetime import date

from krume.usecases import Bags, BagsSaid, marks_said
from krume.web.frame.forms import Form

_MOST = 400
NOT_KNOWN, NEW = "not known", "new"


@dataclass(frozen=True, slots=True)
class LotBox:
    """One lot of the house, ticked or not."""

    name: str
    mark: str
    supplier: str
    is_ticked: bool


@dataclass(frozen=True, slots=True)
class LineBoxes:
    """One ingredient: its lots in the house, and marks that are in no table of lots."""

    name: str
    ingredient: str
    boxes: tuple[LotBox, ...]
    other: str


@dataclass(frozen=True, slots=True)
class BatchBoxes:
    """One batch: its day, the earlier batches it may be, its lines."""

    name: str
    formula: str
    title: str
    made_on: str
    batch: str
    earlier: tuple[str, ...]
    lines: tuple[LineBoxes, ...]


def boxes_of(number: int, bags: Bags, earlier: tuple[str, ...] = ()) -> BatchBoxes:
    """The boxes of a batch, ticked as it would be written down."""
    lines = []
    for at, line in enumerate(bags.lines):
        name, taken = f"lot{number}.{at}", {mark.casefold() for mark in line.taken}
        boxes = tuple(
            LotBox(f"{name}.{n}", lot.mark, lot.supplier, lot.mark.casefold() in taken)
            for n, lot in enumerate(line.in_house)
        )
        there = {lot.mark.casefold() for lot in line.in_house}
        other = ", ".join(mark for mark in line.taken if mark.casefold() not in there)
        lines.append(LineBoxes(name, line.ingredient, boxes, other))
    batch = NOT_KNOWN if bags.is_unknown else bags.batch
    return BatchBoxes(
        str(number), bags.formula, bags.title, bags.made_on.isoformat(), batch, earlier,
        tuple(lines),
    )  # fmt: skip


def said_in_form(form: Form, number: int) -> tuple[str, BagsSaid, Form]:
    """Formula and what was said of its batch; the form says what could not be read."""
    typed, batch = form.get(f"day{number}").strip(), form.get(f"batch{number}")
    made_on = _day(typed)
    if typed and made_on is None:
        form = form.with_wrong(f"day{number}", f"“{typed}” is no day. Type 2027-06-10.")
    lots: dict[str, tuple[str, ...]] = {}
    for at in range(_MOST):
        name = f"lot{number}.{at}"
        ingredient = form.get(f"{name}.of")
        if not ingredient:
            break
        ticked = [v for k, v in form.values.items() if _is_box(k, name)]
        lots[ingredient] = tuple(dict.fromkeys((*ticked, *marks_said(form.get(f"{name}.other")))))
    is_earlier = batch not in ("", NEW, NOT_KNOWN)
    said = BagsSaid(made_on, batch if is_earlier else "", batch == NOT_KNOWN, lots)
    return form.get(f"of{number}"), said, form


def said_of_each(form: Form) -> tuple[dict[str, BagsSaid], Form]:
    """What was said of every batch of a form."""
    found: dict[str, BagsSaid] = {}
    for number in range(_MOST):
        if not form.get(f"of{number}"):
            break
        formula, said, form = said_in_form(form, number)
        found[formula] = said
    return found, form


def _is_box(key: str, name: str) -> bool:
    return key.startswith(f"{name}.") and key.removeprefix(f"{name}.").isdecimal()


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None
