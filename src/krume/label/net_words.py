"""The net quantity in the words of a market, and how high its figures must be."""

from decimal import ROUND_FLOOR, Decimal

from krume.base import POUND_G, OutOfRangeError
from krume.label.net_quantity import figure_height_mm, us_figure_height_mm

_OZ_PER_LB = 16
_G_PER_OZ = Decimal(repr(POUND_G)) / _OZ_PER_LB
_POUNDS_ALONE_OZ = 4 * _OZ_PER_LB
_TENTH = Decimal("0.1")


def net_phrases(net_g: float, market: str) -> tuple[str, ...]:
    """The net quantity as a label says it, in phrases that must not be broken.

    In the US ounces, from one pound to four with pounds behind them, and grams; never more than
    is in it: ounces are rounded down.

    >>> net_phrases(1194, "eu"), net_phrases(150, "us")
    (('Net weight', '1194 g'), ('NET WT', '5.2 OZ', '(150 g)'))
    >>> net_phrases(1194, "us")
    ('NET WT', '42.1 OZ', '(2 LB 10.1 OZ)', '(1194 g)')
    """
    grams = Decimal(repr(net_g)) if 0 < net_g < 1e6 else Decimal(0)
    if grams < 1:
        message = f"{net_g:g} g is no net weight. Type the grams of the cake without its box."
        raise OutOfRangeError(message, field="net", got=f"{net_g:g}", want="1 g or more")
    metric = f"{grams.to_integral_value(ROUND_FLOOR)} g"
    if market != "us":
        return ("Net weight", metric)
    ounces = (grams / _G_PER_OZ).quantize(_TENTH, ROUND_FLOOR)
    pounds = _pounds(ounces)
    if ounces < _OZ_PER_LB:
        return ("NET WT", f"{ounces} OZ", f"({metric})")
    if ounces < _POUNDS_ALONE_OZ:
        return ("NET WT", f"{ounces} OZ", f"({pounds})", f"({metric})")
    return ("NET WT", pounds, f"({metric})")


def _pounds(ounces: Decimal) -> str:
    whole, rest = divmod(ounces, _OZ_PER_LB)
    return f"{whole} LB {rest} OZ" if rest else f"{whole} LB"


def net_height_mm(net_g: float, market: str, area_cm2: float | None = None) -> float:
    """Least height of the figures: in the US by the panel it stands on, else by the quantity.

    Where the area of the panel is not said, the height is that of a large one.

    >>> net_height_mm(1194, "eu"), net_height_mm(150, "us"), net_height_mm(150, "us", 100)
    (6.0, 6.35, 3.175)
    """
    if market == "us":
        return us_figure_height_mm(area_cm2)
    return figure_height_mm(net_g)
