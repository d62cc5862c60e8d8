"""What one cup, spoon, pinch or piece weighs: from published portions, else by density."""

import re
from dataclasses import dataclass
from functools import cache

from krume.base import UNITS, Interval
from krume.evidence import column, load, optional
from krume.pantry.ingredients import ingredient

PORTION_COLUMNS = (
    column("key", "key"),
    column("amount", "number"),
    column("unit_text"),
    column("grams", "number"),
    column("source_key", "source"),
)
MEASURE_COLUMNS = (
    column("key", "key"),
    column("unit", "unit"),
    column("low_g", "number"),
    column("best_g", "number"),
    column("high_g", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
TRADE_COLUMNS = (
    column("unit", "unit"),
    column("low_ml", "number"),
    column("best_ml", "number"),
    column("high_ml", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
LIKE_COLUMNS = (column("key", "key"), column("like", "key"), column("reason"))
SPREAD_COLUMNS = (
    column("role"),
    column("spread_pct", "number"),
    column("status", "status"),
    column("source", "source"),
    column("reason"),
)
_UNIT_TEXT = re.compile(
    r"(cup|tbsp|tablespoon|tsp|fl oz|quart|liter|stick)s?\b(?: \((?:8 fl oz|\d+ tbsp|not packed|"
    r"4\.86 large eggs|8 fl oz)\))?\s*(.*)$"
)
_UNIT_OF = {"tablespoon": "tbsp", "fl oz": "floz", "liter": "l"}
_NOT_BULK = ("edible yield", "pits  yields", "purchased", "mini", "melted", "label", "(6 oz")
_USUAL = ("", "unsifted", "not packed", "packed", "stirred", "fluid", "chopped", "raw")
_BY_SIZE = ("quart", "l", "cup", "floz", "tbsp", "tsp")


@dataclass(frozen=True, slots=True)
class Measure:
    """Grams of one unit of an ingredient, with its spread and its papers."""

    mass_g: Interval
    status: str
    source: str
    note: str = ""

    def times(self, factor: float) -> Interval:
        """Grams of several units."""
        return self.mass_g.times(factor)


@dataclass(frozen=True, slots=True)
class _Portion:
    words: str
    mass_g: float


@cache
def measure(key: str, unit: str) -> Measure | None:
    """Grams of ONE unit of an ingredient; None where nothing says what it weighs.

    A row of measures.csv goes first, then the table's own portion, then density.

    >>> measure("butter-82-ciqual", "stick").mass_g.best
    113.4
    >>> measure("carrageenan", "cup") is None
    True
    """
    for name in (key, _like().get(key, "")):
        found = _rows().get((name, unit)) or (_by_portion(name, unit) if name else None)
        if found is not None:
            return found
    return _by_density(key, unit)


def density_g_ml(key: str) -> Interval | None:
    """Bulk density as a measure gives it [g/ml]; None is unknown."""
    found = measure(key, "ml")
    return found.mass_g if found else None


@cache
def _rows() -> dict[tuple[str, str], Measure]:
    return {
        (row.text("key"), row.text("unit")): Measure(
            Interval(row.number_of("low_g"), row.number_of("best_g"), row.number_of("high_g")),
            row.text("status"),
            row.text("source"),
            row.text("note"),
        )
        for row in load("measures.csv", MEASURE_COLUMNS, ("key", "unit"))
    }


@cache
def _like() -> dict[str, str]:
    return {r.text("key"): r.text("like") for r in load("measure_like.csv", LIKE_COLUMNS)}


@cache
def _spreads() -> dict[str, float]:
    rows = load("measure_spread.csv", SPREAD_COLUMNS, ("role",))
    return {row.text("role"): row.number_of("spread_pct") / 100 for row in rows}


@cache
def _portions() -> dict[str, dict[str, tuple[_Portion, ...]]]:
    found: dict[str, dict[str, tuple[_Portion, ...]]] = {}
    for row in load("portions.csv", PORTION_COLUMNS, ("key", "amount", "unit_text")):
        match = _UNIT_TEXT.match(row.text("unit_text"))
        if match is None or not _is_bulk(row.text("unit_text")):
            continue
        unit = _UNIT_OF.get(match[1], match[1])
        words = match[2].split("(")[0].strip() or match[2].strip("() ")
        portion = _Portion(words, row.number_of("grams") / row.number_of("amount"))
        units = found.setdefault(row.text("key"), {})
        units[unit] = (*units.get(unit, ()), portion)
    return found


def _is_bulk(words: str) -> bool:
    """Whether a portion is the good as it is weighed: not its yield, not whipped, not melted."""
    whipped = "whipped" in words and "fluid" not in words
    return not whipped and not any(word in words for word in _NOT_BULK)


def _by_portion(key: str, unit: str) -> Measure | None:
    portions = _portions().get(key, {}).get(unit)
    return _measure_of(key, portions, 1.0, "") if portions else None


def _measure_of(key: str, portions: tuple[_Portion, ...], factor: float, note: str) -> Measure:
    usual = min(portions, key=lambda p: _USUAL.index(p.words) if p.words in _USUAL else 99)
    spread = _spreads()[ingredient(key).role]
    masses = [portion.mass_g * factor for portion in portions]
    low, high = min(masses) * (1 - spread), max(masses) * (1 + spread)
    said = note or (usual.words and f"as {usual.words}")
    status = "derived" if note else "published"
    return Measure(Interval(low, usual.mass_g * factor, high), status, "usda-sr28", said)


def _by_density(key: str, unit: str) -> Measure | None:
    size_ml, note = _volume_ml(unit)
    if size_ml is None:
        return None
    for name in (key, _like().get(key, "")):
        found = _from_ml(name, size_ml, note) or _from_any_portion(name, size_ml, note)
        if found is not None:
            return found
    return None


def _volume_ml(unit: str) -> tuple[Interval | None, str]:
    trade = _trade().get(unit)
    if trade is not None:
        return trade
    known = UNITS.get(unit)
    if known is None or known.kind != "volume" or known.size is None:
        return None, ""
    return Interval(known.size, known.size, known.size), "by density"


@cache
def _trade() -> dict[str, tuple[Interval, str]]:
    return {
        row.text("unit"): (
            Interval(row.number_of("low_ml"), row.number_of("best_ml"), row.number_of("high_ml")),
            f"{row.text('note')}, by density",
        )
        for row in load("trade_measures.csv", TRADE_COLUMNS, ("unit",))
    }


def _from_ml(key: str, size_ml: Interval, note: str) -> Measure | None:
    """By a row of measures.csv for any measure of volume, the largest first."""
    for unit in ("ml", *_BY_SIZE):
        row, volume_ml = _rows().get((key, unit)), UNITS[unit].size
        if row is not None and volume_ml is not None:
            mass_g = _product(row.mass_g.times(1 / volume_ml), size_ml)
            said = note if unit == "ml" else f"{note}, from its {unit}"
            return Measure(mass_g, row.status, row.source, said)
    return None


def _from_any_portion(key: str, size_ml: Interval, note: str) -> Measure | None:
    units = _portions().get(key, {})
    unit = next((u for u in _BY_SIZE if u in units), None)
    volume_ml = UNITS[unit].size if unit else None
    if unit is None or volume_ml is None:
        return None
    of_one_ml = _measure_of(key, units[unit], 1 / volume_ml, f"{note}, from its {unit}")
    return Measure(_product(of_one_ml.mass_g, size_ml), "derived", "usda-sr28", of_one_ml.note)


def _product(density: Interval, size: Interval) -> Interval:
    return Interval(density.low * size.low, density.best * size.best, density.high * size.high)
