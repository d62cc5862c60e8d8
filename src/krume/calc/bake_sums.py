"""Quick sums on the oven: its dial, browning, exact heating."""

from dataclasses import dataclass

from krume.bake import browning_delta_e, dial, heating_theta
from krume.base import OutOfRangeError
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.properties import constant, constants, within

_SHAPES = ("slab", "cylinder", "short-cylinder")
_MATERIAL = ("h", "k", "density", "heat_capacity")


def _dial(given: Given) -> Values:
    found = dial(given.number("want"), offset_k=given.number("offset"))
    return {"set_c": found.set_c, "set_f": found.set_f}


def _fan(given: Given) -> Values:
    want, is_still = given.number("want"), given.has("to") and given.text("to") == "still"
    rows = constants("ovens.csv")
    within("want", want, rows["want-least"], rows["want-most"], "C")
    ends = (rows["fan-less-low"], rows["fan-less-high"])
    moved = [want + end if is_still else want - end for end in ends]
    given.note("common-practice", "A rule of thumb: krume bake --fan says what the model makes.")
    low, high = sorted(moved)
    return {"low_c": low, "high_c": high, "low_f": low * 9 / 5 + 32, "high_f": high * 9 / 5 + 32}


def _browning(given: Given) -> Values:
    temp = given.number("temp")
    if temp < constant("browning-fitted-from"):
        given.note("extrapolated", "Below 140 C the bread data are extrapolated.")
    return {"delta_e": browning_delta_e(given.number("time"), temp_c=temp)}


@dataclass(frozen=True, slots=True)
class _Heating:
    """Biot and Fourier numbers by the half thickness and by the radius; None is not needed."""

    slab: tuple[float, float] | None
    cylinder: tuple[float, float] | None


def _heating(given: Given) -> Values:
    numbers = _by_numbers(given) if given.has("biot") or given.has("fourier") else _by_si(given)
    theta = 1.0
    for shape, pair in (("slab", numbers.slab), ("cylinder", numbers.cylinder)):
        if pair is not None:
            theta *= heating_theta(shape, biot=pair[0], fourier=pair[1])
    start, oven = given.maybe("start"), given.maybe("oven")
    known = start is not None and oven is not None
    temp = oven + (start - oven) * theta if start is not None and oven is not None else None
    if not known:
        given.note("no-temperatures", "Without start and oven there is no temperature, only theta.")
    return {"theta": theta, "temp_c": temp}


def _by_numbers(given: Given) -> _Heating:
    """From Biot and Fourier numbers; of a short cylinder they go by the radius."""
    pair = given.number("biot"), given.number("fourier")
    shape = given.text("shape")
    if shape == "slab":
        return _Heating(pair, None)
    if shape == "cylinder":
        return _Heating(None, pair)
    slimness = _above_zero(given, "height") / 2 / _above_zero(given, "radius")
    return _Heating((pair[0] * slimness, pair[1] / slimness**2), pair)


def _by_si(given: Given) -> _Heating:
    absent = [name for name in (*_MATERIAL, "time") if not given.has(name)]
    if absent:
        raise given.missing(*(["biot", "fourier"] if len(absent) > 4 else absent))
    h, k, density, heat_capacity = (_above_zero(given, name) for name in _MATERIAL)
    diffusivity = k / (density * heat_capacity)
    seconds = 60 * given.number("time")
    shape = given.text("shape")
    lengths = {
        "slab": _above_zero(given, "height") / 200 if shape != "cylinder" else None,
        "cylinder": _above_zero(given, "radius") / 100 if shape != "slab" else None,
    }
    pairs = {
        name: None if m is None else (h * m / k, diffusivity * seconds / m**2)
        for name, m in lengths.items()
    }
    return _Heating(pairs["slab"], pairs["cylinder"])


def _above_zero(given: Given, name: str) -> float:
    found = given.number(name)
    if found <= 0:
        raise OutOfRangeError(
            f"{name} is {found:g}; it must be more than 0.",
            field=name, got=f"{found:g}", want="more than 0",
        )  # fmt: skip
    return found


BAKE_SUMS = (
    Sum(
        "dial",
        "What to set so that the oven is what you want.",
        (
            Input("want", "wanted oven temperature", "c"),
            Input("offset", "true temperature minus dial setting", "c", difference=True),
        ),
        (Output("set_c", "dial in degrees Celsius"), Output("set_f", "dial in Fahrenheit")),
        _dial,
        ("mathematics",),
        (("want", "157"), ("offset", "-12")),
        "An oven that reads low is truly below its dial: its offset is negative.",
    ),
    Sum(
        "fan",
        "What a still oven's temperature is with the fan on, or the other way.",
        (
            Input("want", "temperature as it is written", "c"),
            Input("to", "what is wanted", kind="choice", choices=("fan", "still"), required=False),
        ),
        (
            Output("low_c", "least, in degrees Celsius"),
            Output("high_c", "most, in degrees Celsius"),
            Output("low_f", "least, in Fahrenheit"),
            Output("high_f", "most, in Fahrenheit"),
        ),
        _fan,
        ("common-practice",),
        (("want", "170"),),
        "Common practice, no source: a fan is set 15 to 20 degrees lower; ovens differ.",
    ),
    Sum(
        "browning",
        "Colour of a crust after a time at one surface temperature.",
        (
            Input("time", "time at that temperature", "min"),
            Input("temp", "temperature of the surface", "c"),
        ),
        (Output("delta_e", "colour difference"),),
        _browning,
        ("zanoni-1995-browning",),
        (("time", "15"), ("temp", "150")),
        "Fitted on bread crumb; cake sugar browns differently.",
    ),
    Sum(
        "heating-series",
        "Exact heating of a plain shape at its centre.",
        (
            Input("shape", "shape", kind="choice", choices=_SHAPES),
            Input("biot", "h L / k, with half thickness or radius as L", required=False),
            Input("fourier", "alpha t / L2", required=False),
            Input("h", "heat transfer at the surface", "w_m2k", required=False),
            Input("k", "conductivity", "w_mk", required=False),
            Input("density", "density", "kg_m3", required=False),
            Input("heat_capacity", "specific heat capacity", "j_kgk", required=False),
            Input("radius", "radius", "cm", required=False),
            Input("height", "full height or thickness, heated on both faces", "cm", required=False),
            Input("start", "temperature at the start", "c", required=False),
            Input("oven", "temperature of the oven", "c", required=False),
            Input("time", "time", "min", required=False),
        ),
        (
            Output("theta", "(T - oven) / (start - oven) at the centre"),
            Output("temp_c", "at the centre; null without start and oven"),
        ),
        _heating,
        ("carslaw-jaeger-1959",),
        (("shape", "slab"), ("biot", "1"), ("fourier", "1")),
        "Constant properties, no evaporation: what the oven model is held against, not a cake.",
    ),
)
