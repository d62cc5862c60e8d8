"""krume.pantry.open_kinds: a name that leaves its kind open is no name of one kind."""

import pytest

from krume.evidence import load
from krume.pantry import allergens_of_words, find
from krume.pantry.names import index, spellings
from krume.pantry.open_kinds import OPEN_COLUMNS, kind_wanted


@pytest.mark.parametrize("name", ["oil", "vegetable oil", "Öl", "Pflanzenöl", "neutral oil"])
def test_oil_without_its_kind_may_be_an_allergen(name: str) -> None:
    assert find(name).key is not None
    assert "unknown" in [each.presence for each in allergens_of_words(name)]


@pytest.mark.parametrize("name", ["sunflower oil", "rapeseed oil", "olive oil", "cornstarch"])
def test_goods_that_are_named_leave_nothing_open(name: str) -> None:
    assert kind_wanted(name) == find(name).wanted == ""
    assert allergens_of_words(name) == ()


def test_a_name_with_words_beside_it_stays_open() -> None:
    assert find("neutral oil, warm").wanted == find("neutral oil").wanted != ""


def test_each_open_name_is_a_name_of_the_pantry() -> None:
    names = [
        n for row in load("open_kinds.csv", OPEN_COLUMNS) for n in row.text("words").split(";")
    ]
    assert [name for name in names if spellings(name)[0] not in index().exact] == []
