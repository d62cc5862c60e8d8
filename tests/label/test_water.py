"""Added water: what is left of it decides its place where the market wants that."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.label import Product, ProductPart, Used, statement
from krume.label.water import water_left_g
from tests.label.studio import lots, of, product

SOUP = "Pudding loaf\nFamily: butter\nTin: round 20 x 5 cm\nBaked: 10 mm high, {baked} g\n\n"
LINES = "100 g water\n80 g potato starch\n60 g sugar\n"


def part(name: str, water_g: float, others_g: float, finished_g: float | None) -> ProductPart:
    goods = (
        Used("water", "water-tap", "water", "water", water_g, (name,)),
        Used("sugar", "sugar-granulated", "sugar", "sugar", others_g, (name,)),
    )
    return ProductPart(name, name, goods, finished_g)


def whole(*parts: ProductPart, finished_g: float | None = 100.0) -> Product:
    goods = tuple(each for one in parts for each in one.used)
    return Product("Cake", "torte", goods, finished_g, "measured", {}, parts=parts)


@pytest.mark.parametrize(
    ("baked", "first", "grams"), [(210, "potato starch", 70.0), (230, "water", 90.0)]
)
def test_water_stands_where_what_is_left_of_it_belongs(
    baked: int, first: str, grams: float
) -> None:
    found = statement(of(SOUP.format(baked=baked) + LINES), (), market="eu")
    assert found.items[0].name == first
    water = next(item for item in found.items if item.name == "water")
    assert water.mass_g == pytest.approx(grams)


def test_where_the_mass_at_mixing_decides_water_stays_in_its_place() -> None:
    for market in ("us", "ca"):
        assert statement(of(SOUP.format(baked=210) + LINES), (), market=market).items[0].name == (
            "water"
        )


def test_water_that_is_all_baked_off_is_no_ingredient_of_the_finished_cake() -> None:
    made = of(SOUP.format(baked=140) + LINES)
    assert "water" not in [item.name for item in statement(made, (), market="eu").items]
    assert "water" in [item.name for item in statement(made, (), market="us").items]


def test_what_a_sponge_loses_takes_no_water_off_a_syrup() -> None:
    sponge, syrup = part("sponge", 10.0, 90.0, 80.0), part("syrup", 50.0, 50.0, 100.0)
    assert water_left_g(whole(sponge, syrup, finished_g=180.0)) == 50.0


def test_without_a_finished_mass_the_place_of_water_is_not_known() -> None:
    made = of("Cake\nFamily: butter\nOven: 170 C\n\n" + LINES)
    found = statement(made, (), market="eu")
    assert [(u.of, u.closes) for u in found.unknown] == [("water", "label")]
    assert statement(made, (), market="us").unknown == ()


def test_little_water_may_be_left_out_and_is_told_so() -> None:
    told = statement(product("C1"), lots(), market="eu").beside
    assert [text for text in told if text.startswith("Water is 4.")] != []
    assert not any(t.startswith("Water") for t in statement(product("S1"), (), market="eu").beside)


@given(st.floats(0.1, 1e4), st.floats(0.1, 1e4), st.floats(0.05, 1.0))
def test_there_is_never_more_water_left_than_went_in(
    water: float, others: float, share: float
) -> None:
    left = water_left_g(whole(part("x", water, others, share * (water + others))))
    assert left is not None
    assert 0.0 <= left <= water * (1 + 1e-9)
    assert left == 0.0 or math.isclose(left + others, share * (water + others), rel_tol=1e-9)
