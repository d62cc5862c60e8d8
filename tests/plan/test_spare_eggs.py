"""Eggs to crack, and spare whites and yolks offered to what takes them."""

import pytest

from krume.plan import EggsWanted, Taker, eggs_to_buy, spare_eggs
from tests.agreement import agrees

WANTED = (EggsWanted("F1", "eu-m", "whole", 5.0), EggsWanted("C1", "eu-m", "yolk", 2.5))
C5 = Taker(
    "C5", "buttercream", "cooked-white-buttercream", {"white": 44.4}, {"white": 60.0},
    is_ordered=True,
)  # fmt: skip
C1 = Taker("C1", "custard cream", "custard-lightened", {}, {}, is_ordered=False)


@pytest.mark.source("reference-book", "order 101: eggs")
def test_order_101_cracks_eight_eggs_and_leaves_three_whites() -> None:
    (eggs,) = eggs_to_buy(WANTED)
    assert agrees(eggs.count, "8")
    white, _ = spare_eggs(WANTED, (C5,))
    assert agrees(white.mass_g, "100.5")
    assert agrees(white.wants_g, "44.4")
    assert (white.part, white.offered_to, white.heat_c) == ("white", "C5", 71.0)
    assert "heated to 71 °C" in white.text


def test_a_part_egg_is_a_whole_one_cracked() -> None:
    assert eggs_to_buy((EggsWanted("C1", "eu-m", "yolk", 2.5),))[0].count == 3


def test_a_white_and_a_yolk_that_are_both_wanted_come_from_one_egg() -> None:
    chiffon = (EggsWanted("F5", "eu-m", "white", 5.0), EggsWanted("F5", "eu-m", "yolk", 4.0))
    assert eggs_to_buy(chiffon)[0].count == 5
    (spare,) = spare_eggs(chiffon, (C1,))
    assert (spare.part, spare.count, spare.mass_g, spare.offered_to) == ("yolk", 1.0, 17.5, "C1")
    assert spare.left_g == 17.5


def test_what_nobody_takes_is_said() -> None:
    (spare,) = spare_eggs((EggsWanted("F5", "eu-m", "white", 2.0),), ())
    assert spare.part == "yolk" and spare.offered_to is None
    assert "no formula here takes it" in spare.text


def test_sizes_stay_apart() -> None:
    wanted = (*WANTED, EggsWanted("F4", "eu-l", "whole", 4.0))
    assert [(one.size, one.count) for one in eggs_to_buy(wanted)] == [("eu-l", 4), ("eu-m", 8)]
