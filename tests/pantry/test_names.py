"""The tables of names: every name leads somewhere, and no name leads to two places at once."""

import itertools

import pytest

from krume.base import NotFoundError
from krume.evidence import load
from krume.pantry import find, ingredient, ingredients
from krume.pantry.names import (
    GOOD_COLUMNS,
    NAME_COLUMNS,
    index,
    percent_rows,
    questions,
    spellings,
)

NAMES = load("names.csv", NAME_COLUMNS, ("name", "rank"))


def exists(key: str) -> bool:
    try:
        ingredient(key)
    except NotFoundError:
        return False
    return True


def test_there_are_more_names_than_a_baker_will_type() -> None:
    assert len({row.text("name") for row in NAMES}) >= 1500


def test_every_name_leads_to_an_ingredient_or_to_a_question_never_both() -> None:
    lost = [
        row.text("name")
        for row in NAMES
        if bool(row.text("key")) == bool(row.text("ask"))
        or (row.text("key") and not exists(row.text("key")))
        or (row.text("ask") and row.text("ask") not in questions())
    ]
    assert lost == []


def test_no_spelling_has_two_preferred_meanings() -> None:
    meanings: dict[str, set[tuple[str, str]]] = {}
    for row in NAMES:
        if row.number_of("rank") == 1:
            for spelling in spellings(row.text("name")):
                meanings.setdefault(spelling, set()).add((row.text("key"), row.text("ask")))
    assert {s: found for s, found in meanings.items() if len(found) > 1} == {}


def test_ranks_of_a_name_count_on_from_one_preferred_row() -> None:
    ranks: dict[str, list[float]] = {}
    for row in NAMES:
        ranks.setdefault(row.text("name"), []).append(row.number_of("rank"))
    assert [name for name, found in ranks.items() if min(found) != 1] == []


def test_a_row_with_complete_figures_goes_before_one_with_gaps() -> None:
    wrong = []
    for meaning in index().exact.values():
        complete = [ingredient(key).composition.is_complete for key in meaning.keys]
        if complete and any(complete) and not complete[0]:
            wrong.append(meaning.name)
    assert wrong == []


def test_every_ingredient_can_be_named_by_its_label_name_or_another_word() -> None:
    named = {row.text("key") for row in NAMES}
    silent = {i.key for i in ingredients()} - named
    assert silent == set()


def test_a_good_is_never_a_name_of_the_pantry_too() -> None:
    pantry = {s for row in NAMES for s in spellings(row.text("name"))}
    goods = load("goods.csv", GOOD_COLUMNS, ("name",))
    assert [g.text("name") for g in goods if set(spellings(g.text("name"))) & pantry] == []


@pytest.mark.parametrize("ask", sorted(questions()))
def test_a_question_has_two_to_four_answers_that_lead_on(ask: str) -> None:

    question, choices = questions()[ask]
    assert question.endswith((".", "?"))
    assert 2 <= len(choices) <= 4
    for choice in choices:
        if choice.key is not None:
            assert find(choice.words).key == choice.key, choice.words


def test_percent_rows_of_one_group_do_not_overlap_and_lead_to_ingredients() -> None:
    rows = sorted(percent_rows(), key=lambda r: (r.group, r.low_pct))
    for row, following in itertools.pairwise(rows):
        assert row.low_pct < row.high_pct
        assert row.group != following.group or row.high_pct < following.low_pct
    assert all(exists(row.key) for row in rows)


def test_a_fat_row_chosen_by_percent_holds_about_that_fat() -> None:
    for row in percent_rows():
        fat = ingredient(row.key).composition.fat_g
        if row.quantity == "fat" and row.group not in ("thick-yoghurt", "yoghurt", "cocoa-powder"):
            assert fat is not None
            assert row.low_pct - 1 <= fat <= row.high_pct + 1, row.key


def test_no_qualifier_is_a_name_by_itself() -> None:
    alone = {q for q in index().qualifiers if q in index().exact}
    assert alone <= ALSO_NAMES


ALSO_NAMES = {"egg"}


def test_words_in_another_order_are_no_name_where_two_goods_share_them() -> None:

    assert index().bags["fructose", "glucose", "syrup"] is None
    assert find("glucose-fructose syrup").key == "syrup-glucose-fructose"
    assert find("fructose-glucose syrup").key == "syrup-fructose-glucose"
    assert find("syrup glucose fructose").kind != "known"
