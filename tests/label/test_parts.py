"""Composites, allergens and animals are only what the lots in use say."""

from dataclasses import replace

import pytest

from krume.label import Used, opened
from krume.pantry import Lot, find, ingredient
from tests.label.studio import lots


def used(words: str) -> Used:
    """Goods as a line names them."""
    key = find(words).key
    assert key is not None
    goods = ingredient(key)
    return Used(words, key, goods.label_name, goods.role, 10.0, ("F",))


def spec(words: str, ingredient_name: str, parts: str = "") -> Lot:
    """A lot whose specification says something."""
    listed = tuple(part.strip() for part in parts.split(";")) if parts else None
    return Lot("L-9", ingredient_name, "specification", notes=words, ingredients=listed)


def test_icing_sugar_is_opened_by_the_starch_its_specification_names() -> None:
    found = opened(used("icing sugar"), lots())
    assert found.parts == ("sugar", "maize starch")
    assert found.unknown == ()


@pytest.mark.parametrize("words", ["dark chocolate", "baking powder", "vanilla extract"])
def test_a_composite_whose_parts_no_lot_lists_closes_the_label_by_its_lot(words: str) -> None:
    found = opened(used(words), lots())
    assert [u.closes for u in found.unknown] == ["label"]
    assert found.lots[0].key in found.unknown[0].opens


def test_a_composite_without_a_lot_says_what_would_open_it() -> None:
    unknown = opened(used("vanilla extract"), ()).unknown
    assert "a lot of vanilla extract" in unknown[0].opens


def test_a_list_of_parts_on_the_bag_opens_a_composite_and_brings_its_allergens() -> None:
    lot = spec("", "dark chocolate", "cocoa mass; sugar; cocoa butter; soya lecithin")
    found = opened(used("dark chocolate"), (lot,))
    assert found.parts == ("cocoa mass", "sugar", "cocoa butter", "soya lecithin")
    assert [a.allergen for a in found.contains] == ["soybean"]


def test_one_of_two_lots_that_is_silent_keeps_it_closed() -> None:
    told = spec("", "vanilla extract", "alcohol; water")
    silent = replace(told, key="L-10", ingredients=None)
    assert opened(used("vanilla extract"), (told,)).unknown == ()
    assert opened(used("vanilla extract"), (told, silent)).unknown != ()


def test_traces_are_what_a_specification_warns_of() -> None:
    found = opened(used("dark chocolate, 60 %"), lots())
    assert sorted(a.allergen for a in found.traces) == ["milk", "tree nut"]


def test_a_warning_in_words_nobody_knows_closes_the_label() -> None:
    found = opened(used("white rice flour"), (spec("may contain zorb", "white rice flour"),))
    assert "zorb" in found.unknown[0].what


def test_gelatine_says_its_animal_only_from_its_lot() -> None:
    assert opened(used("powdered gelatine"), lots()).animal == "beef"
    silent = opened(used("powdered gelatine"), ())
    assert silent.animal is None
    assert silent.unknown[0].what == "its animal"


def test_fish_gelatine_brings_its_allergen() -> None:
    found = opened(used("powdered gelatine"), (spec("fish, 200 bloom", "powdered gelatine"),))
    assert "fish" in {a.allergen for a in found.contains}


def test_plain_goods_are_not_asked_about() -> None:
    for words in ("egg", "white rice flour", "whole milk", "ground hazelnuts"):
        assert opened(used(words), ()).unknown == ()


@pytest.mark.parametrize(
    ("words", "market", "is_asked"),
    [
        ("marzipan", "eu", True),
        ("margarine", "us", True),
        ("vanilla sugar", "eu", True),
        ("jam", "au-nz", True),
        ("almond liqueur", "eu", False),
        ("almond liqueur", "us", True),
        ("white rice flour", "us", False),
    ],
)
def test_a_composite_is_asked_for_its_parts_where_its_market_wants_them(
    words: str,
    market: str,
    is_asked: bool,
) -> None:
    unknown = opened(used(words), (), market=market).unknown
    asked = [u for u in unknown if "list of parts" in u.what or "which" in u.what]
    assert bool(asked) is is_asked


@pytest.mark.parametrize("words", ["sugar sprinkles", "royal icing", "edible glitter"])
def test_goods_beyond_the_pantry_that_are_a_composite_are_asked_for_their_parts(
    words: str,
) -> None:
    found = opened(Used(words, None, words, "", 5.0, ("F",)), ())
    assert "its list of parts" in [u.what for u in found.unknown]


def test_marzipan_brings_its_almond_whatever_its_bag_leaves_out() -> None:
    lot = spec("", "marzipan", "sugar; glucose syrup")
    assert "almond" in [a.allergen for a in opened(used("marzipan"), (lot,)).contains]


@pytest.mark.parametrize(
    ("words", "parts"),
    [
        ("free from milk", "sugar; cocoa mass; whole milk powder"),
        ("milk-free; may contain milk", "sugar; cocoa mass"),
        ("no nuts", "sugar; cocoa mass; hazelnuts"),
    ],
)
def test_a_record_that_says_both_closes_the_label(words: str, parts: str) -> None:
    found = opened(used("dark chocolate"), (spec(words, "dark chocolate", parts),))
    assert any("its records say both" in u.what for u in found.unknown)
    assert all(u.closes == "label" for u in found.unknown)


def test_a_record_that_denies_what_is_not_in_it_contradicts_nothing() -> None:
    lot = spec("free from nuts", "dark chocolate", "sugar; cocoa mass; soya lecithin")
    assert opened(used("dark chocolate"), (lot,)).unknown == ()


def test_butter_whose_bag_says_free_from_milk_closes_the_label() -> None:
    found = opened(used("butter"), (spec("milk-free", "butter"),))
    assert [u.what for u in found.unknown] == ["whether it holds milk (its records say both)"]


def test_a_suppliers_sheet_says_the_allergens_that_no_lot_says() -> None:
    goods = replace(ingredient("jam"), contains=("sulphites",), may_contain=("nuts",))
    found = opened(used("jam"), (), sheet=goods)
    assert "its allergens" not in [u.what for u in found.unknown]
    assert [a.allergen for a in found.contains] == ["sulphites"]
    assert [a.allergen for a in found.traces] == ["tree nut"]


def test_a_part_with_its_own_list_brings_what_stands_in_it() -> None:
    lot = spec("", "dark chocolate", "sugar; cocoa mass; emulsifier (soya lecithin)")
    found = opened(used("dark chocolate"), (lot,))
    assert [a.allergen for a in found.contains] == ["soybean"]


def test_a_number_that_does_not_say_its_source_stays_open() -> None:
    found = opened(used("dark chocolate"), (spec("", "dark chocolate", "sugar; E322"),))
    assert any("E322" in u.what for u in found.unknown)


def test_oil_of_no_named_kind_closes_the_label_until_a_lot_names_it() -> None:
    oil = replace(used("sunflower oil"), name="oil")
    lot = Lot("L-9", "sunflower oil", "specification")
    assert [(u.of, u.what) for u in opened(oil, ()).unknown] == [("oil", "which oil it is")]
    assert opened(oil, (lot, replace(lot, key="L-8", ingredient="oil"))).unknown != ()
    assert opened(oil, (lot,)).unknown == opened(used("sunflower oil"), ()).unknown == ()


@pytest.mark.parametrize("words", ["hazelnut brittle", "peanut brittle", "Haselnusskrokant"])
def test_a_bought_brittle_is_more_than_its_nut(words: str) -> None:
    found = opened(Used(words, None, words, "", 60.0, ("F",)), ())
    assert {u.what for u in found.unknown} >= {"its list of parts", "its allergens"}
    assert found.contains != ()
