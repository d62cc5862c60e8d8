"""What the size job answers: factor, tins, density, options."""

from dataclasses import dataclass

from krume.base import Notice
from krume.design import Formula
from krume.size import Factors, Fit, Tin, tin_factor
from krume.size import SizeOption as Sized
from krume.usecases.asking.read import ReadTin, tin_row


@dataclass(frozen=True, slots=True)
class SizeFactor:
    """The factor from the formula's own tin; None where a measure is not known."""

    by_volume: float | None
    by_area: float | None


@dataclass(frozen=True, slots=True)
class SizedLineRow:
    """One line of an option: before and after."""

    ingredient: str | None
    name: str
    part: str | None
    before_g: float | None
    mass_g: float | None


@dataclass(frozen=True, slots=True)
class SizedEggRow:
    """Eggs of one line: whole count and make-up grams."""

    ingredient: str | None
    part: str
    size: str
    count: int
    mass_g: float
    make_up_g: float


@dataclass(frozen=True, slots=True)
class SizeEggs:
    """Eggs to break: `count` whole ones, and what is needed (or left, below 0) beside them."""

    count: int
    size: str | None
    make_up_g: float
    lines: tuple[SizedEggRow, ...]


@dataclass(frozen=True, slots=True)
class SizeOption:
    """One way to size the formula, with what it costs in depth and grams."""

    kind: str
    factor: float
    text: str
    lines: tuple[SizedLineRow, ...]
    eggs: SizeEggs
    total_g: float | None
    depth_cm: float | None
    fill: float | None
    shares_g: tuple[float, ...]
    notices: tuple[Notice, ...]


@dataclass(frozen=True, slots=True)
class SizeDensity:
    """The density of the batter a depth is reckoned with, and whose word it is."""

    value_g_ml: float | None
    status: str
    source: str | None


@dataclass(frozen=True, slots=True)
class SizeResult:
    """A formula sized to tins, best option first."""

    name: str | None
    factor: SizeFactor
    own_tin: ReadTin | None
    tins: tuple[ReadTin, ...]
    density: SizeDensity
    own_depth_cm: float | None
    wanted_depth_cm: float | None
    wanted_factor: float | None
    options: tuple[SizeOption, ...]


def size_result(
    formula: Formula, tins: tuple[Tin, ...], density: SizeDensity, fitted: Fit | None
) -> SizeResult:
    """The answer for a fit; without one, what is known before it."""
    factor = _factor(formula.tin, tins)
    return SizeResult(
        name=formula.name,
        factor=SizeFactor(factor.by_volume, factor.by_area),
        own_tin=None if formula.tin is None else tin_row(formula.tin),
        tins=tuple(tin_row(tin) for tin in tins),
        density=density,
        own_depth_cm=None if fitted is None else fitted.own_depth_cm,
        wanted_depth_cm=None if fitted is None else fitted.wanted_depth_cm,
        wanted_factor=None if fitted is None else fitted.wanted_factor,
        options=() if fitted is None else tuple(_option(formula, o) for o in fitted.options),
    )


def _factor(own: Tin | None, tins: tuple[Tin, ...]) -> Factors:
    return Factors(None, None) if own is None or not tins else tin_factor(own, tins)


def _option(formula: Formula, option: Sized) -> SizeOption:
    return SizeOption(
        kind=option.kind,
        factor=option.factor,
        text=option.text,
        lines=tuple(
            SizedLineRow(line.ingredient, line.name, line.part, line.mass_g, sized.mass_g)
            for line, sized in zip(formula.lines, option.lines, strict=True)
        ),
        eggs=_eggs(formula, option),
        total_g=option.total_g,
        depth_cm=option.depth_cm,
        fill=option.fill,
        shares_g=option.shares_g,
        notices=option.notices,
    )


def _eggs(formula: Formula, option: Sized) -> SizeEggs:
    """Eggs to break: a yolk line and a white line share their eggs."""
    rows = tuple(
        SizedEggRow(
            formula.lines[int(e.key)].ingredient, e.part, e.size, e.count, e.mass_g, e.make_up_g
        )
        for e in option.eggs
    )
    counted = {part: sum(r.count for r in rows if r.part == part) for part in ("yolk", "white")}
    whole = sum(r.count for r in rows if r.part not in counted)
    sizes = {row.size for row in rows if row.size}
    return SizeEggs(
        count=whole + max(counted.values()),
        size=sizes.pop() if len(sizes) == 1 else None,
        make_up_g=sum(row.make_up_g for row in rows),
        lines=rows,
    )
