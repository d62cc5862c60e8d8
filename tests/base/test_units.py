"""Units by definition, against an independent library of units."""

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import UNITS, unit_named
from krume.base.units import _ALIASES

_BASE = {"mass": "gram", "volume": "milliliter", "length": "centimeter", "time": "minute"}
_PEER_NAME = {
    "c": None, "f": None, "g": "gram", "l": "liter", "m": "meter", "h": "hour", "s": "second",
    "min": "minute", "floz": "fluid_ounce", "in": "inch", "tsp": "teaspoon",
    "tbsp": "tablespoon", "oz": "ounce", "lb": "pound", "gill": "kitchen_gill",
}  # fmt: skip

_SIZED = sorted(name for name, unit in UNITS.items() if unit.size is not None)


@pytest.fixture(scope="module")
def peer() -> "pint.UnitRegistry[float]":
    registry: pint.UnitRegistry[float] = pint.UnitRegistry(non_int_type=float)
    registry.define("kitchen_gill = 4 * fluid_ounce")
    return registry


@pytest.mark.parametrize("name", _SIZED)
def test_a_unit_has_the_size_an_independent_library_gives_it(
    name: str, peer: "pint.UnitRegistry[float]"
) -> None:
    unit = UNITS[name]
    size = peer.Quantity(1.0, _PEER_NAME.get(name) or name).to(_BASE[unit.kind]).magnitude
    assert unit.size == pytest.approx(size, rel=1e-12)


def test_a_unit_without_a_size_is_a_count_or_a_temperature() -> None:
    assert {unit.kind for unit in UNITS.values() if unit.size is None} == {"count", "temperature"}


@pytest.mark.parametrize(
    ("small", "large", "times"),
    [
        ("tsp", "tbsp", 3),
        ("tbsp", "cup", 16),
        ("cup", "pint", 2),
        ("pint", "quart", 2),
        ("quart", "gallon", 4),
        ("gill", "pint", 4),
        ("oz", "lb", 16),
        ("in", "ft", 12),
        ("s", "min", 60),
        ("min", "h", 60),
    ],
)
def test_units_fit_into_one_another_a_whole_number_of_times(
    small: str, large: str, times: int
) -> None:
    large_size, small_size = UNITS[large].size, UNITS[small].size
    assert large_size is not None
    assert small_size is not None
    assert large_size / small_size == pytest.approx(times, rel=1e-12)


def test_every_alias_stands_for_a_unit_and_hides_none() -> None:
    assert set(_ALIASES.values()) <= set(UNITS)
    assert not set(_ALIASES) & set(UNITS)


@pytest.mark.parametrize(
    ("word", "name"),
    [
        ("Teaspoons", "tsp"),
        ("tsp.", "tsp"),
        ("EL", "tbsp"),
        ("TL", "tsp"),
        ("Prise", "pinch"),
        (" lbs. ", "lb"),
        ("fl. oz.", "floz"),
        ('"', "in"),
        ("″", "in"),
        ("°C", "c"),
        ("Päckchen", "packet"),
        ("leaves", "sheet"),
    ],
)
def test_a_word_stands_for_its_unit(word: str, name: str) -> None:
    unit = unit_named(word)
    assert unit is not None
    assert unit.name == name


@pytest.mark.parametrize("word", ["", " ", ".", "flour", "cupp", "g g", "egg"])
def test_a_word_that_is_no_unit_is_none(word: str) -> None:
    assert unit_named(word) is None


@given(st.sampled_from(sorted(set(_ALIASES) | set(UNITS))), st.booleans())
def test_a_unit_is_found_in_capitals_and_with_a_full_stop(word: str, stop: bool) -> None:
    assert unit_named(word.upper() + "." * stop) == unit_named(word) is not None
