"""Allergens by market: what is printed in the laws, and what only a supplier can say."""

import pytest

from krume.base import InputError
from krume.calc import answer, run
from tests.agreement import reads


@pytest.mark.source("falcpa", "nine allergens, with the list of nuts: R13a, R13b, R13d")
@pytest.mark.parametrize(
    ("words", "declared"),
    [("coconut", ""), ("pine nuts", "tree nut (pine nut)"), ("barley malt", ""),
     ("lupin flour", ""), ("sesame", "sesame"), ("egg", "egg"), ("butter", "milk"),
     ("ground hazelnuts", "tree nut (hazelnut)")],
)  # fmt: skip
def test_the_us_declares_what_is_printed(words: str, declared: str) -> None:
    found = run("allergens", ingredients=[words], market="us")["contains"]
    assert isinstance(found, list)
    assert reads(",".join(map(str, found)), declared)


@pytest.mark.source("eu-1169-2011", "annex II: R13c, R13d")
@pytest.mark.parametrize(
    ("words", "declared"),
    [("coconut", ""), ("pine nuts", ""), ("barley malt", "cereals containing gluten (barley)"),
     ("lupin flour", "lupin"), ("sesame", "sesame"), ("egg", "egg"), ("butter", "milk"),
     ("ground hazelnuts", "nuts (hazelnut)")],
)  # fmt: skip
def test_the_eu_declares_what_is_printed(words: str, declared: str) -> None:
    found = run("allergens", ingredients=words, market="eu")["contains"]
    assert isinstance(found, list)
    assert reads(",".join(map(str, found)), declared)


def test_what_only_a_supplier_can_say_is_named() -> None:
    found = answer("allergens", {"ingredients": "egg, moon dust", "market": "eu"})
    assert found.values == {"contains": ["egg"], "unknown": ["moon dust"]}
    assert "moon dust" in found.notices[0].text


def test_goods_that_share_a_name_and_their_allergens_need_no_question() -> None:
    found = run("allergens", ingredients="rice flour", market="us")
    assert found == {"contains": [], "unknown": []}


def test_a_key_of_the_pantry_is_read_too_and_words_are_named_once() -> None:
    found = run("allergens", ingredients=["egg-whole-fresh", "eggs", "butter"], market="us")
    assert found["contains"] == ["egg", "milk"]


def test_another_market_is_refused() -> None:
    with pytest.raises(InputError, match="us, eu"):
        run("allergens", ingredients="egg", market="moon")


@pytest.mark.parametrize("key", ["butter-82-ciqual", "oil-sunflower-linoleic"])
def test_every_key_an_answer_prints_may_be_typed(key: str) -> None:
    found = answer("allergens", {"ingredients": key, "market": "eu"})
    assert found.values["unknown"] == []


@pytest.mark.parametrize(
    ("words", "market", "contains", "unknown"),
    [
        ("oats, wheat flour, walnut", "au-nz", ["gluten", "wheat", "walnut"], []),
        ("rye flour, mustard, soybeans", "ca", ["rye", "mustard", "soybean"], []),
        ("pine nuts, celery", "uk", ["celery"], []),
        ("lecithin, soya lecithin", "eu", ["soybean"], ["lecithin"]),
        ("E322, E471", "eu", [], ["E322"]),
        ("gluten-free wheat starch", "us", ["wheat"], []),
        ("black sesame paste plain, soya beans", "us", ["sesame", "soybean"], []),
        ("almond extract, release spray", "eu", [], ["almond extract", "release spray"]),
        ("sodium metabisulphite", "eu", ["sulphites"], []),
        ("gold leaf, cake board", "eu", [], []),
    ],
)
def test_every_market_answers_by_its_own_list_and_nothing_is_read_as_none(
    words: str, market: str, contains: list[str], unknown: list[str]
) -> None:
    found = run("allergens", ingredients=words, market=market)
    assert found == {"contains": contains, "unknown": unknown}


def test_what_is_not_complete_is_said_before_all_else() -> None:
    found = answer("allergens", {"ingredients": "coconut, zorb, cake board", "market": "us"})
    assert found.notices[0].code == "unknown"
    told = " ".join(notice.text for notice in found.notices)
    assert "Coconut left the US list" in told
    assert "cake board: not food" in told


def test_the_source_of_a_list_is_that_of_its_market() -> None:
    found = answer("allergens", {"ingredients": "milk", "market": "ca"})
    assert "ca-fdr-b01" in found.sources


@pytest.mark.parametrize(
    "words", ["starch", "oil", "vegetable oil", "cider", "hazelnut brittle", "oat cream"]
)
def test_a_name_that_leaves_an_allergen_open_is_named(words: str) -> None:
    found = answer("allergens", {"ingredients": words, "market": "eu"})
    assert found.values["unknown"] == [words]


def test_oat_cream_is_oat_and_no_soya() -> None:
    found = run("allergens", ingredients="oat cream", market="eu")
    assert found["contains"] == ["cereals containing gluten (oat)"]
