"""Gluten by mass balance: printed values, both directions of a limit, unknown stays unknown."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.label import GlutenMix, GlutenPart, gluten_mix
from tests.agreement import agrees

MASS = st.fractions(Fraction(1, 10), Fraction(1000), max_denominator=1000)
PPM = st.fractions(Fraction(0), Fraction(500), max_denominator=1000)


def mix(*parts: tuple[float, float | None]) -> GlutenMix:
    return gluten_mix(
        [GlutenPart(Fraction(m), None if c is None else Fraction(c)) for m, c in parts]
    )


@pytest.mark.source("reference-book", "R17, gluten-mix of the checks")
@pytest.mark.parametrize(
    ("parts", "printed"),
    [
        ([(250, 10), (40, 325)], "53.45"),
        ([(280, 5), (20, 390)], "30.67"),
        ([(50, 8), (94, 5)], "6.04"),
        ([(50, 8), (94, 5), (338, 0)], "1.80"),
    ],
)
def test_mixtures_are_the_printed_ones(
    parts: list[tuple[float, float | None]], printed: str
) -> None:
    assert agrees(mix(*parts).gluten_ppm, printed)


@pytest.mark.source("us-21-cfr-101-91", "(a)(3), with eu-828-2014: R16")
def test_exactly_20_is_over_in_the_us_and_within_in_the_eu() -> None:
    found = mix((100, 20))
    assert agrees(found.gluten_ppm, "20.0")
    assert (found.us_gluten_free, found.eu_gluten_free) == (False, True)


def test_a_limit_met_by_mixing_is_met_exactly() -> None:
    found = gluten_mix(
        [GlutenPart(Fraction(1, 10), Fraction(40)), GlutenPart(Fraction(1, 10), Fraction(0))]
    )
    assert (found.us_gluten_free, found.eu_gluten_free) == (False, True)
    assert mix((100, 19.999)).us_gluten_free is True
    assert mix((100, 20.001)).eu_gluten_free is False


@given(parts=st.lists(st.tuples(MASS, PPM), min_size=1, max_size=6))
def test_a_mixture_lies_between_its_parts(parts: list[tuple[Fraction, Fraction]]) -> None:
    found = gluten_mix([GlutenPart(m, c) for m, c in parts])
    values = [float(c) for _, c in parts]
    assert found.gluten_ppm is not None
    assert min(values) - 1e-9 <= found.gluten_ppm <= max(values) + 1e-9


@given(parts=st.lists(st.tuples(MASS, PPM), min_size=0, max_size=4))
def test_one_unknown_part_makes_all_unknown(parts: list[tuple[Fraction, Fraction]]) -> None:
    known = [GlutenPart(m, c) for m, c in parts]
    assert gluten_mix([*known, GlutenPart(Fraction(1), None)]) == GlutenMix(None, None, None)


def test_parts_that_cannot_be_are_refused() -> None:
    for parts in ([], [(0, 5)], [(-1, 5)], [(1, -5)], [(1, 2_000_000)]):
        with pytest.raises(OutOfRangeError):
            mix(*parts)
