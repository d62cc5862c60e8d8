"""A line costs its grams by the kilogram, its eggs by the piece, a part of an egg by the half."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval
from krume.cost import Costed, line_cost
from tests.cost.lists import eggs, prices, weighed

MILLIGRAMS = st.integers(1, 10**8)


def codes(costed: Costed) -> list[str]:
    return [notice.code for notice in costed.notices]


def test_grams_cost_their_share_of_a_kilogram() -> None:
    assert line_cost(weighed(135, "caster sugar"), prices()).line.cost == Fraction("0.189")


@pytest.mark.parametrize(
    ("part", "size", "cost"),
    [
        ("whole", "eu-m", "1.60"), ("yolk", "eu-m", "0.80"), ("white", "eu-m", "0.80"),
        ("whole", "eu-l", "1.90"),
    ],
)  # fmt: skip
def test_five_eggs_cost_five_and_five_parts_cost_half_of_that(
    part: str, size: str, cost: str
) -> None:
    assert line_cost(eggs(5, size, part), prices()).line.cost == Fraction(cost)


def test_eggs_of_a_size_without_a_price_are_asked_and_cost_nothing_known() -> None:
    costed = line_cost(eggs(3, "us-large"), prices())
    assert costed.line.cost is None
    assert costed.missing is not None
    assert (costed.missing.item, costed.missing.per) == ("eggs, US Large", "each")


def test_eggs_in_grams_are_counted_by_the_size_that_is_bought() -> None:
    costed = line_cost(weighed(102, "eggs"), prices(), usual_egg="eu-m")
    assert (costed.line.count, costed.line.cost) == (Fraction(2), Fraction("0.64"))
    assert codes(costed) == ["egg-by-grams"]


def test_eggs_in_grams_without_a_size_are_asked_by_weight() -> None:
    costed = line_cost(weighed(102, "eggs"), prices())
    assert costed.missing is not None
    assert (costed.missing.item, costed.missing.per) == ("eggs", "kg")


def test_eggs_bought_by_weight_cost_their_grams() -> None:
    costed = line_cost(weighed(102, "eggs"), prices("eggs,5.00,kg"))
    assert costed.line.cost == Fraction("0.51")


def test_white_from_a_carton_is_not_paid_as_eggs() -> None:
    line = weighed(120, "pasteurised egg white", part="white")
    assert line_cost(line, prices(), usual_egg="eu-m").line.cost == Fraction("0.84")


def test_a_range_of_eggs_is_paid_by_its_best_value() -> None:
    line = eggs(2, part="whole")
    two_to_three = replace(line, amount=Interval(2, 2.5, 3))
    assert line_cost(two_to_three, prices()).line.cost == Fraction("0.80")


def test_pieces_are_paid_by_the_piece() -> None:
    pods = weighed(None, "vanilla pods", amount=2.0, unit="each", basis="count")
    assert line_cost(pods, prices()).line.cost == 5


def test_grams_of_what_is_sold_by_the_piece_want_a_price_by_weight() -> None:
    costed = line_cost(weighed(4, "vanilla pods"), prices())
    assert costed.line.cost is None
    assert costed.missing is not None
    assert costed.missing.per == "kg"


def test_a_line_without_a_mass_has_a_price_and_no_cost() -> None:
    costed = line_cost(weighed(None, "caster sugar"), prices())
    assert costed.line.price is not None
    assert costed.line.cost is None
    assert costed.missing is None


def test_a_missing_price_is_never_0() -> None:
    costed = line_cost(weighed(100, "millet flour"), prices())
    assert costed.line.cost is None
    assert costed.missing is not None
    assert costed.missing.item == "millet flour"


def test_a_price_of_another_name_is_told() -> None:
    costed = line_cost(weighed(30, "milk"), prices())
    assert costed.line.cost == Fraction("0.036")
    assert [notice.text for notice in costed.notices] == [
        "milk is paid as whole milk, 1.20 per kg."
    ]
    assert codes(line_cost(weighed(30, "whole milk"), prices())) == []
    assert codes(line_cost(weighed(30, "soft butter"), prices())) == []


def test_prices_that_fit_equally_and_differ_are_both_named() -> None:
    costed = line_cost(weighed(30, "superfine sugar"), prices("granulated sugar,1.10,kg"))
    assert costed.line.cost is None
    assert [price.item for price in costed.rivals] == ["caster sugar", "granulated sugar"]


@given(MILLIGRAMS, MILLIGRAMS)
def test_two_bags_cost_what_one_bag_of_both_costs(one: int, two: int) -> None:
    def cost(milligrams: int) -> Fraction:
        found = line_cost(weighed(milligrams / 1000, "butter"), prices()).line.cost
        assert found is not None
        return found

    assert cost(one) + cost(two) == cost(one + two) == Fraction(one + two, 10**6) * Fraction("9.2")
