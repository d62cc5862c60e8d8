"""Eggs to crack for a plan, and spare whites and yolks offered to what takes them."""

import pytest

from krume.plan import EggsWanted, Taker, eggs_to_buy, spare_eggs
from tests.agreement import agrees

WANTED = (EggsWanted("F1", "eu-m", "whole", 5.0), EggsWanted("C1", "eu-m", "yolk", 2.5))
TWELVE = (EggsWanted("F1", "eu-m", "whole", 60.0), EggsWanted("C1", "eu-m", "yolk", 30.0))
C5 = Taker(
    "C5", "buttercream", "cooked-white-buttercream", {"white": 44.4}, {"white": 60.0},
    is_ordered=True, batch_g={"white": 120.0}, step_batches=0.5,
)  # fmt: skip
C1 = Taker(
    "C1", "custard cream", "custard-lightened", {}, {}, is_ordered=False, batch_g={"yolk": 87.5},
    step_batches=0.5,
)  # fmt: skip


@pytest.mark.source("reference-book", "order 101: eggs")
def test_order_101_cracks_eight_eggs_and_leaves_three_whites() -> None:
    (eggs,) = eggs_to_buy(WANTED)
    assert agrees(eggs.count, "8")
    white, yolk = spare_eggs(WANTED, (C5,))
    assert agrees(white.mass_g, "100.5")
    assert agrees(white.wants_g, "44.4")
    assert (white.part, white.offered_to, white.heat_c) == ("white", "C5", 71.0)
    assert white.left_g == pytest.approx(40.5)
    assert (
        yolk.offered_to is None and yolk.text == "0.5 yolk, 8.8 g, left when the bowl is weighed."
    )


def test_the_left_over_says_why_it_is_there_who_takes_it_and_what_remains() -> None:
    bigger = Taker(
        "C5", "x", "cooked-white-buttercream", {"white": 532.9}, {"white": 600.0}, is_ordered=True
    )
    (spare,) = spare_eggs(TWELVE, (bigger,))
    assert spare.left_g == pytest.approx(405.0)
    assert spare.text == (
        "30 yolks wanted alone: 30 more eggs, 30 whites left, 1005 g. C5 takes 600 g (532.9 g of "
        "it goes in), heated to 71 °C, in place of pasteurised. Then 405 g left: 4 days cold, or "
        "frozen."
    )


def test_a_part_egg_is_a_whole_one_cracked() -> None:
    assert eggs_to_buy((EggsWanted("C1", "eu-m", "yolk", 2.5),))[0].count == 3


def test_a_white_and_a_yolk_that_are_both_wanted_come_from_one_egg() -> None:
    chiffon = (EggsWanted("F5", "eu-m", "white", 5.0), EggsWanted("F5", "eu-m", "yolk", 4.0))
    assert eggs_to_buy(chiffon)[0].count == 5
    (spare,) = spare_eggs(chiffon, (C1,))
    assert (spare.part, spare.count, spare.mass_g, spare.offered_to) == ("yolk", 1.0, 17.5, "C1")
    assert spare.left_g == 17.5
    assert spare.text.endswith("1 yolk left, 17.5 g: 2 days cold, for C1 (boiled).")


def test_what_nobody_takes_is_said() -> None:
    (spare,) = spare_eggs((EggsWanted("F5", "eu-m", "white", 2.0),), ())
    assert spare.part == "yolk" and spare.offered_to is None
    assert (
        spare.text
        == "2 whites wanted alone: 2 more eggs, 2 yolks left, 35 g: no formula here takes it."
    )


def test_sizes_stay_apart_and_share_one_taker() -> None:
    wanted = (*WANTED, EggsWanted("C9", "eu-l", "yolk", 2.0))
    assert [(one.size, one.count) for one in eggs_to_buy(wanted)] == [("eu-l", 2), ("eu-m", 8)]
    whites = [spare for spare in spare_eggs(wanted, (C5,)) if spare.part == "white"]
    assert sum(spare.mass_g - spare.left_g for spare in whites) == pytest.approx(60.0)


def test_nothing_wanted_is_nothing_bought() -> None:
    assert eggs_to_buy(()) == () and spare_eggs((), (C5,)) == ()
