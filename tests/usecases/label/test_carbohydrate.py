"""The carbohydrate of a slice in words, with its fibre or without, and its caution."""

from dataclasses import replace

import pytest

from krume.label import NutrientSum, Product, nutrient_sums
from krume.pantry import Ingredient
from krume.usecases.label.carbohydrate import carbohydrate_of
from krume.usecases.label.nutrition import AS_PLANNED, nutrition_of
from krume.usecases.label.result import LabelCarbohydrate
from tests.label.studio import of, product

NO_SHEETS: dict[str, Ingredient] = {}
CREAM = "Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n{gum} g xanthan gum\n"


def sums_of(made: Product, law: str) -> dict[str, NutrientSum]:
    """Nutrients of a product whose masses are known."""
    found = nutrient_sums(made, market=law)
    assert found is not None
    return found


def told(made: Product, law: str, *counts: int) -> LabelCarbohydrate:
    """What is told of slices of a product."""
    return carbohydrate_of(made, NO_SHEETS, law, counts, sums_of(made, law))


@pytest.mark.parametrize(
    ("law", "words", "others"),
    [("us", "is counted in", "is not counted"), ("eu", "is not counted", "is counted in")],
)
def test_it_says_whether_the_fibre_is_in_it(law: str, words: str, others: str) -> None:
    found = told(product("T1"), law, 12, 14)
    assert found.fibre_is_in == (law == "us")
    assert [each.count for each in found.slices] == [12, 14]
    assert all(words in each.text and others not in each.text for each in found.slices)
    assert found.text == " ".join(each.text for each in found.slices)


@pytest.mark.parametrize("name", ["T1", "T2", "TART", "F1"])
def test_a_figure_never_stands_without_its_ends_and_the_caution(name: str) -> None:
    found = told(product(name), "eu", 12)
    (only,) = found.slices
    low, high = only.text.split("from ")[1].split(" g;")[0].split(" to ")
    assert int(low) <= only.without_fibre_g.low
    assert int(high) >= only.without_fibre_g.high
    assert "weighs the slice" in found.caution
    assert "insulin" in found.caution


def test_without_slices_it_is_told_of_100_g_with_its_ends() -> None:
    found = told(product("F1"), "eu")
    assert found.slices == ()
    assert found.text.startswith("Carbohydrate in 100 g: about ")
    assert " from " in found.text


def test_goods_without_a_row_leave_the_slice_unknown_by_name() -> None:
    made = of("Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n30 g zorb powder\n")
    eaten = nutrition_of(replace(made, slices=(8,)), NO_SHEETS, "eu", AS_PLANNED).nutrition
    assert eaten is not None
    assert eaten.carbohydrate_g is None
    assert eaten.carbohydrate is not None
    assert eaten.carbohydrate.slices == ()
    assert eaten.carbohydrate.per_100_g is None
    assert eaten.carbohydrate.text == "Carbohydrate: not known (zorb powder)."


@pytest.mark.parametrize(
    ("gum", "is_told"), [(0.5, True), (11.9, True), (12.1, False), (20.0, False)]
)
def test_blanks_that_leave_three_grams_of_a_slice_open_close_it_by_name(
    gum: float, *, is_told: bool
) -> None:
    found = told(of(CREAM.format(gum=gum)), "us", 4)
    assert bool(found.slices) == is_told
    assert ("xanthan gum" in found.text) == (gum > 2)
    assert ("Not wholly known" in found.text) == (is_told and gum > 2)


def test_the_largest_slice_decides_whether_it_is_told() -> None:
    made = of(CREAM.format(gum=9.0))
    assert told(made, "us", 8, 4).slices
    assert told(made, "us", 8, 2).slices == ()


def test_a_fibre_that_is_not_known_is_told_between_its_ends() -> None:
    text = told(of(CREAM.format(gum=2.0)), "us", 4).text
    assert "fibre (0 to 0.5 g) is counted in" in text
