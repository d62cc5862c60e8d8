"""Percent of a basis, ratios, and what an unsettled mass does to them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval
from krume.design.ratios import Value, basis_of, best_of, mass, percent, ratio, scaled
from krume.design.shares import Sums, sums
from tests.design import planned as p

MASSES = st.floats(0.1, 2000.0)


def of_flour(added: Sums, name: str) -> Value:
    return percent(added, name, basis_of(added, "flour", ("flour",)))


def test_percent_of_flour_is_mass_over_flours_and_starches() -> None:
    added = sums([p.line(3, p.RICE, 60.0), p.line(4, p.POTATO, 40.0), p.line(5, p.SUGAR, 125.0)])
    assert of_flour(added, "sugar") == 125.0
    assert of_flour(added, "starch") == 40.0


def test_an_unsettled_part_gives_an_interval() -> None:
    added = sums([p.line(3, p.RICE, 100.0), p.line(4, p.SUGAR, Interval(90.0, 100.0, 125.0))])
    assert of_flour(added, "sugar") == Interval(90.0, 100.0, 125.0)


def test_an_unsettled_flour_moves_both_sides_of_its_own_share() -> None:
    added = sums([p.line(3, p.RICE, 50.0), p.line(4, p.POTATO, Interval(25.0, 50.0, 150.0))])
    share = of_flour(added, "starch")
    assert isinstance(share, Interval)
    assert share.best == 50.0
    assert share.low == pytest.approx(100 / 3, abs=1e-9)
    assert share.high == pytest.approx(75.0, abs=1e-9)


def test_a_line_of_unknown_class_may_be_in_the_part_or_in_the_basis() -> None:
    added = sums([p.line(3, p.RICE, 80.0), p.line(4, p.POTATO, 20.0), p.line(5, None, 25.0)])
    share = of_flour(added, "starch")
    assert isinstance(share, Interval)
    assert share.low == pytest.approx(100 * 20 / 125, abs=1e-9)
    assert share.best == 20.0
    assert share.high == pytest.approx(100 * 45 / 125, abs=1e-9)


def test_an_unknown_too_small_to_move_a_printed_digit_moves_nothing() -> None:
    added = sums([p.line(3, p.RICE, 100.0), p.line(4, p.SUGAR, 120.0), p.line(5, None, 1e-4)])
    assert of_flour(added, "sugar") == 120.0


def test_without_a_mass_the_figure_is_unknown_and_never_nothing() -> None:
    no_sugar = sums([p.line(3, p.RICE, 100.0), p.line(4, p.SUGAR, None)])
    assert of_flour(no_sugar, "sugar") is None
    assert of_flour(no_sugar, "egg") == 0.0
    no_flour = sums([p.line(3, p.RICE, None), p.line(4, p.SUGAR, 100.0)])
    assert of_flour(no_flour, "sugar") is None
    nobody_knows = sums([p.line(3, p.RICE, 100.0), p.line(4, None, None)])
    assert of_flour(nobody_knows, "sugar") is None
    assert mass(nobody_knows) is None


def test_a_ratio_to_nothing_is_not_defined() -> None:
    added = sums([p.line(3, p.SUGAR, 100.0)])
    assert ratio(added, "sugar", "egg") is None


def test_a_mass_with_an_unknown_line_beside_it_may_be_larger() -> None:
    added = sums([p.line(3, p.RICE, 100.0), p.line(4, None, 25.0)])
    assert mass(added, "flour") == Interval(100.0, 100.0, 125.0)
    assert mass(added) == 125.0


def test_scaling_keeps_unknown_unknown() -> None:
    assert scaled(None, 2.0) is None
    assert scaled(Interval(1.0, 2.0, 3.0), 2.0) == Interval(2.0, 4.0, 6.0)
    assert best_of(Interval(1.0, 2.0, 3.0)) == 2.0


@given(rice=MASSES, starch=MASSES, sugar=MASSES, factor=st.floats(0.05, 20.0))
def test_making_more_of_it_changes_no_percent(
    rice: float, starch: float, sugar: float, factor: float
) -> None:
    masses = ((p.RICE, rice), (p.POTATO, starch), (p.SUGAR, sugar))
    once = sums([p.line(3, key, grams) for key, grams in masses])
    more = sums([p.line(3, key, grams * factor) for key, grams in masses])
    for name in ("sugar", "starch", "egg"):
        assert of_flour(more, name) == pytest.approx(of_flour(once, name), rel=1e-9)


@given(rice=MASSES, low=st.floats(0.1, 500.0), wide=st.floats(0.0, 500.0), at=st.floats(0.0, 1.0))
def test_every_mass_inside_an_interval_gives_a_percent_inside_its_interval(
    rice: float, low: float, wide: float, at: float
) -> None:
    spread = Interval(low, low + wide / 2, low + wide)
    inside_g = low + at * wide
    share = of_flour(sums([p.line(3, p.RICE, rice), p.line(4, p.POTATO, spread)]), "starch")
    exact = of_flour(sums([p.line(3, p.RICE, rice), p.line(4, p.POTATO, inside_g)]), "starch")
    assert isinstance(exact, float)
    if isinstance(share, Interval):
        assert share.low - 1e-9 <= exact <= share.high + 1e-9
    else:
        assert share == pytest.approx(exact, abs=0.0101)


@given(flour=MASSES, other=MASSES, odd=MASSES)
def test_whatever_an_unknown_line_is_the_figure_stays_in_its_interval(
    flour: float, other: float, odd: float
) -> None:
    known = [p.line(3, p.RICE, flour), p.line(4, p.SUGAR, other)]
    share = of_flour(sums([*known, p.line(5, None, odd)]), "sugar")
    for key in (p.RICE, p.POTATO, p.SUGAR, p.SALT, p.HAZELNUT):
        exact = best_of(of_flour(sums([*known, p.line(5, key, odd)]), "sugar"))
        assert exact is not None
        low, high = (share.low, share.high) if isinstance(share, Interval) else (share, share)
        assert low is not None
        assert high is not None
        assert low - 0.0101 <= exact <= high + 0.0101
