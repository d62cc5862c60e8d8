"""The weighing order: bowl by bowl, what to take, what to add, what the scale must show."""

import math
from dataclasses import dataclass, replace
from itertools import count

from krume.base import Notice, as_text
from krume.design.bowls import BOWLS, DRY, Share, shares
from krume.design.formula import Formula, Line
from krume.evidence import figures
from krume.pantry import ingredient

# Float noise of a running total, far below anything a scale shows.
_NOISE_DIGITS = 6


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the weighing order.

    `kind` is `tare` (set the scale to 0), `add` (stop when the display shows `display_g`), `egg`
    (about `add_g`: the eggs decide, weigh and tare again) or `unknown` (no mass is known).
    `display_g` is the running total since the last tare. `line` is an index into the formula's
    lines, `mark` a short warning about the scale, `step_g` the smallest step the scale shows.
    """

    kind: str
    bowl: str
    take: str
    number: int | None = None
    add_g: float | None = None
    display_g: float | None = None
    line: int | None = None
    mark: str = ""
    step_g: float = 0.1


@dataclass(frozen=True, slots=True)
class Weighing:
    """Rows in the order a person works, and what the last displays and the eggs add up to.

    `parts_g` are the addends of `total_g`: each last display before a tare and each egg row as
    planned. Lines without a mass are named in `unknown` and are in no sum.
    """

    rows: tuple[Row, ...]
    parts_g: tuple[float, ...]
    total_g: float
    unknown: tuple[str, ...] = ()
    scale_g: float = 0.1
    notices: tuple[Notice, ...] = ()


def weigh_out(formula: Formula, *, scale_g: float = 0.1) -> Weighing:
    """Weighing order of a formula on a scale that shows steps of `scale_g`.

    Every gram of every line is in exactly one row, so `total_g` is the mass of the batter.
    """
    found, notices = shares(formula)
    rows: list[Row] = []
    for bowl in BOWLS:
        held = tuple(share for share in found if share.bowl == bowl)
        if held:
            rows.extend(_Bowl(formula, bowl, held, _scale_for(held, scale_g)).rows())
    numbered = _numbered(rows)
    parts = addends(numbered)
    return Weighing(
        rows=numbered,
        parts_g=parts,
        total_g=_clean(math.fsum(parts)),
        unknown=tuple(formula.lines[s.line].name for s in found if s.mass_g is None),
        scale_g=scale_g,
        notices=(*notices, *_told(formula), *_scale_notices(formula, found, scale_g)),
    )


def figure(key: str) -> float:
    """One number about scales, from its row."""
    return figures("weighing.csv")[key].value


def _clean(value: float) -> float:
    return round(value, _NOISE_DIGITS)


def addends(rows: tuple[Row, ...]) -> tuple[float, ...]:
    """Each last display before a tare, and each egg row: what the batter is added up from."""
    parts: list[float] = []
    running: float | None = None
    for row in rows:
        if row.kind == "add":
            running = row.display_g
            continue
        if running is not None:
            parts.append(running)
            running = None
        if row.kind == "egg" and row.add_g is not None:
            parts.append(row.add_g)
    return (*parts, running) if running is not None else tuple(parts)


def _numbered(rows: list[Row]) -> tuple[Row, ...]:
    numbers = count(1)
    return tuple(row if row.kind == "tare" else replace(row, number=next(numbers)) for row in rows)


@dataclass(frozen=True, slots=True)
class _Bowl:
    """One bowl: its shares, and the step of the scale it is weighed on."""

    formula: Formula
    key: str
    held: tuple[Share, ...]
    step_g: float

    def rows(self) -> list[Row]:
        """Tare, then row by row; eggs stand alone between two tares."""
        eggs = [share for share in self.held if self._is_shell(share)]
        known = [s for s in self.held if not self._is_shell(s) and s.mass_g is not None]
        unknown = [s for s in self.held if not self._is_shell(s) and s.mass_g is None]
        rest = [*known, *unknown]
        groups = [*([share] for share in eggs), rest]
        if self.key not in ("egg", "yolk", "white"):
            groups = [rest, *([share] for share in eggs)]
        out: list[Row] = []
        for group in filter(None, groups):
            out.append(self._tare(is_again=bool(out)))
            out.extend(self._group(group))
        return out

    def _is_shell(self, share: Share) -> bool:
        line = self.formula.lines[share.line]
        return share.part is not None or line.basis == "egg"

    def _tare(self, *, is_again: bool) -> Row:
        again = " again" if is_again else ""
        mark = self._load_mark() if not is_again else ""
        return Row("tare", self.key, f"{BOWLS[self.key]}{again}: set the scale to 0", mark=mark)

    def _load_mark(self) -> str:
        load = math.fsum(share.mass_g or 0.0 for share in self.held)
        return _too_heavy(load, self.step_g)

    def _group(self, group: list[Share]) -> list[Row]:
        running: list[float] = []
        out: list[Row] = []
        for share in group:
            line = self.formula.lines[share.line]
            take = _take(line, share)
            if self._is_shell(share):
                out.append(Row("egg", self.key, take, add_g=_maybe(share.mass_g), line=share.line))
            elif share.mass_g is None:
                out.append(Row("unknown", self.key, take, line=share.line, mark=_written(line)))
            else:
                running.append(share.mass_g)
                out.append(self._add(take, share.mass_g, math.fsum(running), share.line))
        return out

    def _add(self, take: str, add_g: float, shown_g: float, line: int) -> Row:
        mark = _too_small(add_g, self.step_g)
        return Row(
            "add",
            self.key,
            take,
            add_g=_clean(add_g),
            display_g=_clean(shown_g),
            line=line,
            mark=mark,
            step_g=self.step_g,
        )


def _maybe(value: float | None) -> float | None:
    return None if value is None else _clean(value)


def _written(line: Line) -> str:
    return f"no mass is known: “{line.read.strip()}”"


def _take(line: Line, share: Share) -> str:
    if share.part is not None or line.basis == "egg":
        return _egg_words(line, share.part)
    words = ", ".join(text for text in (line.name, line.note, share.remark) if text)
    return words or line.read.strip()


def _egg_words(line: Line, split: str | None) -> str:
    eggs = line.amount if isinstance(line.amount, float | int) and line.unit == "each" else None
    many = "" if eggs == 1 else "s"
    if eggs is None:
        return f"{split}s of the eggs" if split else line.name
    if split:
        return f"{split}{many} of {as_text(eggs, 2)} egg{many}"
    part = "" if line.part in (None, "whole") else f" {line.part}"
    return f"{as_text(eggs, 2)} egg{part}{many}"


def _scale_for(held: tuple[Share, ...], scale_g: float) -> float:
    """A bowl heavier than the fine scale carries is weighed on the coarse one."""
    load = math.fsum(share.mass_g or 0.0 for share in held)
    is_fine = scale_g <= figure("fine-step")
    return figure("coarse-step") if is_fine and load > figure("fine-limit") else scale_g


def _too_heavy(load_g: float, step_g: float) -> str:
    if load_g > figure("coarse-limit"):
        return f"more than {as_text(figure('coarse-limit') / 1000)} kg: in parts"
    if load_g > figure("fine-limit"):
        return f"more than {as_text(figure('fine-limit'))} g: {as_text(step_g)} g scale"
    return ""


def _too_small(add_g: float, step_g: float) -> str:
    if add_g <= 0 or not _is_small(add_g, step_g):
        return ""
    fine = figure("fine-step")
    if step_g > fine and not _is_small(add_g, fine):
        return f"{as_text(fine)} g scale"
    return f"one step of {as_text(fine)} g is {fine / add_g * 100:.0f} % of it"


def _is_small(add_g: float, step_g: float) -> bool:
    return _clean(add_g / step_g) < figure("fewest-steps")


def _told(formula: Formula) -> tuple[Notice, ...]:
    if formula.steps:
        return ()
    text = "no steps are written: the bowls are chosen by kind of ingredient"
    return (Notice("bowls-by-kind", text),)


def _scale_notices(
    formula: Formula, found: tuple[Share, ...], scale_g: float
) -> tuple[Notice, ...]:
    fine = figure("fine-step")
    return tuple(
        _small_notice(formula, share, found)
        for share in found
        if share.mass_g is not None
        and share.mass_g > 0
        and formula.lines[share.line].basis != "egg"
        and _is_small(share.mass_g, min(fine, scale_g))
    )


def _small_notice(formula: Formula, share: Share, found: tuple[Share, ...]) -> Notice:
    """What to do with an amount no scale of the house weighs well: carry it in flour or starch."""
    line, mass = formula.lines[share.line], share.mass_g or 0.0
    part, total = figure("premix-part"), figure("premix-total")
    step = as_text(figure("fine-step"))
    start = f"{as_text(mass, 3)} g {line.name}: one step of a {step} g scale is"
    start = f"{start} {figure('fine-step') / mass * 100:.0f} % of it."
    taken = mass * total / part
    carrier = _carrier(formula, share, found, taken - mass)
    if carrier is None:
        return Notice("small-amount", f"{start} Use a finer scale.", line.read)
    text = (
        f"{start} Use a finer scale, or weigh {as_text(part)} g of it with"
        f" {as_text(total - part)} g {carrier}, sift twice, take {as_text(taken, 2)} g of that and"
        f" {as_text(taken - mass, 2)} g less {carrier}."
    )
    return Notice("small-amount", text, line.read)


def _carrier(
    formula: Formula, share: Share, found: tuple[Share, ...], needed_g: float
) -> str | None:
    """Heaviest flour or starch of the same bowl that holds what the premix brings."""
    together = [
        (other.mass_g, formula.lines[other.line].name)
        for other in found
        if other.bowl == share.bowl and other.line != share.line and other.mass_g is not None
        and _role(formula.lines[other.line]) in ("flour", "starch")
    ]  # fmt: skip
    is_dry = _role(formula.lines[share.line]) in DRY
    fitting = [pair for pair in together if pair[0] >= needed_g]
    return max(fitting)[1] if fitting and is_dry else None


def _role(line: Line) -> str:
    return "" if line.ingredient is None else ingredient(line.ingredient).role
