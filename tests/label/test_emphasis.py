"""Allergens standing out: said by a name in capitals, in brackets where it says none."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.label.emphasis import emphasised, says
from krume.label.market_rules import market_rule
from krume.pantry import MARKETS, Allergen, allergens_of_words, declared, listed_allergens


def of(*names: str) -> tuple[Allergen, ...]:
    return tuple(Allergen("contains", name, "law", "eu-1169-2011") for name in names)


@pytest.mark.parametrize(
    ("text", "held", "eu", "us", "au_nz"),
    [
        ("butter", ("milk",), "butter (MILK)", "butter (milk)", "butter (MILK)"),
        ("whole milk", ("milk",), "whole MILK", "whole milk", "whole MILK"),
        ("hazelnuts", ("hazelnut",), "HAZELNUTS", "hazelnuts", "HAZELNUTS"),
        ("soya lecithin", ("soybean",), "SOYA lecithin", "soya lecithin", "SOYA lecithin"),
        ("pine nuts", ("pine nut",), "pine nuts", "pine nuts", "PINE NUTS"),
        ("malt syrup", ("barley",), "malt syrup (BARLEY)", "malt syrup", "malt syrup (BARLEY)"),
        ("rolled oats", ("oat",), "rolled OATS", "rolled oats", "rolled OATS"),
        ("egg wash of egg", ("egg",), "EGG wash of EGG", "egg wash of egg", "EGG wash of EGG"),
        ("gluten-free wheat starch", ("wheat",), "gluten-free WHEAT starch",
         "gluten-free wheat starch", "gluten-free WHEAT starch"),
        ("buckwheat flour", (), "buckwheat flour", "buckwheat flour", "buckwheat flour"),
    ],
)  # fmt: skip
def test_a_name_stands_out_as_its_market_wants(
    text: str, held: tuple[str, ...], eu: str, us: str, au_nz: str
) -> None:
    found = {m: emphasised(text, of(*held), market_rule(m)) for m in ("eu", "us", "au-nz")}
    assert found == {"eu": eu, "us": us, "au-nz": au_nz}


def test_wheat_is_not_found_inside_buckwheat() -> None:
    assert not says("buckwheat flour", "wheat", "wheat")
    assert emphasised("buckwheat", of("wheat"), market_rule("eu")) == "buckwheat (WHEAT)"


@given(
    st.sampled_from(sorted(listed_allergens())), st.sampled_from(MARKETS),
    st.sampled_from(["butter", "paste of the house", "E322", "<b>milk</b>", "egg, soya; nuts"]),
)  # fmt: skip
def test_every_listed_allergen_can_be_read_behind_any_name(
    name: str, market: str, text: str
) -> None:
    told = declared(name, market)
    shown = emphasised(text, of(name), market_rule(market))
    assert told is None or says(shown, name, told.named)
    assert shown.casefold().startswith(text.casefold())


def test_what_no_list_of_the_market_has_is_left_as_it_stands() -> None:
    assert emphasised("lupin flour", allergens_of_words("lupin flour"), market_rule("us")) == (
        "lupin flour"
    )
