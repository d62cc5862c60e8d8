"""A formula by a factor: every gram follows, and a part egg is a part egg."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval, OutOfRangeError
from krume.design import read, scaled, weigh_out
from krume.evidence import packed_text

CUSTARD = read(packed_text("demo/formulas/C1.txt")).value
HAZEL = read(packed_text("demo/formulas/F1.txt")).value


def test_half_a_custard_takes_two_and_a_half_yolks() -> None:
    half = scaled(CUSTARD, 0.5)
    yolk = next(line for line in half.lines if line.part == "yolk")
    assert (yolk.amount, yolk.mass_g) == (2.5, 43.75)
    assert half.name == "Vanilla custard cream, half a batch"


@given(factor=st.floats(0.1, 10))
def test_every_gram_follows_and_is_weighed_once(factor: float) -> None:
    made = scaled(HAZEL, factor)
    masses = [line.mass_g or 0 for line in made.lines]
    assert sum(masses) == pytest.approx(542.0 * factor)
    assert weigh_out(made, scale_g=0.1).total_g == pytest.approx(542.0 * factor, rel=0.02)
    told = [use.mass_g for use in made.uses if use.mass_g is not None]
    assert sum(told) == pytest.approx(
        factor * sum(use.mass_g for use in HAZEL.uses if use.mass_g is not None)
    )


def test_once_is_the_formula_itself() -> None:
    assert scaled(HAZEL, 1) is HAZEL


def test_an_unsettled_amount_stays_a_length() -> None:
    range_of = read("Cake\n\n2-3 g lemon zest\n100 g caster sugar\n").value
    zest = scaled(range_of, 2).lines[0]
    assert zest.amount == Interval(4, 5, 6)


@pytest.mark.parametrize("factor", [0.0, -1.0, float("inf")])
def test_a_factor_of_nothing_is_refused(factor: float) -> None:
    with pytest.raises(OutOfRangeError):
        scaled(HAZEL, factor)
