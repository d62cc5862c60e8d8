"""The nutrition panel of a product: printed figures, and by name what keeps one closed."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal

from krume.base import as_text
from krume.label.energy import EU_PARTS, US_PARTS, eu_energy, salt_g, us_energy_kcal
from krume.label.eu_panel import eu_amount, eu_intake_pct, eu_nutrients
from krume.label.nutrients import NutrientSum, Span, open_goods
from krume.label.parts import Unknown
from krume.label.printed import PanelAmount
from krume.label.servings import Servings
from krume.label.us_panel import us_amount, us_daily_value_pct, us_lines

_HUNDRED = 100.0
Sums = dict[str, NutrientSum]
"""Nutrients of a product per 100 g, by their keys."""


@dataclass(frozen=True, slots=True)
class PanelRow:
    """One row of the panel; `text` is None while an unknown could move a printed digit.

    `low` and `high` are its ends per basis; `percent` is of the daily value or the reference
    intake; `level` is how far it is indented; `open_goods` are those whose blank widens it.
    """

    key: str
    label: str
    unit: str
    low: float
    high: float
    text: str | None
    percent: float | None
    open_goods: tuple[str, ...] = ()
    is_mandatory: bool = True
    level: int = 0


@dataclass(frozen=True, slots=True)
class Panel:
    """One column of figures on one basis, with its words.

    `kind` is `serving`, `container`, `hundred` or `portion`; `head` stands above the column.
    `is_required` is false for a column that the person adds freely.
    """

    market: str
    basis_g: float
    basis_text: str
    rows: tuple[PanelRow, ...]
    kind: str = "hundred"
    head: str = "Per 100 g"
    is_required: bool = True
    servings: Servings | None = None

    @property
    def is_open(self) -> bool:
        """Whether every row that must stand there has its printed figure."""
        return all(row.text is not None for row in self.rows if row.is_mandatory)


@dataclass(frozen=True, slots=True)
class _Line:
    """A row before it has figures: its words, and how its market prints it."""

    key: str
    label: str
    unit: str
    level: int
    is_mandatory: bool
    printed: Callable[[str, Decimal], PanelAmount]
    percent: Callable[[str, Decimal], float] | None
    percent_is_free: bool


def _eu_lines() -> tuple[_Line, ...]:
    return tuple(
        _Line(
            n.key, n.label, n.unit, n.level, n.is_mandatory, eu_amount,
            eu_intake_pct if n.has_intake else None, percent_is_free=True,
        )
        for n in eu_nutrients()
    )  # fmt: skip


def _us_lines() -> tuple[_Line, ...]:
    return tuple(
        _Line(
            n.key, n.label, n.unit, n.level, is_mandatory=True, printed=us_amount,
            percent=us_daily_value_pct if n.has_percent else None, percent_is_free=False,
        )
        for n in us_lines()
    )  # fmt: skip


def eu_panel(sums: Sums, *, basis_g: float = _HUNDRED) -> Panel:
    """The EU declaration per 100 g, or per portion of another mass."""
    rows = tuple(_row(line, *_eu_value(line.key, sums), basis_g) for line in _eu_lines())
    if basis_g == _HUNDRED:
        return Panel("eu", basis_g, "per 100 g", rows)
    mass = as_text(basis_g, 1)
    text = f"per portion of {mass} g"
    return Panel("eu", basis_g, text, rows, "portion", f"Per portion ({mass} g)")


def eu_columns(sums: Sums, *, portion_g: float | None = None) -> tuple[Panel, ...]:
    """Columns of an EU declaration: per 100 g, and beside it per portion where one is told."""
    whole = eu_panel(sums)
    if portion_g is None:
        return (whole,)
    return whole, replace(eu_panel(sums, basis_g=portion_g), is_required=False)


def us_panel(sums: Sums, servings: Servings) -> Panel:
    """The US panel per serving; calories by 4, 9, 4, and 7 for alcohol."""
    head = "Per serving" if servings.servings_per_container > 1 else "Per container"
    rows = _us_rows(sums, servings.serving_g)
    return Panel("us", servings.serving_g, servings.text, rows, "serving", head, servings=servings)


def us_columns(sums: Sums, servings: Servings, *, per_100_g: bool = False) -> tuple[Panel, ...]:
    """Columns of a US panel: per serving, per container where the rule wants it, per 100 g.

    A cake of two to three reference amounts, both included, has a column for the whole of it; the
    column per 100 g is free.
    """
    columns = [us_panel(sums, servings)]
    if servings.needs_container_column:
        whole_g = servings.cake_g
        rows = _us_rows(sums, whole_g)
        text = f"per container ({whole_g:.0f} g)"
        columns.append(Panel("us", whole_g, text, rows, "container", "Per container"))
    if per_100_g:
        rows = _us_rows(sums, _HUNDRED)
        columns.append(Panel("us", _HUNDRED, "per 100 g", rows, is_required=False))
    return tuple(columns)


def _us_rows(sums: Sums, basis_g: float) -> tuple[PanelRow, ...]:
    return tuple(_row(line, *_us_value(line.key, sums), basis_g) for line in _us_lines())


def _eu_value(key: str, sums: Sums) -> tuple[Span, tuple[str, ...]]:
    if key == "salt":
        sodium = sums["sodium"]
        return Span(salt_g(sodium.span.low), salt_g(sodium.span.high)), sodium.open_goods
    if key == "energy-kj":
        return _energy(sums, EU_PARTS, lambda grams: eu_energy(grams).energy_kj)
    if key == "energy-kcal":
        return _energy(sums, EU_PARTS, lambda grams: eu_energy(grams).energy_kcal)
    return sums[key].span, sums[key].open_goods


def _us_value(key: str, sums: Sums) -> tuple[Span, tuple[str, ...]]:
    if key == "calories":
        return _energy(sums, US_PARTS, us_energy_kcal)
    return sums[key].span, sums[key].open_goods


def _energy(
    sums: Sums, parts: tuple[str, ...], energy: Callable[[dict[str, float]], float]
) -> tuple[Span, tuple[str, ...]]:
    low = energy({name: sums[name].span.low for name in parts})
    high = energy({name: sums[name].span.high for name in parts})
    return Span(low, high), open_goods(sums[name] for name in parts)


def _row(line: _Line, per_100_g: Span, names: tuple[str, ...], basis_g: float) -> PanelRow:
    """A row with its figures where both ends print the same."""
    span = per_100_g.times(basis_g / _HUNDRED)
    text, percent = _settled(line, span)
    return PanelRow(
        key=line.key,
        label=line.label,
        unit=line.unit,
        low=span.low,
        high=span.high,
        text=text,
        percent=percent,
        open_goods=names,
        is_mandatory=line.is_mandatory,
        level=line.level,
    )


def _settled(line: _Line, span: Span) -> tuple[str | None, float | None]:
    """Text and percentage where both ends print them; a free percentage is left out alone."""
    (low, low_pct), (high, high_pct) = _end(line, span.low), _end(line, span.high)
    is_settled = low == high and (low_pct == high_pct or line.percent_is_free)
    if not is_settled:
        return None, None
    return low, low_pct if low_pct == high_pct else None


def _end(line: _Line, amount: float) -> tuple[str, float | None]:
    """Text and percentage of one end; what is declared as nothing is 0 % of a day."""
    exact = Decimal(repr(round(amount, 9)))
    shown = line.printed(line.key, exact)
    if line.percent is None:
        return shown.text, None
    return shown.text, 0.0 if shown.value == 0 else line.percent(line.key, exact)


def panel_unknowns(*panels: Panel) -> tuple[Unknown, ...]:
    """What keeps rows of required columns closed, by the goods to ask about."""
    closed: dict[str, list[str]] = {}
    for row in (row for panel in panels if panel.is_required for row in panel.rows):
        if row.text is None and row.is_mandatory:
            for name in row.open_goods:
                closed.setdefault(name, []).append(_in_words(row.label))
    return tuple(
        Unknown(
            name, f"its part in {', '.join(dict.fromkeys(labels))}", "panel",
            f"A supplier's sheet of {name} opens it.",
        )
        for name, labels in closed.items()
    )  # fmt: skip


def _in_words(label: str) -> str:
    return label.removeprefix("of which ").removeprefix("Includes ").lower()
