"""Units a value may carry: converted within their kind, refused across kinds."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import InputError
from krume.calc.units import in_unit, measure_named


@pytest.mark.parametrize(
    ("value", "own", "wanted", "expected"),
    [
        (8, "in", "cm", 20.32), (5000, "ft", "m", 1524), (187, "mg", "g", 0.187),
        (20, "µg", "mg", 0.02), (1, "kPa", "pa", 1000), (1, "h", "min", 60), (2, "days", "h", 48),
        (300, "K", "c", 26.85), (25, "C", "f", 77), (0, "f", "k", 255.372222), (12, "%", "pct", 12),
        (5, "mg/kg", "ppm", 5), (100, "kJ", "kcal", 23.9005736),
    ],
)  # fmt: skip
def test_values_are_converted(value: float, own: str, wanted: str, expected: float) -> None:
    assert in_unit(value, own, wanted, field="x") == pytest.approx(expected)


@pytest.mark.parametrize(
    ("own", "wanted"), [("ml", "g"), ("min", "cm"), ("smoot", "cm"), ("c", "g"), ("stick", "drop")]
)
def test_another_kind_is_refused(own: str, wanted: str) -> None:
    with pytest.raises(InputError) as caught:
        in_unit(1.0, own, wanted, field="mass")
    assert (caught.value.field, caught.value.want) == ("mass", wanted)


@given(value=st.floats(-200.0, 500.0))
def test_there_and_back_is_the_same_temperature(value: float) -> None:
    there = in_unit(value, "c", "f", field="t")
    assert in_unit(there, "f", "c", field="t") == pytest.approx(value, abs=1e-9)


def test_a_difference_has_no_zero_point() -> None:
    assert in_unit(18.0, "F", "k", field="z", difference=True) == pytest.approx(10.0)
    assert in_unit(10.0, "K", "c", field="z", difference=True) == pytest.approx(10.0)


def test_a_word_that_is_no_unit_is_none() -> None:
    assert measure_named("smoot") is None
