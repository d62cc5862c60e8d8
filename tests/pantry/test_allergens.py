"""Allergens: the words of each law, and unknown wherever only a supplier can say."""

import pytest

from krume.evidence import load
from krume.pantry import (
    Ingredient,
    allergens,
    allergens_of_words,
    contains_gluten_grain,
    find,
    ingredient,
    ingredients,
    listed_allergens,
    names_gluten_grain,
)
from krume.pantry.allergens import ALLERGEN_COLUMNS
from krume.pantry.names import GOOD_COLUMNS


def words(key: str, market: str) -> set[str]:
    return {word for a in allergens(key) for word in a.words(market)}


@pytest.mark.parametrize(
    ("key", "us", "eu"),
    [
        ("hazelnuts", {"tree nut (hazelnut)"}, {"nuts (hazelnut)"}),
        ("walnuts-english", {"tree nut (walnut)"}, {"nuts (walnut)"}),
        ("pine-nuts-dried", {"tree nut (pine nut)"}, set()),
        ("coconut-desiccated-unsweetened", set(), set()),
        ("chestnuts-european-boiled", set(), set()),
        ("egg-yolk-fresh", {"egg"}, {"egg"}),
        ("butter-82-ciqual", {"milk"}, {"milk"}),
        ("flour-wheat-all-purpose", {"wheat"}, {"cereals containing gluten (wheat)"}),
        ("flour-rye-light", set(), {"cereals containing gluten (rye)"}),
        ("oats-rolled-dry", set(), {"cereals containing gluten (oat)"}),
        ("flour-lupin", set(), {"lupin"}),
        ("sesame-seeds-whole", {"sesame"}, {"sesame"}),
        ("peanuts-raw", {"peanut"}, {"peanut"}),
        ("sunflower-kernels-dried", set(), set()),
        ("flour-rice-white", set(), set()),
        ("gelatin-dry", set(), set()),
        ("chocolate-milk", {"milk"}, {"milk"}),
        ("almond-drink-unsweetened", {"tree nut (almond)"}, {"nuts (almond)"}),
    ],
)
def test_each_law_declares_its_own_words(key: str, us: set[str], eu: set[str]) -> None:
    assert (words(key, "us"), words(key, "eu")) == (us, eu)


@pytest.mark.parametrize(
    "key",
    [
        *("baking-powder-phosphate", "sugar-powdered", "chocolate-dark-60-69", "couverture"),
        *("food-colour", "margarine-stick-80-unsalted", "cream-soy", "pumpkin-pie-spice"),
        "apricot-dried",
    ],
)
def test_what_only_the_supplier_can_say_is_unknown_and_never_none(key: str) -> None:
    unknown = [a for a in allergens(key) if a.presence == "unknown"]
    assert len(unknown) == 1
    assert "supplier" in unknown[0].note


def test_every_ingredient_says_contains_none_or_unknown_and_no_two_of_them_by_mistake() -> None:
    rows: dict[str, set[str]] = {}
    for row in load("allergens.csv", ALLERGEN_COLUMNS, ("key", "presence", "allergen")):
        rows.setdefault(row.text("key"), set()).add(row.text("presence"))
        told = bool(row.text("allergen"))
        assert told is (row.text("presence") == "contains"), row.number
    assert set(rows) == {item.key for item in ingredients()}
    assert [key for key, found in rows.items() if "none" in found and len(found) > 1] == []


def test_every_allergen_of_the_pantry_is_on_a_list() -> None:
    for item in ingredients():
        held = {a.allergen for a in allergens(item.key) if a.presence == "contains"}
        assert held <= listed_allergens(), item.key
    for row in load("goods.csv", GOOD_COLUMNS, ("name",)):
        told = {t.strip() for t in row.text("allergens").split(";")} - {"", "?"}
        assert told <= listed_allergens(), row.text("name")


def test_every_egg_is_egg_and_all_dairy_is_milk() -> None:
    for item in ingredients():
        if item.role == "egg":
            assert "egg" in words(item.key, "eu"), item.key
        if item.kind == "dairy" and item.role == "dairy" and item.source:
            assert "milk" in words(item.key, "eu"), item.key


def test_a_gluten_grain_brings_its_cereal_to_the_eu_list() -> None:
    for item in ingredients():
        if item.gluten_grain:
            assert f"cereals containing gluten ({item.gluten_grain})" in words(item.key, "eu")


@pytest.mark.parametrize(
    ("name", "us", "eu"),
    [
        ("barley malt", set(), {"cereals containing gluten (barley)"}),
        ("lupin flour", set(), {"lupin"}),
        ("soy sauce", {"wheat", "soybean"}, {"cereals containing gluten (wheat)", "soybean"}),
        ("celery", set(), {"celery"}),
        ("mustard", set(), {"mustard"}),
        ("oysters", set(), {"molluscs"}),
        ("shrimps", {"crustacean shellfish"}, {"crustaceans"}),
        ("salmon", {"fish"}, {"fish"}),
        ("spelt flour", {"wheat"}, {"cereals containing gluten (wheat)"}),
        ("onion", set(), set()),
    ],
)
def test_everyday_words_beyond_the_pantry_bring_theirs(
    name: str, us: set[str], eu: set[str]
) -> None:
    found = allergens_of_words(name)
    assert {word for a in found for word in a.words("us")} == us
    assert {word for a in found for word in a.words("eu")} == eu


@pytest.mark.parametrize(
    "name", ["mystery powder", "custard powder", "cake mix", "granola", "ladyfingers"]
)
def test_unknown_words_and_composites_leave_something_unknown(name: str) -> None:
    assert any(a.presence == "unknown" for a in allergens_of_words(name))


def test_one_s_own_ingredient_is_judged_by_its_supplier_s_words_only() -> None:
    silent = Ingredient("own-x", "X", "x", "other", "other")
    told = Ingredient("own-y", "Y", "y", "other", "other", contains=("milk", "hazelnuts"))
    none = Ingredient("own-z", "Z", "z", "other", "other", contains=())
    own = (silent, told, none)
    assert [a.presence for a in allergens("own-x", own=own)] == ["unknown"]
    assert {a.word("eu") for a in allergens("own-y", own=own)} == {"milk", "nuts (hazelnut)"}
    assert allergens("own-z", own=own) == ()


def test_wheat_rye_and_barley_are_gluten_grains_and_oats_stand_apart() -> None:
    assert contains_gluten_grain("flour-rye-light")
    assert contains_gluten_grain("syrup-malt")
    assert not contains_gluten_grain("oats-rolled-dry")
    assert not contains_gluten_grain("flour-buckwheat-whole")
    assert ingredient("oats-rolled-dry").gluten_grain == "oat"


@pytest.mark.parametrize(
    ("name", "holds"),
    [("spelt flour", True), ("barley malt", True), ("flour", True), ("onion", False)],
)
def test_a_gluten_grain_is_seen_in_goods_beyond_the_pantry(name: str, holds: bool) -> None:
    assert names_gluten_grain(find(name)) is holds
