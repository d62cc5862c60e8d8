"""The words of a record are taken apart, and a word that means nothing known stays unknown."""

import pytest

from krume.pantry import Lot, allergens_said, lot_words, says_gluten, without_share


def lot(notes: str, evidence: str = "specification") -> Lot:
    """A lot whose record says something."""
    return Lot("L", "goods", evidence, notes=notes)


@pytest.mark.parametrize(
    ("notes", "parts", "traces"),
    [
        ("soya lecithin; may contain milk, nuts", ("soya lecithin",), ("milk", "nuts")),
        ("may contain wheat", (), ("wheat",)),
        ("3 % maize starch", ("3 % maize starch",), ()),
        ("filler maize starch", ("maize starch",), ()),
        ("beef, 200 bloom; not a cereal", ("beef",), ()),
        ("blackcurrants, nothing else", ("blackcurrants",), ()),
        ("contains sugar and cocoa butter", ("sugar", "cocoa butter"), ()),
        ("", (), ()),
    ],
)
def test_parts_and_traces_are_told_apart(
    notes: str, parts: tuple[str, ...], traces: tuple[str, ...]
) -> None:
    words = lot_words(lot(notes))
    assert words.parts == parts
    assert words.may_contain == traces


def test_nothing_else_means_that_the_parts_are_all() -> None:
    assert lot_words(lot("blackcurrants, nothing else")).is_complete
    assert not lot_words(lot("blackcurrants")).is_complete


@pytest.mark.parametrize(
    ("notes", "animal"), [("beef, 200 bloom", "beef"), ("fish", "fish"), ("200 bloom", None)]
)
def test_the_animal_is_only_what_the_record_says(notes: str, animal: str | None) -> None:
    assert lot_words(lot(notes)).animal == animal


def test_words_of_a_test_name_no_parts() -> None:
    assert lot_words(lot("lab test of the lot", "lab-test")).parts == ()


@pytest.mark.parametrize(
    "notes", ["may contain wheat", "may contain barley", "contains wheat starch", "malt; sugar"]
)
def test_gluten_in_the_words_is_seen(notes: str) -> None:
    assert says_gluten(lot(notes))


@pytest.mark.parametrize("notes", ["maize starch", "buckwheat", "may contain milk, nuts"])
def test_what_is_no_gluten_grain_is_none(notes: str) -> None:
    assert not says_gluten(lot(notes))


def test_an_allergen_of_a_record_is_declared_in_each_markets_word() -> None:
    assert [a.word("us") for a in allergens_said("nuts")] == ["tree nuts"]
    assert [a.word("eu") for a in allergens_said("soya lecithin")] == ["soybean"]


def test_a_word_that_means_nothing_known_is_unknown_and_never_none() -> None:
    assert [a.presence for a in allergens_said("flavour base 7")] == ["unknown"]


def test_a_share_before_a_part_is_no_word_of_it() -> None:
    assert without_share("3 % maize starch") == "maize starch"


@pytest.mark.parametrize("notes", ["blackcurrants, nothing else known", "nothing else is tested"])
def test_nothing_else_known_is_not_nothing_else(notes: str) -> None:
    assert not lot_words(lot(notes)).is_complete


@pytest.mark.parametrize("sign", ["\u00ad", "\u200b", "\u2060"])
def test_a_sign_that_is_not_seen_hides_no_grain(sign: str) -> None:
    assert says_gluten(lot(f"may contain wh{sign}eat"))
    assert says_gluten(lot(f"wh{sign}eat", "bag-words"))


def test_a_denial_does_not_reach_into_the_warning_behind_it() -> None:
    words = lot_words(lot("without peanuts, may contain traces of sesame"))
    assert words.denies == ("peanuts",)
    assert words.may_contain == ("sesame",)


@pytest.mark.parametrize(
    ("notes", "clean"),
    [("specially produced", True), ("not specially produced", False),
     ("gluten-free oats", True), ("cannot be sold as gluten-free oats", False)],
)  # fmt: skip
def test_oats_that_were_not_kept_apart_are_not_clean(notes: str, clean: bool) -> None:
    assert lot_words(lot(notes)).says_clean_oats is clean
