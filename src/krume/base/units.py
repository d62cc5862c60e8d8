"""Units bakers write, by definition and not by table: exact factors to gram, millilitre, cm, °C."""

from dataclasses import dataclass

INCH_CM = 2.54
POUND_G = 453.59237
US_GALLON_ML = 231 * INCH_CM**3


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: canonical name, what it measures, and its size in the base unit of that kind.

    `kind` is mass (g), volume (ml), length (cm), temperature, time (min) or count;
    a count's size is None, because only the pantry knows what one stick or one drop weighs.
    """

    name: str
    kind: str
    size: float | None


def _us(gallons: int) -> float:
    return US_GALLON_ML / gallons


UNITS: dict[str, Unit] = {
    u.name: u
    for u in (
        Unit("g", "mass", 1.0),
        Unit("kg", "mass", 1000.0),
        Unit("mg", "mass", 0.001),
        Unit("oz", "mass", POUND_G / 16),
        Unit("lb", "mass", POUND_G),
        Unit("ml", "volume", 1.0),
        Unit("cl", "volume", 10.0),
        Unit("dl", "volume", 100.0),
        Unit("l", "volume", 1000.0),
        Unit("tsp", "volume", _us(768)),
        Unit("tbsp", "volume", _us(256)),
        Unit("floz", "volume", _us(128)),
        Unit("gill", "volume", _us(32)),
        Unit("cup", "volume", _us(16)),
        Unit("pint", "volume", _us(8)),
        Unit("quart", "volume", _us(4)),
        Unit("gallon", "volume", _us(1)),
        Unit("cm", "length", 1.0),
        Unit("mm", "length", 0.1),
        Unit("in", "length", INCH_CM),
        Unit("m", "length", 100.0),
        Unit("ft", "length", 12 * INCH_CM),
        Unit("min", "time", 1.0),
        Unit("s", "time", 1 / 60),
        Unit("h", "time", 60.0),
        Unit("c", "temperature", None),
        Unit("f", "temperature", None),
        Unit("each", "count", None),
        Unit("pinch", "count", None),
        Unit("dash", "count", None),
        Unit("drop", "count", None),
        Unit("square", "count", None),
        Unit("stick", "count", None),
        Unit("sheet", "count", None),
        Unit("packet", "count", None),
        Unit("handful", "count", None),
        Unit("slice", "count", None),
        Unit("piece", "count", None),
        Unit("sprig", "count", None),
        Unit("clove", "count", None),
        Unit("can", "count", None),
        Unit("pod", "count", None),
        Unit("knob", "count", None),
        Unit("glass", "count", None),
        Unit("saltspoon", "count", None),
        Unit("speck", "count", None),
    )
}

_ALIASES: dict[str, str] = {
    "gram": "g", "grams": "g", "gr": "g", "gm": "g", "gms": "g", "gramm": "g", "grammes": "g",
    "gramme": "g", "kilo": "kg", "kilos": "kg", "kilogram": "kg", "kilograms": "kg",
    "kilogramm": "kg", "milligram": "mg", "milligrams": "mg", "ounce": "oz", "ounces": "oz",
    "ozs": "oz", "pound": "lb", "pounds": "lb", "lbs": "lb",
    "millilitre": "ml", "millilitres": "ml", "milliliter": "ml", "milliliters": "ml",
    "litre": "l", "litres": "l", "liter": "l", "liters": "l", "cc": "ml",
    "teaspoon": "tsp", "teaspoons": "tsp", "tsps": "tsp", "teaspoonful": "tsp",
    "teaspoonfuls": "tsp", "teaspoonsful": "tsp", "tl": "tsp", "teelöffel": "tsp",
    "tablespoon": "tbsp", "tablespoons": "tbsp", "tbsps": "tbsp", "tbs": "tbsp", "tblsp": "tbsp",
    "tablespoonful": "tbsp", "tablespoonfuls": "tbsp", "tablespoonsful": "tbsp",
    "el": "tbsp", "esslöffel": "tbsp",
    "fluid ounce": "floz", "fluid ounces": "floz", "fl oz": "floz", "fl. oz": "floz",
    "gills": "gill", "cups": "cup", "cupful": "cup", "cupfuls": "cup", "tasse": "cup",
    "tassen": "cup", "pints": "pint", "pt": "pint", "pts": "pint", "quarts": "quart",
    "qt": "quart", "qts": "quart", "gallons": "gallon",
    "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
    "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
    "inch": "in", "inches": "in", "zoll": "in", '"': "in", "″": "in", "feet": "ft", "foot": "ft",
    "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "minute": "min", "minutes": "min", "mins": "min", "minuten": "min", "second": "s",
    "seconds": "s", "sec": "s", "secs": "s", "hour": "h", "hours": "h", "hr": "h", "hrs": "h",
    "stunde": "h", "stunden": "h",
    "celsius": "c", "°c": "c", "fahrenheit": "f", "°f": "f",
    "pinches": "pinch", "prise": "pinch", "prisen": "pinch", "dashes": "dash", "drops": "drop",
    "tropfen": "drop", "squares": "square", "sticks": "stick", "sheets": "sheet",
    "leaf": "sheet", "leaves": "sheet", "blatt": "sheet", "blätter": "sheet",
    "packets": "packet", "sachet": "packet", "sachets": "packet", "package": "packet",
    "packages": "packet", "päckchen": "packet", "pck": "packet", "handfuls": "handful",
    "slices": "slice", "pieces": "piece", "stück": "piece", "sprigs": "sprig",
    "cloves": "clove", "cans": "can", "pods": "pod", "knobs": "knob", "glasses": "glass",
    "saltspoons": "saltspoon", "saltspoonful": "saltspoon", "saltspoonfuls": "saltspoon",
    "specks": "speck",
}  # fmt: skip


def unit_named(word: str) -> Unit | None:
    """Unit a word stands for, or None.

    >>> unit_named("Teaspoons").name, unit_named("EL").name, unit_named("lb.").name
    ('tsp', 'tbsp', 'lb')
    """
    key = word.strip().casefold().rstrip(".")
    return UNITS.get(key) or UNITS.get(_ALIASES.get(key, ""))
