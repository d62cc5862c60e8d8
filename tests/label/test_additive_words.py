"""Additives in a list: with their class where the market wants it, by name or by number."""

import pytest

from krume.label import ListStyle, statement
from krume.label.additive_words import additive_text, must_say_of, part_text
from krume.label.market_rules import market_rule
from krume.label.parts import opened
from krume.label.product import Used
from krume.pantry import additive_named
from tests.label.studio import lots, of, product

SWEET = "Sponge\nFamily: set-cream\n\n100 g whipping cream\n{grams} g sorbitol\n"


@pytest.mark.parametrize(
    ("market", "by_number", "text"),
    [
        ("eu", False, "thickener: xanthan gum"),
        ("eu", True, "thickener: E415"),
        ("uk", True, "thickener: E415"),
        ("au-nz", False, "thickener (xanthan gum)"),
        ("au-nz", True, "thickener (415)"),
        ("us", True, "xanthan gum"),
        ("ca", True, "xanthan gum"),
    ],
)
def test_an_additive_stands_as_its_market_wants(
    market: str,
    by_number: bool,
    text: str,
) -> None:
    found = additive_named("xanthan gum")
    assert found is not None
    assert additive_text(found, "xanthan gum", market_rule(market), by_number=by_number) == text


@pytest.mark.parametrize(
    ("part", "by_number", "text"),
    [
        ("3 % maize starch", False, "maize starch"),
        ("soya lecithin", False, "emulsifier: soya lecithin"),
        ("soya lecithin", True, "emulsifier: E322"),
        ("e476", False, "emulsifier: E476"),
        ("emulsifier (soya lecithin, e476)", False, "emulsifier (soya lecithin, E476)"),
        ("emulsifier: soya lecithin", True, "emulsifier (E322)"),
        ("chocolate (sugar, soya lecithin)", False, "chocolate (sugar, emulsifier: soya lecithin)"),
        ("natural flavouring", True, "natural flavouring"),
    ],
)
def test_a_part_of_a_bag_keeps_its_words_and_gets_its_class(
    part: str,
    by_number: bool,
    text: str,
) -> None:
    assert part_text(part, market_rule("eu"), by_number=by_number) == text


def test_the_list_of_a_roulade_names_the_class_of_its_gum_in_the_eu_alone() -> None:
    numbers = ListStyle(by_number=True)
    said = {
        "eu": statement(product("F3"), lots(), market="eu").text,
        "eu, numbers": statement(product("F3"), lots(), market="eu", style=numbers).text,
        "us": statement(product("F3"), lots(), market="us").text,
    }
    assert said["eu"].endswith("thickener: xanthan gum")
    assert said["eu, numbers"].endswith("thickener: E415")
    assert said["us"].endswith("xanthan gum")
    assert "thickener" not in said["us"]


@pytest.mark.parametrize(
    ("grams", "market", "told"),
    [
        (5, "eu", ("With sweetener.",)),
        (50, "eu", ("With sweetener.", "Excessive consumption may produce laxative effects.")),
        (50, "us", ()),
    ],
)
def test_sweeteners_bring_their_sentences(grams: int, market: str, told: tuple[str, ...]) -> None:
    made = of(SWEET.format(grams=grams))
    assert statement(made, (), market=market).must_say == told


def test_exactly_ten_percent_of_polyols_is_not_above_it() -> None:
    found = [opened(Used("sorbitol", "sorbitol", "sorbitol", "sugar", 10.0), ())]
    assert must_say_of(found, 100.0, market_rule("eu")) == ("With sweetener.",)
    assert len(must_say_of(found, 99.9, market_rule("eu"))) == 2
    assert len(must_say_of(found, None, market_rule("eu"))) == 2
