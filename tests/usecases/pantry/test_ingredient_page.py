"""One ingredient of the packed pantry: found by everyday words, unknown stays unknown."""

from pathlib import Path

import pytest

from krume.base import NotFoundError
from krume.usecases import Asked, ingredient_now, ingredients_found
from krume.usecases.pantry.ingredient_page import Content


def _contents(asked: Asked, name: str) -> dict[str, Content]:
    return {each.name: each for each in ingredient_now(name, asked).contents}


def test_everyday_words_and_the_key_are_one_ingredient(demo: Asked) -> None:
    assert (
        ingredient_now("buckwheat flour", demo).key == ingredient_now("flour-buckwheat", demo).key
    )


def test_a_figure_is_as_its_source_prints_it_and_a_blank_is_not_known(demo: Asked) -> None:
    found = _contents(demo, "flour-rice-white")
    assert (found["protein"].amount, found["protein"].unit) == (5.95, "g")
    assert (found["sodium"].amount, found["sodium"].unit) == (0, "mg")
    assert found["starch"].amount is None
    assert "maltose" not in found


def test_its_papers_stand_beside_it(demo: Asked) -> None:
    now = ingredient_now("flour-rice-white", demo)
    assert now.source is not None
    assert (now.source.key, now.source_id, now.status) == ("usda-sr28", "20061", "published")
    assert now.need.is_needed
    assert not now.is_own


def test_what_no_table_has_is_said_to_be_unknown(demo: Asked) -> None:
    found = next(
        now
        for row in ingredients_found("starch").rows
        if (now := ingredient_now(row.key, demo)).source is None
    )
    assert all(each.amount is None for each in found.contents)
    assert found.status == "assumed"
    assert "wanted" in found.note


def test_a_suppliers_sheet_goes_before_the_table(own_demo: Asked) -> None:
    assert own_demo.book is not None
    folder = own_demo.book / "suppliers"
    folder.mkdir()
    sheet = "Name: white rice flour\nClass: flour\nProtein: 7.1 g\nFat: 1.0 g\n"
    Path(folder / "rice.txt").write_text(sheet, encoding="utf-8")
    now = ingredient_now("flour-rice-white", own_demo)
    found = {each.name: each.amount for each in now.contents}
    assert now.is_own
    assert found["protein"] == 7.1
    assert found["fibre"] is None


@pytest.mark.parametrize("name", ["quuxflour", "../lots.csv", "x" * 300])
def test_what_is_not_there_is_not_found(demo: Asked, name: str) -> None:
    with pytest.raises(NotFoundError):
        ingredient_now(name, demo)


def test_a_search_has_what_the_words_mean_first(demo: Asked) -> None:
    found = ingredients_found("butter")
    assert found.rows[0].key == ingredient_now("butter", demo).key
    assert len(found.rows) > 5
    assert all("butter" in f"{row.key} {row.name} {row.label_name}".casefold()
               for row in found.rows)  # fmt: skip


def test_a_name_of_several_goods_is_asked() -> None:
    assert "potato" in ingredients_found("potato flour").question.casefold()


def test_nothing_typed_finds_nothing_and_much_is_cut_and_counted() -> None:
    assert ingredients_found("  ").rows == ()
    many = ingredients_found("a")
    assert len(many.rows) == 60
    assert many.more > 0


def test_each_market_says_what_its_list_has_of_the_goods(demo: Asked) -> None:
    found = {each.market: each.words for each in ingredient_now("ground hazelnuts", demo).lists}
    assert found["us"] == ("tree nut (hazelnut)",)
    assert found["eu"] == found["uk"] == ("nuts (hazelnut)",)
    assert found["ca"] == found["au-nz"] == ("hazelnut",)
    assert ingredient_now("white rice flour", demo).lists == ()


def test_what_the_books_market_does_not_list_is_told(demo: Asked) -> None:
    assert any("Buckwheat" in text for text in ingredient_now("buckwheat flour", demo).beside)
    assert any("Pine nut" in text for text in ingredient_now("pine nuts", demo).beside)
    assert ingredient_now("butter", demo).beside == ()
