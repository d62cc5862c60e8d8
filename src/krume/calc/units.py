"""Units that a value of a sum may carry, and the value in the unit the sum wants."""

from dataclasses import dataclass

from krume.base import InputError, unit_named

_MORE: dict[str, tuple[str, str, float]] = {
    "k": ("kelvin", "temperature", 1.0),
    "kelvin": ("kelvin", "temperature", 1.0),
    "ug": ("ug", "mass", 1e-6),
    "mcg": ("ug", "mass", 1e-6),
    "µg": ("ug", "mass", 1e-6),
    "μg": ("ug", "mass", 1e-6),
    "pa": ("pa", "pressure", 1.0),
    "hpa": ("hpa", "pressure", 100.0),
    "mbar": ("hpa", "pressure", 100.0),
    "kpa": ("kpa", "pressure", 1000.0),
    "bar": ("bar", "pressure", 1e5),
    "atm": ("atm", "pressure", 101325.0),
    "d": ("day", "time", 1440.0),
    "day": ("day", "time", 1440.0),
    "days": ("day", "time", 1440.0),
    "kcal": ("kcal", "energy", 1.0),
    "cal": ("kcal", "energy", 1.0),
    "calories": ("kcal", "energy", 1.0),
    "kj": ("kj", "energy", 1 / 4.184),
    "%": ("pct", "share", 1.0),
    "pct": ("pct", "share", 1.0),
    "percent": ("pct", "share", 1.0),
    "ppm": ("ppm", "concentration", 1.0),
    "mg/kg": ("ppm", "concentration", 1.0),
    "bloom": ("bloom", "strength", 1.0),
}
_ZERO_C_K = 273.15
_F_PER_C = 1.8
_ZERO_C_F = 32.0


@dataclass(frozen=True, slots=True)
class Measure:
    """A unit by name, what it measures, and its size in the base unit of that kind."""

    name: str
    kind: str
    size: float


def measure_named(word: str) -> Measure | None:
    """Unit a word stands for, with the units only sums need.

    >>> measure_named("mcg").kind, measure_named("kPa").size
    ('mass', 1000.0)
    """
    key = word.strip().casefold().replace("²", "2")
    if key in _MORE:
        return Measure(*_MORE[key])
    found = unit_named(key)
    if found is None:
        return None
    return Measure(found.name, found.kind, 1.0 if found.size is None else found.size)


def in_unit(value: float, own: str, wanted: str, *, field: str, difference: bool = False) -> float:
    """A value that carries its own unit, in the wanted one; another kind of unit is refused.

    >>> round(in_unit(325.0, "F", "c", field="temp"), 2)
    162.78
    >>> round(in_unit(25.0, "F", "c", field="offset", difference=True), 2)
    13.89
    """
    if own.casefold() == wanted:
        return value
    source, target = measure_named(own), measure_named(wanted)
    if source is None or target is None or source.kind != target.kind:
        raise wrong_unit(field, value, own, wanted)
    if source.kind == "temperature":
        return _temperature(value, source.name, target.name, difference=difference)
    if source.kind == "count" and source.name != target.name:
        raise wrong_unit(field, value, own, wanted)
    return value * source.size / target.size


def wrong_unit(field: str, value: float, own: str, wanted: str) -> InputError:
    """The refusal of a unit that does not measure what the input is."""
    source, target = measure_named(own), measure_named(wanted)
    what = f"'{own}' is no unit known here" if source is None else f"{own} is a {source.kind}"
    aim = f"{field} is a {target.kind}" if target is not None else f"{field} has no unit"
    shown = f" in {wanted}" if wanted else ""
    return InputError(
        f"{what}; {aim}{shown}. Type the number alone, or with a unit of that kind.",
        field=field,
        got=f"{value:g} {own}",
        want=wanted or "a plain number",
    )


def _temperature(value: float, source: str, target: str, *, difference: bool) -> float:
    kelvin = {"c": 1.0, "kelvin": 1.0, "f": 1 / _F_PER_C}
    if difference:
        return value * kelvin[source] / kelvin[target]
    celsius = {"c": value, "kelvin": value - _ZERO_C_K, "f": (value - _ZERO_C_F) / _F_PER_C}[source]
    return {
        "c": celsius,
        "kelvin": celsius + _ZERO_C_K,
        "f": celsius * _F_PER_C + _ZERO_C_F,
    }[target]
