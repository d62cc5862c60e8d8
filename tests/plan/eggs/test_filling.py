"""The ways to fill a bowl: which there are, and that their grams are what they say."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.plan import EggNeed, EggStock, Filling, Liquid, bowls
from krume.plan.eggs import fillings
from tests.plan.eggs.needs import C1, F1, F3, MASSES


def ways(need: EggNeed, stock: EggStock) -> tuple[Filling, ...]:
    return fillings(bowls(need)[0], stock)


def test_without_a_word_on_house_or_shop_a_bowl_gets_its_own_eggs_only() -> None:
    assert [way.kind for way in ways(F1, EggStock())] == ["own"]


def test_other_sizes_are_near_or_weighed() -> None:
    stock = EggStock(house=(("eu-m", 10),), shop=("eu-l",), near_enough_fraction=0.05)
    found = {(way.kind, way.pieces): way for way in ways(F1, stock)}
    near = found["near", (("eu-l", 1.0), ("eu-m", 4.0))]
    assert (near.mass_g, near.off_g) == (264.0, 9.0)
    assert found["weighed", (("eu-l", 4.25),)].mass_g == 255.0
    assert ("near", (("eu-l", 4.0),)) not in found  # 240 of 255 g: 5.9 % off


def test_fewer_of_its_own_eggs_are_no_way() -> None:
    big = EggNeed("big", "whole", 51.0 * 40, size="eu-m", count=40.0)
    stock = EggStock(house=(("eu-m", 40),), near_enough_fraction=0.05)
    assert [way.pieces for way in ways(big, stock)] == [(("eu-m", 40.0),)]


def test_another_size_is_bought_only_where_the_own_one_is_not_sold() -> None:
    both = EggStock(shop=("eu-m", "eu-l"), near_enough_fraction=0.05)
    assert {way.kind for way in ways(F3, both)} == {"own"}
    large = EggStock(shop=("eu-l",), near_enough_fraction=0.05)
    assert {way.kind for way in ways(F3, large)} == {"weighed"}


def test_a_pack_is_a_way_where_the_family_allows_and_the_sugar_is_enough() -> None:
    plain = EggStock(liquids=(Liquid("yolk", 500.0), Liquid("white", 500.0)))
    assert [way.liquid for way in ways(C1, plain) if way.kind == "liquid"] == [0]
    assert [way.kind for way in ways(F1, plain)] == ["own"]
    sweet = EggStock(liquids=(Liquid("yolk", 500.0, sugar_pct=50.0),))
    assert not [way for way in ways(C1, sweet) if way.kind == "liquid"]  # 87.5 g of its 80 g sugar


@given(
    st.floats(5.0, 400.0),
    st.sampled_from(["whole", "yolk", "white"]),
    st.lists(st.sampled_from(["eu-s", "eu-m", "eu-l"]), min_size=1, max_size=3, unique=True),
    st.floats(0.0, 0.1),
)
def test_every_way_weighs_what_it_says(
    mass_g: float, part: str, sizes: list[str], near: float
) -> None:
    stock = EggStock(house=tuple((size, 9) for size in sizes), near_enough_fraction=near)
    found = ways(EggNeed("x", part, mass_g), stock)
    assert found
    for way in found:
        grams = sum(count * MASSES[size, part] for size, count in way.pieces)
        assert grams == pytest.approx(way.mass_g)
        assert abs(grams - mass_g) <= mass_g * near + 1e-6
        assert len(way.pieces) <= 2
        if way.kind == "near":
            assert all(count == round(count) for _, count in way.pieces)
        else:
            assert grams == pytest.approx(mass_g)
