"""Carbohydrate of a slice: an interval that holds what went in, with its fibre and without."""

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval, OutOfRangeError
from krume.label import cut_share, nutrient_sums, slice_carbohydrate, slices_in_range
from krume.label.carbohydrate import MOST_SLICES
from tests.label.studio import of, product


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART", "F1"])
def test_all_slices_together_hold_what_went_in(name: str) -> None:
    made = product(name)
    sums = {m: nutrient_sums(made, market=m) for m in ("eu", "us")}
    found = slice_carbohydrate(made, 12)
    assert found is not None
    assert made.finished_g is not None
    for market, eaten in (("eu", found.without_fibre_g), ("us", found.with_fibre_g)):
        each = sums[market]
        assert each is not None
        span = each["carbohydrate"].span
        whole = (span.low + span.high) / 2 * made.finished_g / 100
        assert eaten.best * 12 == pytest.approx(whole)
        assert eaten.low < eaten.best < eaten.high
        assert eaten.low * 12 <= span.low * made.finished_g / 100
        assert eaten.high * 12 >= span.high * made.finished_g / 100


def test_with_its_fibre_it_is_more_by_the_fibre() -> None:
    made = product("F1")
    sums = nutrient_sums(made, market="eu")
    found = slice_carbohydrate(made, 8)
    assert sums is not None
    assert found is not None
    assert made.finished_g is not None
    fibre_g = sums["fibre"].span.low * made.finished_g / 100 / 8
    assert found.with_fibre_g.best - found.without_fibre_g.best == pytest.approx(fibre_g)


@given(st.floats(0.45, 1.0))
def test_no_loss_in_the_oven_moves_the_carbohydrate_of_a_slice(kept: float) -> None:
    made = product("F1")
    assert made.mixed_g is not None
    weighed = replace(made, finished_g=made.mixed_g * kept)
    plan, other = slice_carbohydrate(made, 10), slice_carbohydrate(weighed, 10)
    assert plan is not None
    assert other is not None
    assert other.without_fibre_g.best == pytest.approx(plan.without_fibre_g.best)
    assert other.without_fibre_g.high == pytest.approx(plan.without_fibre_g.high, rel=1e-6)


def test_the_cut_alone_is_as_wide_as_its_row_says() -> None:
    made = of("Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n")
    found = slice_carbohydrate(made, 4)
    assert found is not None
    assert found.slice_g.low == pytest.approx(0.9 * 55)
    assert found.slice_g.high == pytest.approx(1.1 * 55)
    assert found.with_fibre_g.best - found.with_fibre_g.low >= 0.1 * found.with_fibre_g.best


@given(st.floats(1.0, 2000.0), st.floats(0.0, 0.5), st.integers(1, MOST_SLICES))
def test_a_share_lies_between_its_ends_and_all_shares_are_the_whole(
    whole_g: float, spread: float, count: int
) -> None:
    found = cut_share(Interval.around(whole_g, spread * whole_g), count)
    assert found.low <= found.best <= found.high
    assert found.best * count == pytest.approx(whole_g)
    wide = math.hypot(spread, 0.1) * whole_g / count
    assert found.high - found.best == pytest.approx(wide)


@pytest.mark.parametrize("count", [0, -1, -999, MOST_SLICES + 1, 10**9])
def test_a_number_of_slices_that_cannot_be_is_refused(count: int) -> None:
    with pytest.raises(OutOfRangeError, match="Type 1 to 400"):
        slices_in_range(count)
    with pytest.raises(OutOfRangeError):
        slice_carbohydrate(product("T1"), count)


def test_without_a_finished_mass_no_slice_is_told() -> None:
    assert slice_carbohydrate(replace(product("F1"), finished_g=None), 8) is None
