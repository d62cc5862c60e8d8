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
