"""Which goods need a record, and how a record stands on a day."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.pantry import (
    STATES,
    Lot,
    find,
    lots_of,
    read_lots,
    record_need,
    record_state,
)
from krume.usecases.book.book import demo_files

DAY = date(2027, 6, 10)
HEAD = "lot,ingredient,evidence,text,result_mg_kg,from,valid_to\n"


def demo_lots() -> dict[str, Lot]:
    """Lots of the demo studio by name."""
    read = read_lots(demo_files()["lots.csv"].decode("utf-8"))
    assert read.problems == ()
    return {lot.key: lot for lot in read.value}


def lot(row: str) -> Lot:
    """The lot of one row."""
    return read_lots(HEAD + row + "\n").value[0]


@pytest.mark.parametrize(
    ("state", "keys"),
    [
        ("good", "L-001 L-003 L-005 L-006 L-007 L-009 L-010 L-014 L-016 L-018"),
        ("missing", "L-002 L-011 L-012 L-013"),
        ("expired", "L-004"),
        ("conflict", "L-008"),
        ("not-needed", "L-015 L-017"),
    ],
)
def test_each_lot_of_the_demo_stands_as_its_table_says(state: str, keys: str) -> None:
    lots = demo_lots()
    assert {lots[key].key: record_state(lots[key], on=DAY) for key in keys.split()} == (
        dict.fromkeys(keys.split(), state)
    )


@pytest.mark.parametrize(
    "words",
    "egg;caster sugar;butter;whole milk;whipping cream;thick yoghurt;lemon juice;orange zest;"
    "fine salt;water;cinnamon;powdered gelatine;strawberries".split(";"),
)
def test_what_is_on_the_plain_list_needs_no_record(words: str) -> None:
    assert not record_need(words, find(words).key).is_needed


@pytest.mark.parametrize(
    "words",
    "rice flour, white;potato starch;ground almonds;xanthan gum;baking powder;dark chocolate;"
    "icing sugar;vanilla extract;sunflower oil;honey;cocoa powder;oats;jam;plant cream".split(";"),
)
def test_what_is_named_or_on_neither_list_needs_one(words: str) -> None:
    assert record_need(words, find(words).key).is_needed


def test_what_the_pantry_does_not_know_needs_one() -> None:
    assert record_need("moon dust", None).is_needed
    assert record_need("moon dust", "no-such-key").is_needed


def test_a_puree_counts_as_fruit_only_where_its_lot_says_nothing_else_is_in_it() -> None:
    key = find("blackcurrant puree").key
    assert not record_need("blackcurrant puree", key, lot=demo_lots()["L-017"]).is_needed
    assert record_need("blackcurrant puree", key).is_needed


@pytest.mark.parametrize(
    ("result", "kind", "eu", "us"),
    [
        ("20", "lab test", "good", "conflict"),
        ("<20", "lab test", "good", "good"),
        ("19.9", "lab test", "good", "good"),
        ("≤20", "certificate", "good", "good"),
        ("<=20", "certificate", "good", "good"),
        ("20.1", "lab test", "conflict", "conflict"),
        ("≤25", "certificate", "conflict", "conflict"),
        ("", "lab test", "missing", "missing"),
    ],
)
def test_each_market_reads_its_own_limit(result: str, kind: str, eu: str, us: str) -> None:
    found = lot(f"L,teff flour,{kind},,{result},2027-01-01,2028-01-01")
    assert record_state(found, on=DAY, market="eu") == eu
    assert record_state(found, on=DAY, market="us") == us


@given(st.integers(-800, 800))
def test_a_record_holds_on_the_days_from_its_first_to_its_last_and_on_no_other(off: int) -> None:
    found = lot("L,teff flour,lab test,,5,2027-01-01,2028-01-01")
    day = DAY + timedelta(days=off)
    want = "good"
    if day < date(2027, 1, 1):
        want = "not-yet-valid"
    elif day > date(2028, 1, 1):
        want = "expired"
    assert record_state(found, on=day) == want


@given(st.sampled_from(["wheat", "rye flour", "barley malt", "spelt", "wheat starch"]))
def test_no_record_opens_a_lot_whose_words_name_a_gluten_grain(grain: str) -> None:
    found = lot(f"L,teff flour,lab test,may contain {grain},<5,2027-01-01,2028-01-01")
    assert record_state(found, on=DAY) == "conflict"


def test_wheat_flour_is_in_conflict_whatever_its_test_says() -> None:
    found = lot("L,wheat flour,lab test,,<5,2027-01-01,2028-01-01")
    assert record_state(found, on=DAY) == "conflict"


def test_oats_need_a_record_that_says_they_were_kept_clean() -> None:
    plain = lot("L,oats,lab test,,<5,2027-01-01,2028-01-01")
    clean = lot("L,oats,lab test,specially produced gluten-free oats,<5,2027-01-01,2028-01-01")
    assert record_state(plain, on=DAY) == "missing"
    assert record_state(clean, on=DAY) == "good"


def test_a_lot_without_a_day_is_never_good() -> None:
    assert record_state(lot("L,teff flour,lab test,,5,,2028-01-01"), on=DAY) == "missing"
    assert record_state(lot("L,teff flour,lab test,,5,2027-01-01,"), on=DAY) == "missing"


def test_lots_are_found_by_what_the_words_mean() -> None:
    lots = tuple(demo_lots().values())
    found = lots_of("hazelnuts, toasted and ground", find("hazelnuts").key, lots)
    assert [each.key for each in found] == ["L-008"]
    assert lots_of("saffron", find("saffron").key, lots) == ()


def test_every_state_is_one_of_the_words() -> None:
    lots = demo_lots().values()
    assert {record_state(each, on=DAY) for each in lots} <= set(STATES)


@pytest.mark.parametrize("name", ["barley malt", "rye bread", "spelt flour", "wheat starch"])
def test_goods_named_after_a_gluten_grain_are_in_conflict_whatever_their_test_says(
    name: str,
) -> None:
    found = lot(f"L,{name},lab test,,<5,2027-01-01,2028-01-01")
    assert record_state(found, on=DAY) == "conflict"


@pytest.mark.parametrize("name", ["buckwheat flour", "gluten free baking powder"])
def test_a_name_that_only_sounds_like_one_is_not(name: str) -> None:
    found = lot(f"L,{name},lab test,,<5,2027-01-01,2028-01-01")
    assert record_state(found, on=DAY) == "good"
