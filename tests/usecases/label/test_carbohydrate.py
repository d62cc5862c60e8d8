"""The carbohydrate of a slice in words, with its fibre or without, and its caution."""

from dataclasses import replace

import pytest

from krume.pantry import Ingredient
from krume.usecases.label.carbohydrate import carbohydrate_of
from krume.usecases.label.nutrition import AS_PLANNED, nutrition_of
from tests.label.studio import of, product

NO_SHEETS: dict[str, Ingredient] = {}


@pytest.mark.parametrize(
    ("law", "words", "others"),
    [("us", "is counted in", "is not counted"), ("eu", "is not counted", "is counted in")],
)
def test_it_says_whether_the_fibre_is_in_it(law: str, words: str, others: str) -> None:
    found = carbohydrate_of(product("T1"), NO_SHEETS, law, (12, 14), is_open=True)
    assert found.fibre_is_in == (law == "us")
    assert [each.count for each in found.slices] == [12, 14]
    assert all(words in each.text and others not in each.text for each in found.slices)
    assert found.text == " ".join(each.text for each in found.slices)


@pytest.mark.parametrize("name", ["T1", "T2", "TART", "F1"])
def test_a_figure_never_stands_without_its_ends_and_the_caution(name: str) -> None:
    found = carbohydrate_of(product(name), NO_SHEETS, "eu", (12,), is_open=True)
    (only,) = found.slices
    low, high = only.text.split("from ")[1].split(" g;")[0].split(" to ")
    assert int(low) <= only.without_fibre_g.low
    assert int(high) >= only.without_fibre_g.high
    assert "weighs the slice" in found.caution
    assert "insulin" in found.caution


def test_without_slices_it_is_told_of_100_g_with_its_ends() -> None:
    found = carbohydrate_of(product("F1"), NO_SHEETS, "eu", (), is_open=True)
    assert found.slices == ()
    assert found.text.startswith("Carbohydrate in 100 g: about ")
    assert " from " in found.text


def test_what_the_panel_does_not_know_no_slice_knows() -> None:
    made = of("Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n30 g zorb powder\n")
    eaten = nutrition_of(replace(made, slices=(8,)), NO_SHEETS, "eu", AS_PLANNED).nutrition
    assert eaten is not None
    assert eaten.carbohydrate_g is None
    assert eaten.carbohydrate is not None
    assert eaten.carbohydrate.slices == ()
    assert eaten.carbohydrate.per_100_g is None
    assert "not known" in eaten.carbohydrate.text
