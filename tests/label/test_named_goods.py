"""Which goods a name speaks of."""

import pytest

from krume.label import statement
from krume.label.named_goods import is_named, named_and_missing, words_of_name
from tests.label.studio import lots, of, product


@pytest.mark.parametrize(
    ("title", "goods", "named"),
    [
        ("Walnut ring torte", "walnuts", True),
        ("Blackcurrant jelly", "blackcurrants", True),
        ("Lemon roll", "lemon juice", True),
        ("Lemon roll", "lemon zest", True),
        ("Buckwheat ganache tart", "buckwheat flour", True),
        ("White sponge", "white rice flour", False),
        ("Oatcake", "oats", False),
        ("Hazelnut slice", "hazelnuts", True),
        ("Orl torte", "orange zest", False),
        ("", "sugar", False),
        ("Butter cake", "butter", True),
    ],
)
def test_a_word_of_the_name_is_the_goods_or_begins_them(
    title: str,
    goods: str,
    named: bool,
) -> None:
    assert is_named(goods, words_of_name(title)) is named


@pytest.mark.parametrize(
    ("title", "listed", "missing"),
    [
        ("Hazelnut slice", ["sugar"], ("hazelnut",)),
        ("Hazelnut slice", ["hazelnuts"], ()),
        ("Apple and orange tart", ["apples", "sugar"], ("orange",)),
        ("Lemon roll", ["lemon zest"], ()),
        ("Red velvet torte", ["sugar"], ()),
        ("Blackcurrant jelly", ["blackcurrants"], ()),
        ("Butter sponge", ["sugar"], ()),
    ],
)
def test_a_name_that_promises_what_is_not_listed_is_told(
    title: str, listed: list[str], missing: tuple[str, ...]
) -> None:
    assert named_and_missing(title, listed) == missing


def test_a_name_that_misleads_is_told_beside_the_list_and_closes_nothing() -> None:
    made = of("Walnut cream\nFamily: set-cream\n\n200 g whipping cream\n20 g ground hazelnuts\n")
    found = statement(made, (), market="eu")
    assert any("speaks of walnut" in text for text in found.beside)
    assert found.unknown == ()
    told = statement(product("F4"), lots(), market="eu").beside
    assert not any("speaks of" in text for text in told)
