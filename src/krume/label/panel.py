"""The nutrition panel of a product: printed figures, and by name what keeps one closed."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal

from krume.evidence import Row, column, load, optional
from krume.label.energy import EU_PARTS, Energy, atwater_kcal, eu_energy, salt_g
from krume.label.eu_panel import eu_amount, eu_intake_pct, eu_nutrients
from krume.label.nutrients import NutrientSum, Span, open_goods
from krume.label.parts import Unknown
from krume.label.product import Product
from krume.label.servings import Servings, us_servings
from krume.label.us_panel import (
    PanelAmount,
    panel_unit,
    us_amount,
    us_daily_value_pct,
    us_nutrients,
)
from krume.properties import constants

REFERENCE_COLUMNS = (
    column("key", "key"),
    column("label"),
    optional("families"),
    column("amount_g", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)
_US_LABELS = {
    "calories": "Calories", "fat": "Total fat", "saturated": "Saturated fat", "trans": "Trans fat",
    "cholesterol": "Cholesterol", "sodium": "Sodium", "carbohydrate": "Total carbohydrate",
    "fibre": "Dietary fiber", "sugars": "Total sugars", "added-sugars": "Includes added sugars",
    "protein": "Protein", "vitamin-d": "Vitamin D", "calcium": "Calcium", "iron": "Iron",
    "potassium": "Potassium",
}  # fmt: skip
_NO_PERCENT = ("calories", "trans", "sugars", "protein")
_HUNDRED = 100.0


@dataclass(frozen=True, slots=True)
class PanelRow:
    """One row of the panel; `text` is None while an unknown could move a printed digit.

    `low` and `high` are its ends per basis; `percent` is of the daily value or the reference
    intake; `open_goods` are the goods whose blank in the tables widens it.
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


@dataclass(frozen=True, slots=True)
class Panel:
    """A nutrition panel on one basis: per 100 g, or per serving with its words."""

    market: str
    basis_g: float
    basis_text: str
    rows: tuple[PanelRow, ...]

    @property
    def is_open(self) -> bool:
        """Whether every row that must stand there has its printed figure."""
        return all(row.text is not None for row in self.rows if row.is_mandatory)


def eu_panel(sums: dict[str, NutrientSum], *, basis_g: float = _HUNDRED) -> Panel:
    """The EU declaration per 100 g, or per portion of another mass."""
    scale = basis_g / _HUNDRED
    rows = [
        replace(_eu_row(n.key, n.label, n.unit, sums, scale), is_mandatory=n.is_mandatory)
        for n in eu_nutrients()
    ]
    text = "per 100 g" if basis_g == _HUNDRED else f"per portion of {basis_g:.0f} g"
    return Panel("eu", basis_g, text, tuple(rows))


def _eu_row(
    key: str, label: str, unit: str, sums: dict[str, NutrientSum], scale: float
) -> PanelRow:
    span, names = _eu_value(key, sums)
    has_intake = key != "fibre"
    return _row(
        key, label, unit, span.times(scale), names, eu_amount,
        eu_intake_pct if has_intake else None,
    )  # fmt: skip


def _eu_value(key: str, sums: dict[str, NutrientSum]) -> tuple[Span, tuple[str, ...]]:
    if key == "salt":
        sodium = sums["sodium"]
        return Span(salt_g(sodium.span.low), salt_g(sodium.span.high)), sodium.open_goods
    if not key.startswith("energy"):
        return sums[key].span, sums[key].open_goods
    used = [sums[name] for name in EU_PARTS]
    ends = [_energy(sums, end) for end in ("low", "high")]
    kind = "energy_kj" if key == "energy-kj" else "energy_kcal"
    low, high = (float(getattr(end, kind)) for end in ends)
    return Span(low, high), open_goods(used)


def _energy(sums: dict[str, NutrientSum], end: str) -> Energy:
    return eu_energy({name: float(getattr(sums[name].span, end)) for name in EU_PARTS})


def _row(
    key: str,
    label: str,
    unit: str,
    span: Span,
    names: tuple[str, ...],
    printed: Callable[[str, Decimal], PanelAmount],
    percent: Callable[[str, Decimal], float] | None,
) -> PanelRow:
    low, high = _decimal(span.low), _decimal(span.high)
    texts = {printed(key, low).text, printed(key, high).text}
    shares = set() if percent is None else {percent(key, low), percent(key, high)}
    is_settled = len(texts) == 1 and len(shares) < 2
    return PanelRow(
        key=key,
        label=label,
        unit=unit,
        low=span.low,
        high=span.high,
        text=texts.pop() if is_settled else None,
        percent=shares.pop() if is_settled and shares else None,
        open_goods=names,
    )


def _decimal(amount: float) -> Decimal:
    return Decimal(repr(round(amount, 9)))


def us_panel(sums: dict[str, NutrientSum], servings: Servings) -> Panel:
    """The US panel per serving; calories by the general factors 4, 9, 4."""
    scale = servings.serving_g / _HUNDRED
    rows = [_us_row(key, sums, scale) for key in us_nutrients()]
    return Panel("us", servings.serving_g, servings.text, tuple(rows))


def _us_row(key: str, sums: dict[str, NutrientSum], scale: float) -> PanelRow:
    span, names = _us_value(key, sums)
    percent = None if key in _NO_PERCENT else us_daily_value_pct
    unit = panel_unit(key)
    return _row(key, _US_LABELS[key], unit, span.times(scale), names, us_amount, percent)


def _us_value(key: str, sums: dict[str, NutrientSum]) -> tuple[Span, tuple[str, ...]]:
    if key != "calories":
        return sums[key].span, sums[key].open_goods
    used = [sums[name] for name in ("protein", "fat", "carbohydrate")]
    low = atwater_kcal(*(each.span.low for each in used))
    high = atwater_kcal(*(each.span.high for each in used))
    return Span(low, high), open_goods(used)


def reference_amount(product: Product) -> Row | None:
    """Row of the reference amount of a product; None for a cream on its own."""
    rows = {row.text("key"): row for row in load("us_reference.csv", REFERENCE_COLUMNS)}
    kinds = [kind for kind in product.families.values() if kind is not None]
    if product.kind == "torte":
        kinds = ["tart"] if "tart" in kinds else ["torte"]
    found = next(
        (r for r in rows.values() if kinds and kinds[0] in r.text("families").split(";")), None
    )
    if found is None or found.text("key") == "tart":
        return found
    return rows["heavy"] if is_heavy(product) else found


def is_heavy(product: Product) -> bool:
    """Whether fruit, nuts and vegetables make a heavy cake of it by the finished mass.

    A share that is not known is not heavy here: then the serving is not known either.
    """
    if product.finished_g is None or product.finished_g <= 0:
        return False
    mass = sum(used.mass_g or 0.0 for used in product.used if used.role in ("fruit", "nut"))
    share = _HUNDRED * mass / product.finished_g
    return share >= constants("declared.csv")["heavy-cake-share"]


def servings_of(product: Product) -> Servings | None:
    """Serving of a product by the reference amounts; None where there is none for it."""
    row = reference_amount(product)
    if row is None or product.finished_g is None or product.finished_g <= 0:
        return None
    return us_servings(product.finished_g, reference_g=row.number_of("amount_g"))


def panel_unknowns(panel: Panel) -> tuple[Unknown, ...]:
    """What keeps rows of a panel closed, by the goods to ask about."""
    closed: dict[str, list[str]] = {}
    for row in panel.rows:
        if row.text is None and row.is_mandatory:
            for name in row.open_goods:
                closed.setdefault(name, []).append(row.label.removeprefix("of which ").lower())
    return tuple(
        Unknown(
            name, f"its part in {', '.join(dict.fromkeys(labels))}", "panel",
            f"A supplier's sheet of {name} opens it.",
        )
        for name, labels in closed.items()
    )  # fmt: skip
