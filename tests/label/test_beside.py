"""What is on no list of a market and still matters to somebody."""

import pytest

from krume.label import beside_of_allergens, beside_of_goods
from krume.label.beside import beside
from krume.label.product import Used
from krume.pantry import allergens_of_words, find


@pytest.mark.parametrize(
    ("words", "market", "told"),
    [
        ("desiccated coconut", "us", "January 2025"),
        ("desiccated coconut", "eu", "on no list of nuts"),
        ("buckwheat flour", "us", "Buckwheat is a known allergen"),
        ("gluten-free wheat starch", "eu", "without gluten is not without wheat"),
        ("gluten-free wheat starch", "us", "without gluten is not without wheat"),
        ("rolled oats", "ca", "even clean oats"),
        ("chickpea flour", "uk", "Chickpeas"),
    ],
)
def test_goods_that_no_list_names_are_told(words: str, market: str, told: str) -> None:
    found = beside_of_goods(find(words).key, words, market)
    assert any(told in text for text in found)


@pytest.mark.parametrize("words", ["white rice flour", "sugar", "eggs", "butter"])
def test_of_other_goods_nothing_is_told(words: str) -> None:
    assert beside_of_goods(find(words).key, words, "eu") == ()


def test_an_allergen_of_another_list_is_told_with_the_market_that_lacks_it() -> None:
    assert beside_of_allergens(allergens_of_words("lupin flour"), "us") == (
        "Lupin is in it and on no list of allergens of the United States: say so when asked.",
    )
    assert beside_of_allergens(allergens_of_words("lupin flour"), "eu") == ()
    assert beside_of_allergens(allergens_of_words("zorb"), "us") == ()


def test_each_text_is_told_once() -> None:
    goods = [Used(w, find(w).key, w, "flour", 1.0) for w in ("buckwheat flour", "buckwheat groats")]
    assert len(beside(goods, (), "eu")) == 1
