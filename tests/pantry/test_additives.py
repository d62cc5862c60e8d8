"""Additives by name and by number, their classes, and what they may bring."""

import pytest

from krume.pantry import additive_kinds, additive_named, additive_of, ingredients


@pytest.mark.parametrize(
    ("words", "number", "kind"),
    [
        ("xanthan gum", "E415", "thickener"),
        ("Cream of tartar", "E336", "raising agent"),
        ("e 471", "E471", "emulsifier"),
        ("E-330", "E330", "acid"),
        ("gold leaf", "E175", "colour"),
    ],
)
def test_an_additive_is_found_by_its_name_and_by_its_number(
    words: str, number: str, kind: str
) -> None:
    found = additive_named(words)
    assert found is not None
    assert (found.number, found.kind) == (number, kind)


def test_the_number_of_lecithin_does_not_say_of_what_it_is() -> None:
    assert [getattr(additive_named(w), "allergens", 0) for w in ("E322", "lecithin")] == [None] * 2
    soya, sunflower = additive_named("soya lecithin"), additive_named("sunflower lecithin")
    assert soya is not None
    assert sunflower is not None
    assert (soya.allergens, sunflower.allergens) == (("soybean",), ())


@pytest.mark.parametrize("number", ["E220", "E223", "E224"])
def test_every_sulphite_brings_sulphites(number: str) -> None:
    found = additive_named(number)
    assert found is not None
    assert found.allergens == ("sulphites",)


@pytest.mark.parametrize("words", ["sugar", "E999", "", "egg", "E", "415"])
def test_a_food_or_a_number_of_nothing_is_no_additive(words: str) -> None:
    assert additive_named(words) is None


def test_a_row_of_the_pantry_is_one_additive_or_a_food() -> None:
    found = {item.key: additive_of(item.key) for item in ingredients()}
    held = {key: each.number for key, each in found.items() if each is not None}
    assert held["agar-dried"] == "E406"
    assert held["seed-gums-guar-locust"] == "E412, E410"
    assert found["gelatin-dry"] is None
    assert found["flour-rice-white"] is None


def test_classes_are_known_as_one_and_as_several() -> None:
    assert {"emulsifier", "emulsifiers", "raising agents"} <= additive_kinds()


def test_a_colour_that_needs_a_warning_carries_it() -> None:
    red = additive_named("E129")
    assert red is not None
    assert "children" in red.must_say
