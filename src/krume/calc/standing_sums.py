"""Quick sums on what becomes of a torte: what a layer carries, how much water a layer holds."""

import math

from krume.base import OutOfRangeError
from krume.build import disc_carries_pa, edge_needs_pa
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.properties import constants, within

_MOST_G, _MOST_CM, _MOST_MM = 1e5, 200.0, 1e3
_G_PER_KG, _M2_PER_CM2 = 1e3, 1e-4
_HUNDRED = 100.0


def _carries(given: Given) -> Values:
    load = within("load", given.number("load"), 0.0, _MOST_G, "g")
    across = _above_zero(given, "diameter", _MOST_CM, "cm")
    high = _above_zero(given, "height", _MOST_MM, "mm")
    figures = constants("standing.csv")
    area_m2 = math.pi / 4 * across**2 * _M2_PER_CM2
    pressure = load / _G_PER_KG * figures["gravity"] / area_m2
    each = disc_carries_pa(1.0, diameter_mm=10 * across, height_mm=high)
    given.note("sticking", "A crumb is rough: the layer is taken to tear before it slides.")
    return {"pressure_pa": pressure, "needs_pa": pressure / each, "times_yield": each}


def _edge(given: Given) -> Values:
    needs = edge_needs_pa(
        height_mm=within("height", given.number("height"), 0.0, _MOST_MM, "mm"),
        density_g_ml=within("density", given.number("density"), 0.0, 2.0, "g/ml"),
    )
    given.note("sure", "The sure bound: many creams stand twice as high before they lean.")
    return {"needs_pa": needs}


def _water(given: Given) -> Values:
    from krume.keep import moisture_figure, starch_water_g, sugar_water_g  # numpy

    activity = within("aw", given.number("aw"), 0.0, moisture_figure("sugar-most"))
    least = constants()["norrish-least"]
    if activity < least:
        given.note("drawn-out", f"Below {least:g} sugar is taken to stay dissolved: drawn out.")
    sugar = None if activity <= 0 else _HUNDRED * sugar_water_g(activity)
    return {"starch_g": _HUNDRED * starch_water_g(activity), "sugar_g": sugar}


def _above_zero(given: Given, name: str, most: float, unit: str) -> float:
    value = within(name, given.number(name), 0.0, most, unit)
    if value > 0:
        return value
    raise OutOfRangeError(
        f"{name} is 0 {unit}; type a layer that is there, such as 10.",
        field=name, got="0", want=f"more than 0 {unit}",
    )  # fmt: skip


STANDING_SUMS = (
    Sum(
        "cream-carries",
        "What a round layer of cream must hold under what lies on it.",
        (
            Input("load", "what lies on it", "g"),
            Input("diameter", "of the layer", "cm"),
            Input("height", "of the layer", "mm"),
        ),
        (
            Output("pressure_pa", "mean pressure on the layer"),
            Output("needs_pa", "yield stress that carries it, before any margin"),
            Output("times_yield", "how many times its yield stress such a layer carries"),
        ),
        _carries,
        ("martinie-2013", "mathematics"),
        (("load", "674"), ("diameter", "19.5"), ("height", "10")),
    ),
    Sum(
        "cream-edge",
        "What a cream must hold to stand with an upright free side.",
        (
            Input("height", "of the free side", "mm"),
            Input("density", "of the cream", "g_ml"),
        ),
        (Output("needs_pa", "yield stress with which it surely stands"),),
        _edge,
        ("mathematics",),
        (("height", "60"), ("density", "0.72")),
    ),
    Sum(
        "water-held",
        "Water that starch and dissolved sugar hold at a water activity.",
        (Input("aw", "water activity, 0 to 0.99"),),
        (
            Output("starch_g", "g of water per 100 g of dry starch, protein or fibre"),
            Output("sugar_g", "g of water per 100 g of sugar; null at 0"),
        ),
        _water,
        ("rice-starch-2014", "norrish-1966"),
        (("aw", "0.9"),),
    ),
)
