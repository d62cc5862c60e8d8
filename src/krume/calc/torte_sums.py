"""Quick sums of putting together: layers from a cake, domes, spirals, leaves, spirit."""

import math
from typing import NoReturn

from krume.base import OutOfRangeError
from krume.build import cap_ml, cap_skin_cm2, layers_of
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.properties import in_leaves, most_spirit_g, setting
from krume.size import roll, spiral_length_cm


def _refuse(given: Given, name: str, why: str, want: str) -> NoReturn:
    """Refuse an input by the name that was typed."""
    got = f"{given.or_zero(name):g}"
    raise OutOfRangeError(f"{name} is {got}; {why}", field=name, got=got, want=want)


def _check_lengths(given: Given, *names: str, above: tuple[str, ...] = ()) -> None:
    """Refuse a length below 0, and one of `above` that is 0."""
    for name in (*above, *names):
        if name in above and given.or_zero(name) <= 0:
            _refuse(given, name, "type more than 0 cm.", "more than 0")
        if given.or_zero(name) < 0:
            _refuse(given, name, "type 0 cm or more.", "0 or more")


def _layers(given: Given) -> Values:
    high, thick = given.number("height"), given.number("thickness")
    _check_lengths(given, "height", "off", "cut", above=("thickness",))
    off, kerf = given.or_zero("off"), given.or_zero("cut")
    bakes = given.count("bakes") or 1
    each = layers_of(10 * high, thick_mm=10 * thick, off_mm=10 * off, kerf_mm=10 * kerf)
    used = each * thick + max(0, each - 1) * kerf
    left = max(0.0, high - off - used)
    return {"layers": each * bakes, "layers_each": each, "left_cm": left}


def _dome(given: Given) -> Values:
    across, high = given.number("diameter"), given.number("height")
    _check_lengths(given, "height", above=("diameter",))
    if high > across / 2:
        why = f"a dome over {across:g} cm is at most {across / 2:g} cm high."
        _refuse(given, "height", why, f"0 to {across / 2:g}")
    volume = cap_ml(across, high_cm=high)
    return {"volume_ml": volume, "surface_cm2": cap_skin_cm2(across, high_cm=high)}


def _spiral(given: Given) -> Values:
    length, thick = given.number("length"), given.number("thickness")
    cream, core = given.or_zero("cream"), given.or_zero("core")
    _check_lengths(given, "cream", "core", above=("length", "thickness"))
    found = roll(length, thickness_cm=thick, cream_cm=cream, core_cm=core)
    exact = spiral_length_cm(core, outer_cm=found.diameter_cm / 2, pitch_cm=thick + cream)
    return {"turns": found.turns, "diameter_cm": found.diameter_cm, "spiral_cm": exact}


def _leaves(given: Given) -> Values:
    found = in_leaves(given.number("mass"), from_bloom=given.number("from"))
    wanted = next(swap for swap in found if swap.leaf.key == given.text("leaf"))
    given.note("two-rules", "Both rules are in use and disagree: say which one you took.")
    return {
        "by_root_leaves": wanted.by_root_count,
        "by_root_g": wanted.by_root_g,
        "by_ratio_leaves": wanted.by_ratio_count,
        "by_ratio_g": wanted.by_ratio_g,
        "water_g": (setting("gelatine").water_ratio or 0.0) * given.number("mass"),
    }


def _spirit(given: Given) -> Values:
    limit = setting("gelatine").alcohol_pct or 0.0
    water, strong = given.number("water"), given.number("strong")
    if water < 0:
        _refuse(given, "water", "type 0 g or more.", "0 or more")
    if not 0 <= strong <= 100:
        _refuse(given, "strong", "type 0 to 100 %.", "0 to 100")
    most = most_spirit_g(
        limit_pct=limit,
        water_g=water,
        spirit_alcohol_pct=strong,
        spirit_water_pct=100 - strong,
    )
    given.note(
        "from-memory", "From memory: gelatine falls out at 30 to 50 %. Try a spoonful first."
    )
    if not math.isfinite(most):
        given.note(
            "any-amount",
            f"A spirit of {strong:g} % is not above {limit:g} %: no amount of it is too much, so "
            "there is no most.",
        )
    return {"most_g": most if math.isfinite(most) else None, "limit_pct": limit}


TORTE_SUMS = (
    Sum(
        "layers",
        "How many layers of one thickness a risen cake yields.",
        (
            Input("height", "height of the cake, cold", "cm"),
            Input("thickness", "one layer", "cm"),
            Input("off", "cut off for hump and crust", "cm", required=False),
            Input("cut", "lost to crumbs in each cut", "cm", required=False),
            Input("bakes", "cakes baked", kind="count", required=False),
        ),
        (
            Output("layers", "layers from all cakes"),
            Output("layers_each", "layers from each cake"),
            Output("left_cm", "left of each cake"),
        ),
        _layers,
        ("mathematics",),
        (("height", "5"), ("thickness", "1.4")),
    ),
    Sum(
        "dome",
        "What a round dome holds, and its surface.",
        (
            Input("diameter", "diameter of its base", "cm"),
            Input("height", "height of the dome", "cm"),
        ),
        (Output("volume_ml", "volume"), Output("surface_cm2", "surface without the base")),
        _dome,
        ("mathematics",),
        (("diameter", "20"), ("height", "4")),
        "A dome is at most half a ball.",
    ),
    Sum(
        "spiral",
        "A roll by its area, and the exact length of its spiral beside it.",
        (
            Input("length", "side that is rolled up", "cm"),
            Input("thickness", "thickness of the sheet", "cm"),
            Input("cream", "thickness of the cream", "cm", required=False),
            Input("core", "radius of the hollow in the middle", "cm", required=False),
        ),
        (
            Output("turns", "turns of the sheet"),
            Output("diameter_cm", "outside diameter"),
            Output("spiral_cm", "exact length of a spiral between the same radii"),
        ),
        _spiral,
        ("mathematics",),
        (("length", "38"), ("thickness", "1.0"), ("cream", "0.4"), ("core", "0.8")),
    ),
    Sum(
        "leaves",
        "Powdered gelatine in leaves of a grade, by the two rules in use.",
        (
            Input("mass", "powder", "g"),
            Input("from", "its bloom number", "bloom"),
            Input(
                "leaf",
                "grade of the leaves",
                kind="choice",
                choices=("bronze", "silver", "gold", "platinum"),
            ),
        ),
        (
            Output("by_root_leaves", "leaves by the square-root rule"),
            Output("by_root_g", "grams by the square-root rule"),
            Output("by_ratio_leaves", "leaves by the ratio rule"),
            Output("by_ratio_g", "grams by the ratio rule"),
            Output("water_g", "cold water the powder blooms in"),
        ),
        _leaves,
        ("common-practice",),
        (("mass", "8"), ("from", "200"), ("leaf", "silver")),
    ),
    Sum(
        "spirit",
        "The most of a spirit that gelatine still sets.",
        (
            Input("water", "water in all the rest", "g"),
            Input("strong", "alcohol of the spirit by mass", "pct"),
        ),
        (
            Output("most_g", "most of the spirit; none where any amount sets"),
            Output("limit_pct", "alcohol of what is liquid that still sets"),
        ),
        _spirit,
        ("common-practice",),
        (("water", "300"), ("strong", "33.4")),
        "A spirit of 40 % by volume has 33.4 % by mass.",
    ),
)
