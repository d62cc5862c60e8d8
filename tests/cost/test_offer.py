"""Margin is a share of the price and markup one of the cost; break-even is whole tortes."""

import math
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.cost import (
    Heads,
    Planned,
    break_even,
    margin_of,
    offer,
    price_for_margin,
    price_for_markup,
)

HEADS = Heads(*(Decimal(n) for n in ("6.76", "52.80", "0.61", "2.46", "25.83")))
PLANNED = Planned(fixed_a_month=Decimal(620), tortes_a_month=Decimal(24), own_work_h=Decimal("2.2"))
COSTS = st.integers(1, 10**7).map(lambda n: Decimal(n) / 100)
PERCENTS = st.integers(0, 9999).map(lambda n: Decimal(n) / 100)


def test_the_same_percent_is_another_price_as_margin_and_as_markup() -> None:
    full = Decimal("88.46")
    assert price_for_margin(full, Decimal(30)) == Decimal("126.37")
    assert price_for_markup(full, Decimal(30)) == Decimal("115.00")


@given(COSTS, PERCENTS)
def test_the_margin_of_the_price_for_a_margin_is_that_margin(full: Decimal, pct: Decimal) -> None:
    price = price_for_margin(full, pct)
    exact = Fraction(full) / (1 - Fraction(pct) / 100)
    assert abs(Fraction(price) - exact) <= Fraction(1, 200)
    left = (Fraction(price) - Fraction(full)) / Fraction(price)
    assert abs(left - Fraction(pct) / 100) <= Fraction(1, 200) / Fraction(price)


@given(COSTS, PERCENTS)
def test_a_margin_asks_at_least_as_much_as_a_markup_of_the_same_percent(
    full: Decimal, pct: Decimal
) -> None:
    assert price_for_margin(full, pct) >= price_for_markup(full, pct) >= full


@given(COSTS, st.integers(1, 90))
def test_a_markup_of_m_over_one_less_m_is_a_margin_of_m(full: Decimal, pct: int) -> None:
    as_markup = Fraction(pct, 100 - pct)
    price = Fraction(full) * (1 + as_markup)
    assert abs(Fraction(price_for_margin(full, Decimal(pct))) - price) <= Fraction(1, 200)


@pytest.mark.parametrize("pct", ["100", "100.01", "-0.01"])
def test_a_margin_that_no_price_has_is_refused(pct: str) -> None:
    with pytest.raises(OutOfRangeError, match="Type one from 0 to below 100"):
        price_for_margin(Decimal(10), Decimal(pct))


def test_a_negative_markup_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="Type 0 or more"):
        price_for_markup(Decimal(10), Decimal(-1))


def test_a_price_of_nothing_has_no_margin() -> None:
    assert margin_of(Decimal(0), Decimal(1)) is None
    assert margin_of(Decimal(50), Decimal(100)) == Decimal(-100)


@given(COSTS, COSTS)
def test_break_even_is_the_least_number_that_pays_the_fixed_costs(
    fixed: Decimal, contribution: Decimal
) -> None:
    count = break_even(fixed, contribution)
    assert count is not None
    assert count * contribution >= fixed > (count - 1) * contribution
    assert count == math.ceil(Fraction(fixed) / Fraction(contribution))


@given(COSTS, COSTS)
def test_a_torte_that_leaves_nothing_never_breaks_even(fixed: Decimal, loss: Decimal) -> None:
    assert break_even(fixed, -loss) is None
    assert break_even(fixed, Decimal(0)) is None


def test_an_exact_break_even_is_not_one_more() -> None:
    assert break_even(Decimal(600), Decimal(30)) == 20
    assert break_even(Decimal("600.01"), Decimal(30)) == 21


def test_an_offer_for_one_torte() -> None:
    found = offer(Decimal("96.00"), HEADS, PLANNED, tortes=1)
    assert (found.contribution, found.break_even, found.break_even_unpaid) == (
        *(Decimal("33.37"), 19, 8),
    )
    assert (found.margin_pct, found.left_a_month) == (Decimal("7.854"), Decimal("180.88"))
    assert found.per_hour == Decimal("27.43")  # (96 - 88.46 + 52.80) / 2.2
    assert not found.loses


def test_an_hour_brings_its_rate_at_the_full_cost_and_more_by_what_is_above_it() -> None:
    assert offer(Decimal("88.46"), HEADS, PLANNED, tortes=1).per_hour == Decimal("24.00")
    assert offer(Decimal("110.46"), HEADS, PLANNED, tortes=1).per_hour == Decimal("34.00")


def test_an_offer_without_heads_says_nothing_and_is_no_loss() -> None:
    bare = Heads(None, Decimal(1), None, None, None)
    found = offer(Decimal(10), bare, PLANNED, tortes=1)
    assert (found.margin_pct, found.contribution, found.break_even, found.per_hour) == (
        *(None, None, None, None),
    )
    assert not found.loses
    assert offer(Decimal(10), HEADS, PLANNED, tortes=0).contribution is None


@given(COSTS, st.integers(1, 20))
def test_so_many_of_one_torte_leave_the_same_each(price: Decimal, tortes: int) -> None:
    many = Heads(*(None if h is None else h * tortes for h in
                   (HEADS.material, HEADS.labour, HEADS.energy, HEADS.packaging,
                    HEADS.fixed_share)))  # fmt: skip
    one = offer(price, HEADS, PLANNED, tortes=1)
    all_of_them = offer(price * tortes, many, PLANNED, tortes=tortes)
    assert all_of_them.contribution == one.contribution
    assert all_of_them.break_even == one.break_even
    assert all_of_them.break_even_unpaid == one.break_even_unpaid
