"""The answer of a variation as a page shows it: changes, figures that move, what is still off."""

from dataclasses import dataclass

from krume.base import as_text
from krume.usecases import VaryChange, VaryResult
from krume.web.frame.figures import amount

_RATIO = "ratio"
_FINE = (_RATIO, "g/cm2", "g/ml")
_HELD = ("fat", "water", "sugar", "starch", "protein", "fibre")


@dataclass(frozen=True, slots=True)
class ChangeRow:
    """A line that is not as in the parent."""

    name: str
    before: str
    after: str
    why: str


@dataclass(frozen=True, slots=True)
class FigureRow:
    """A figure of the balance that moves."""

    label: str
    before: str
    after: str
    usual: str
    unit: str
    status: str


@dataclass(frozen=True, slots=True)
class OffRow:
    """What the child has less or more of than its parent, bare and made up."""

    name: str
    bare: str
    made_up: str


def change_rows(changes: tuple[VaryChange, ...]) -> tuple[ChangeRow, ...]:
    """Lines that change; a line that is not there is a dash."""
    return tuple(
        ChangeRow(each.name, _grams(each.before_g), _grams(each.after_g), each.why)
        for each in changes
    )


def _grams(value: float | None) -> str:
    return "–" if value == 0 else amount(value, 2)


def figure_rows(child: VaryResult) -> tuple[FigureRow, ...]:
    """Figures that are another number than in the parent."""
    if child.balance is None:
        return ()
    rows = []
    for each in child.balance.figures:
        digits = 3 if each.unit in _FINE else 1
        before, after = amount(each.before, digits), amount(each.after, digits)
        if before != after:
            usual = f"{amount(each.low, digits)} to {amount(each.high, digits)}"
            unit = "" if each.unit == _RATIO else each.unit
            rows.append(FigureRow(each.label, before, after, usual, unit, each.status))
    return tuple(rows)


def off_rows(child: VaryResult) -> tuple[OffRow, ...]:
    """Each quantity that is held near the parent's, before and after the make-up."""
    if child.gaps is None or child.left is None:
        return ()
    names = [(name, f"{name}_g") for name in _HELD]
    return tuple(
        OffRow(name, _off(getattr(child.gaps, key)), _off(getattr(child.left, key)))
        for name, key in names
    )


def _off(gap_g: float | None) -> str:
    if gap_g is None:
        return "not known"
    text = as_text(abs(gap_g), 1)
    if text == "0":
        return "same"
    return f"{text} g {'less' if gap_g > 0 else 'more'}"
