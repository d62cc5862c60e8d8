"""Ingredients: keys of the tables unchanged, one role each, unknown where no table has it."""

import pytest

from krume.base import NotFoundError
from krume.evidence import load, source
from krume.pantry import Ingredient, ingredient, ingredients
from krume.pantry.ingredients import (
    CLASSES,
    GAP_COLUMNS,
    INGREDIENT_COLUMNS,
    ROLES,
    SUPPLEMENT_COLUMNS,
)
from tests.agreement import agrees

NOT_GOODS = {"jp-appendix-values", "fdc-water-ash", "water-activity"}


def test_every_row_of_the_tables_is_an_ingredient_under_its_own_key() -> None:
    rows = (
        *load("ingredients.csv", INGREDIENT_COLUMNS),
        *load("supplement.csv", SUPPLEMENT_COLUMNS),
    )
    gaps = {row.text("key") for row in load("gaps.csv", GAP_COLUMNS)}
    keys = {row.text("key") for row in rows} | (gaps - NOT_GOODS)
    assert {item.key for item in ingredients()} == keys
    assert len(rows) == 505


def test_every_ingredient_has_one_role_a_class_and_a_label_name() -> None:
    for item in ingredients():
        assert item.role in ROLES, item.key
        assert item.kind in CLASSES, item.key
        assert item.label_name, item.key


@pytest.mark.parametrize(
    "key", ["xanthan-gum", "psyllium-husk", "guar-gum", "gelatin-leaf", "quark", "kirsch"]
)
def test_a_material_without_a_row_is_there_and_wholly_unknown(key: str) -> None:
    item = ingredient(key)
    assert item.composition.is_complete is False
    assert item.composition.water_g is None
    assert item.source == ""
    assert "composition unknown" in item.note
    assert "wanted:" in item.note


def test_a_measured_row_names_a_source_that_exists() -> None:
    for item in ingredients():
        if item.source:
            assert source(item.source).licence, item.key
            assert item.status == "published", item.key


@pytest.mark.parametrize(
    ("key", "role"),
    [
        ("flour-rice-white", "flour"),
        ("flour-chestnut-ciqual", "flour"),
        ("flour-soy-full-fat", "flour"),
        ("flour-chickpea", "flour"),
        ("starch-potato-ciqual", "starch"),
        ("hazelnuts", "nut"),
        ("flour-almond", "nut"),
        ("flour-coconut", "nut"),
        ("sunflower-kernels-dried", "nut"),
        ("cocoa-natural", "cocoa"),
        ("flour-carob", "cocoa"),
        ("xanthan-gum", "binder"),
        ("psyllium-husk", "binder"),
        ("lemon-juice", "acid"),
        ("cream-of-tartar", "acid"),
        ("vanilla-extract", "flavour"),
        ("water-tap", "water"),
        ("orange-juice", "liquid"),
        ("chocolate-dark-60-69", "chocolate"),
        ("rum-80-proof", "spirit"),
        ("gelatin-dry", "gel"),
        ("salt", "salt"),
        ("egg-yolk-fresh", "egg"),
        ("currant-black-raw", "fruit"),
    ],
)
def test_roles_are_those_of_a_balance(key: str, role: str) -> None:
    assert ingredient(key).role == role


def test_flour_is_flours_and_starches_and_nothing_else() -> None:
    assert {item.role for item in ingredients() if item.is_flour} == {"flour", "starch"}


def test_pure_starches_are_starches_and_sweet_rice_is_flour() -> None:
    assert all(item.role == "starch" for item in ingredients() if item.pure_starch)
    sweet = {item.key for item in ingredients() if item.sweet_rice}
    assert sweet == {
        "flour-rice-sweet-shiratama",
        "flour-rice-sweet-domyoji",
        "flour-rice-sweet-fdc",
    }


def test_juice_counts_as_liquid_and_lemon_juice_does_not() -> None:
    liquid = {item.key for item in ingredients() if item.liquid}
    assert {"milk-whole", "water-tap", "orange-juice", "coffee-brewed"} <= liquid
    assert not {"lemon-juice", "vanilla-extract", "vinegar-cider"} & liquid


def test_acids_and_leavenings_say_their_kind() -> None:
    acid = {item.key for item in ingredients() if item.acid}
    assert acid >= {"lemon-juice", "vinegar-cider", "cream-of-tartar"}
    assert ingredient("baking-powder-phosphate").leavening == "baking-powder"
    assert ingredient("baking-soda").leavening == "soda"
    assert ingredient("cream-of-tartar").leavening == "cream-of-tartar"


def test_butter_counts_82_of_100_as_fat_and_oil_all_of_it() -> None:
    assert ingredient("butter-82-ciqual").added_fat_pct == 82
    assert ingredient("oil-sunflower-linoleic").added_fat_pct == 100
    assert {item.role for item in ingredients() if item.added_fat_pct is not None} == {"fat"}
    assert all(item.added_fat_pct for item in ingredients() if item.role == "fat")


GLUTEN_ROWS = (
    *("flour-wheat-cake", "flour-wheat-all-purpose", "flour-wheat-bread"),
    *("flour-wheat-wholegrain", "flour-wheat-wholegrain-soft", "flour-rye-light", "flour-barley"),
    *("wheat-germ", "syrup-malt", "flour-wheat-soft-jp", "starch-wheat", "flour-wheat-t45-ciqual"),
    "flour-wheat-t55-ciqual",
)


def test_the_rows_that_hold_gluten_are_exactly_the_known_ones() -> None:
    grains = {i.key for i in ingredients() if i.gluten_grain in ("wheat", "rye", "barley")}
    assert grains == set(GLUTEN_ROWS)


def test_an_unknown_key_is_not_found_and_says_what_to_type() -> None:
    with pytest.raises(NotFoundError, match="Type its everyday name"):
        ingredient("moon-dust")


def test_one_s_own_ingredient_may_take_the_place_of_a_packed_key() -> None:
    mine = Ingredient("salt", "My salt", "salt", "spice", "salt", status="declared")
    assert ingredient("salt", own=(mine,)).name == "My salt"
    assert ingredient("salt").name == "Salt, table"


PRINTED = [
    ("egg-whole-fresh", "01123", ("76.15", "12.56", "9.51")),
    ("egg-white-fresh", "01124", ("87.57", "10.90", "0.17")),
    ("egg-yolk-fresh", "01125", ("52.31", "15.86", "26.54")),
    ("butter-salted", "01001", ("15.87", "0.85", "81.11")),
    ("butter-unsalted", "01145", ("17.94", "0.85", "81.11")),
    ("flour-sorghum-whole", "20648", ("10.26", "8.43", "3.34")),
    ("flour-millet", "20647", ("8.67", "10.75", "4.25")),
]


@pytest.mark.source("usda-sr28", "NUT_DATA, items 01123 to 20648: water, protein, fat")
@pytest.mark.parametrize(("key", "item", "printed"), PRINTED)
def test_rows_are_those_the_national_table_prints(
    key: str, item: str, printed: tuple[str, str, str]
) -> None:
    row = ingredient(key)
    assert row.source_id == item
    composition = row.composition
    for value, text in zip(
        (composition.water_g, composition.protein_g, composition.fat_g), printed, strict=True
    ):
        assert agrees(value, text)


@pytest.mark.source("usda-sr28", "FOOD_DES, item 01123: factors 4.36, 9.02, 3.68")
def test_specific_energy_factors_give_the_printed_energy_of_egg() -> None:
    egg = ingredient("egg-whole-fresh")
    factors, c = egg.factors, egg.composition
    assert factors is not None
    parts = [
        (c.protein_g, factors.kcal_per_g_protein),
        (c.fat_g, factors.kcal_per_g_fat),
        (c.carbohydrate_g, factors.kcal_per_g_carbohydrate),
    ]
    assert agrees(sum((g or 0.0) * (k or 0.0) for g, k in parts), "143.2")
