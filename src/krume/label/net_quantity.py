"""The declared quantity of a package: tolerable error, height of its figures, servings in it."""

from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal

from krume.base import OutOfRangeError
from krume.evidence import Row, column, load, optional
from krume.label.market_rules import market_rule
from krume.properties import constants

PREPACK_COLUMNS = (
    column("key", "key"),
    column("rule", "one of", "error", "height", "us-height"),
    column("above", "number"),
    column("up_to", "number"),
    column("value", "number"),
    column("unit", "one of", "%", "g", "mm"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


def tolerable_error_g(nominal_g: float) -> float:
    """How far one package may lie below its declared quantity; a share is rounded up to 0.1 g.

    >>> [tolerable_error_g(g) for g in (35, 80, 150, 1500)]
    [3.2, 4.5, 6.8, 22.5]
    """
    row = _row("error", nominal_g)
    amount = Decimal(repr(row.number_of("value")))
    if row.text("unit") == "g":
        return float(amount)
    share = Decimal(repr(nominal_g)) * amount / 100
    return float(share.quantize(Decimal("0.1"), ROUND_CEILING))


def figure_height_mm(nominal_g: float) -> float:
    """Least height of the figures that declare a quantity.

    >>> [figure_height_mm(g) for g in (50, 200, 1000, 1001)]
    [2.0, 3.0, 4.0, 6.0]
    """
    return _row("height", nominal_g).number_of("value")


def us_figure_height_mm(area_cm2: float | None) -> float:
    """Least height of the letters of a US net quantity by the area of the panel it stands on.

    An area that is not said counts as a large one.

    >>> [us_figure_height_mm(area) for area in (30, 160, 600, None, 3000)]
    [1.5875, 3.175, 4.7625, 6.35, 12.7]
    """
    area = constants("label_print.csv")["us-panel-where-not-said"] if area_cm2 is None else area_cm2
    return _row("us-height", area, "cm2").number_of("value")


def _row(rule: str, amount: float, unit: str = "g") -> Row:
    rows = [r for r in load("prepack.csv", PREPACK_COLUMNS) if r.text("rule") == rule]
    for row in rows:
        if row.number_of("above") < amount <= row.number_of("up_to"):
            return row
    low, high = rows[0].number_of("above"), rows[-1].number_of("up_to")
    raise OutOfRangeError(
        f"{amount:g} {unit} is outside the table; it holds for more than {low:g} to {high:g} "
        f"{unit}.",
        field="nominal" if unit == "g" else "area", got=f"{amount:g}",
        want=f"above {low:g} to {high:g} {unit}",
    )  # fmt: skip


def servings_per_container(count: Decimal) -> Decimal:
    """Servings in a container as the US panel prints them.

    From 2 to 5 to the nearest half, above to the nearest whole; halves go up.

    >>> [str(servings_per_container(Decimal(n))) for n in ("2.2", "2.25", "5.4", "5.5")]
    ['2', '2.5', '5', '6']
    """
    if not (count.is_finite() and count > 0):
        message = f"{count} servings are none. Type a number above 0."
        raise OutOfRangeError(message, field="servings", got=str(count), want="more than 0")
    step = Decimal("0.5") if 2 <= count <= 5 else Decimal(1)
    return ((count / step).quantize(Decimal(1), ROUND_HALF_UP) * step).normalize() + 0


def may_stand_behind_clause(share_pct: float) -> bool:
    """Whether an ingredient may stand behind “contains 2 % or less of” by its share at mixing.

    >>> may_stand_behind_clause(2.0), may_stand_behind_clause(2.01)
    (True, False)
    """
    return share_pct <= constants("declared.csv")["behind-clause-most"]


def sulphites_are_declared(amount_ppm: Decimal, *, market: str) -> bool:
    """Whether sulphites are declared: in the EU and the UK above 10 mg/kg, elsewhere from 10.

    >>> sulphites_are_declared(Decimal(10), market="us")
    True
    >>> sulphites_are_declared(Decimal(10), market="eu")
    False
    """
    limits = constants("declared.csv")
    if market_rule(market).sulphites_from:
        return amount_ppm >= Decimal(repr(limits["us-sulphites-from"]))
    return amount_ppm > Decimal(repr(limits["eu-sulphites-above"]))
