"""The lists of allergens, market by market, as their laws print them."""

import pytest

from krume.pantry import MARKETS, allergens_of_words
from krume.pantry.markets import (
    declared,
    declared_words,
    is_tree_nut,
    listed_allergens,
    market_list,
)
from tests.agreement import reads

GENERAL = {"tree nut", "gluten", "triticale"}
EU_NUTS = "Brazil nut, almond, cashew, hazelnut, macadamia, pecan, pistachio, walnut"


def names(market: str, *, status: str = "") -> set[str]:
    rows = market_list(market)
    return {name for name, found in rows if not status or found.status == status} - GENERAL


def listed(found: set[str]) -> str:
    return ", ".join(sorted(found))


@pytest.mark.source("fda-allergen-guidance-5", "table 1")
def test_the_us_has_nine_groups_and_the_twelve_nuts_of_the_guidance() -> None:
    nuts = {name for name in names("us") if declared_words(name, "us")[0].startswith("tree nut")}
    assert reads(
        listed(nuts),
        "Brazil nut, California walnut, almond, black walnut, cashew, hazelnut, heartnut, "
        "macadamia, pecan, pine nut, pistachio, walnut",
    )
    others = "crustacean, egg, fish, milk, peanut, sesame, soybean, wheat"
    assert reads(listed(names("us") - nuts), others)


@pytest.mark.source("eu-1169-2011", "annex II")
@pytest.mark.parametrize("market", ["eu", "uk"])
def test_the_union_and_the_kingdom_have_fourteen_groups(market: str) -> None:
    printed = names(market, status="published")
    groups = {word.partition(" (")[0] for name in printed for word in declared_words(name, market)}
    assert reads(
        listed(groups),
        "celery, cereals containing gluten, crustaceans, egg, fish, lupin, milk, molluscs, "
        "mustard, nuts, peanut, sesame, soybean, sulphites",
    )
    assert reads(listed({name for name in printed if is_tree_nut(name)}), EU_NUTS)
    grains = {n for n in printed if declared_words(n, market)[0].startswith("cereals")}
    assert reads(listed(grains), "barley, oat, rye, wheat")


@pytest.mark.source("ca-fdr-b01", "B.01.010.1")
def test_canada_names_each_nut_and_each_source_of_gluten() -> None:
    printed = names("ca", status="published")
    nuts = "Brazil nut, almond, cashew, hazelnut, macadamia, pecan, pine nut, pistachio, walnut"
    assert reads(listed({n for n in printed if is_tree_nut(n)}), nuts)
    assert reads(
        listed({n for n in printed if not is_tree_nut(n)}),
        "barley, crustacean, egg, fish, milk, mollusc, mustard, oat, peanut, rye, sesame, "
        "soybean, sulphites, wheat",
    )
    assert reads("; ".join(declared_words("triticale", "ca")), "triticale")


@pytest.mark.parametrize(
    ("allergen", "words", "named"),
    [
        ("wheat", ("wheat", "gluten"), "wheat"),
        ("oat", ("gluten",), "oats"),
        ("soybean", ("soy",), "soy"),
        ("hazelnut", ("hazelnut",), "hazelnut"),
        ("lupin", ("lupin",), "lupin"),
    ],
)
def test_plain_names_stand_in_australia_and_new_zealand(
    allergen: str, words: tuple[str, ...], named: str
) -> None:
    found = declared(allergen, "au-nz")
    assert found is not None
    assert (found.words, found.named) == (words, named)


@pytest.mark.parametrize(
    ("goods", "us", "eu", "ca", "au_nz"),
    [
        ("coconut", "", "", "", ""),
        ("pine nuts", "tree nut (pine nut)", "", "pine nut", "pine nut"),
        ("oats", "", "cereals containing gluten (oat)", "oat", "gluten"),
        ("rye flour", "", "cereals containing gluten (rye)", "rye", "gluten"),
        ("lupin flour", "", "lupin", "", "lupin"),
        ("celery", "", "celery", "", ""),
        ("mustard", "", "mustard", "mustard", ""),
        ("oysters", "", "molluscs", "molluscs", "mollusc"),
        ("heartnut", "tree nut (heartnut)", "nuts (walnut)", "walnut", "walnut"),
    ],
)
def test_the_lists_differ_where_their_laws_differ(
    goods: str, us: str, eu: str, ca: str, au_nz: str
) -> None:
    found = allergens_of_words(goods)
    words = {m: "; ".join(w for a in found for w in a.words(m)) for m in MARKETS}
    assert words == {"us": us, "eu": eu, "uk": eu, "ca": ca, "au-nz": au_nz}


def test_every_row_says_since_when_and_a_market_that_is_not_held_declares_nothing() -> None:
    for market in MARKETS:
        for name, found in market_list(market):
            assert len(found.since) == len("2025-01-06"), (market, name)
            assert found.words
    assert declared("milk", "moon") is None
    assert "milk" in listed_allergens()


def test_peanut_and_coconut_are_no_nuts_of_a_tree() -> None:
    assert not is_tree_nut("peanut")
    assert not is_tree_nut("coconut")
    assert is_tree_nut("tree nut")
