"""Which goods a name speaks of."""

import pytest

from krume.label.named_goods import is_named, words_of_name


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
