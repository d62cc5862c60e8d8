"""Words of a bag: what they bring, and nothing that is not known read as none."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.pantry import allergen_names, allergens_said, listed_allergens


def told(words: str) -> list[str]:
    return [each.allergen or each.presence for each in allergens_said(words)]


@pytest.mark.parametrize(
    ("words", "held"),
    [
        ("nuts", ["tree nut"]),
        ("Soya", ["soybean"]),
        ("3 % maize starch", []),
        ("milk protein", ["milk"]),
        ("shellfish", ["crustacean", "mollusc"]),
        ("emulsifier (soya lecithin, E476)", ["soybean"]),
        ("emulsifiers: sunflower lecithin", []),
        ("chocolate (sugar, cocoa mass, whole milk powder)", ["milk"]),
        ("E322", ["unknown"]),
        ("lecithin", ["unknown"]),
        ("natural flavouring", ["unknown"]),
        ("zorb", ["unknown"]),
        ("hazelnuts 12 %", ["hazelnut"]),
        ("spelt", ["wheat"]),
        ("sodium metabisulphite", ["sulphites"]),
        ("", ["unknown"]),
    ],
)
def test_words_bring_what_they_name_and_what_is_not_known_stays_so(
    words: str, held: list[str]
) -> None:
    assert told(words) == held


@given(st.text(alphabet="bcdfghjklmnpqrstvwxyz ", min_size=6, max_size=30))
def test_letters_that_name_nothing_are_never_read_as_none(words: str) -> None:
    assert told(f"qx{words}") != []


@given(st.sampled_from(["milk", "soya lecithin", "hazelnuts"]), st.integers(1, 60))
def test_a_share_before_a_word_changes_nothing_it_brings(word: str, share: int) -> None:
    assert told(f"{share} % {word}") == told(word)


def test_the_names_that_say_an_allergen_are_its_own() -> None:
    assert "soya" in allergen_names("soybean")
    assert allergen_names("moon") == ()
    assert all(isinstance(allergen_names(name), tuple) for name in listed_allergens())
