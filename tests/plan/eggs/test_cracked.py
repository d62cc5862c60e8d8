"""The second look finds what is wrong, and what is left is counted from the bowls."""

from dataclasses import replace

import pytest

from krume.plan import Cracking, EggStock, Filled, Filling, Liquid, bowls, left_over
from krume.plan.eggs import Cracked, cracking_faults
from tests.plan.eggs.needs import C1, F1

BOWL, YOLKS = bowls(F1)[0], bowls(C1)[0]
OWN = Filled(BOWL, Filling("own", (("eu-m", 5.0),), 255.0), 1)
APART = Filled(YOLKS, Filling("own", (("eu-m", 5.0),), 87.5), 1)
GOOD = Cracking((OWN, APART), (Cracked("eu-m", 0, 10),), {"eu-m": 10}, (), proven=True)
SHOP = ("eu-m",)


def faults(answer: Cracking, stock: EggStock = EggStock(), shop: tuple[str, ...] = SHOP) -> str:  # noqa: B008
    return "; ".join(cracking_faults(answer, (BOWL, YOLKS), stock, shop))


def test_a_good_answer_has_no_fault() -> None:
    assert faults(GOOD) == ""


@pytest.mark.parametrize(
    ("answer", "words"),
    [
        (replace(GOOD, filled=(OWN,)), "a bowl of C1 is not filled"),
        (replace(GOOD, bought={"eu-m": 9}), "more eu-m are cracked than there are"),
        (replace(GOOD, cracked=(Cracked("eu-m", 0, 9),)), "more yolks are used than are cracked"),
        (replace(GOOD, cracked=(Cracked("eu-m", 0, 4),)), "more whole eggs are used"),
        (
            replace(GOOD, filled=(replace(OWN, filling=replace(OWN.filling, mass_g=240.0)), APART)),
            "a bowl of F1 has other grams than it says",
        ),
    ],
)
def test_each_fault_is_named(answer: Cracking, words: str) -> None:
    assert words in faults(answer)


def test_what_the_shop_has_not_cannot_be_bought() -> None:
    assert "the shop has none" in faults(GOOD, shop=())


def test_a_pack_cannot_give_more_than_it_holds() -> None:
    stock = EggStock(liquids=(Liquid("yolk", 50.0),))
    assert "more pasteurised yolk is used" in faults(replace(GOOD, liquid_g=(87.5,)), stock)


def test_a_part_of_a_whole_egg_is_left_as_egg() -> None:
    part = replace(OWN, filling=Filling("weighed", (("eu-l", 4.25),), 255.0))
    found = left_over(Cracking((part,), (Cracked("eu-l", 0, 5),), {"eu-l": 5}, (), proven=True))
    assert [(each.part, each.count) for each in found] == [("whole", 0.75)]


def test_the_oldest_loose_white_is_used_first() -> None:
    first, later = replace(C1, day=0), replace(C1, day=2)
    white = replace(C1, formula="x", part="white", mass_g=167.5, day=2)
    filled = tuple(
        Filled(bowls(n)[0], Filling("own", (("eu-m", 5.0),), n.mass_g), 1)
        for n in (first, later, white)
    )
    cracked = (Cracked("eu-m", 0, 5), Cracked("eu-m", 2, 5))
    found = left_over(Cracking(filled, cracked, {"eu-m": 10}, (), proven=True))
    assert [(each.part, each.day, each.count) for each in found] == [("white", 2, 5.0)]
