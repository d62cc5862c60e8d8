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
    record_standings,
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


def papers(*rows: str) -> Lot:
    """One lot of teff with several papers: evidence, text, result, from, valid to."""
    lots = read_lots(HEAD + "".join(f"L,teff flour,{row}\n" for row in rows)).value
    assert len(lots) == 1
    return lots[0]


TEST = "lab test,,<5,2027-01-01,2028-01-01"
SHEET = "specification,whole grain teff,,2026-01-01,"
OLD = "certificate,,≤20,2026-01-01,2027-01-01"
NEXT = "lab test,,<5,2027-07-01,2028-07-01"


@pytest.mark.parametrize(
    ("rows", "state"),
    [
        ((TEST, SHEET), "good"),
        ((SHEET, TEST), "good"),
        ((OLD, TEST), "good"),
        ((OLD, SHEET), "expired"),
        ((NEXT, SHEET), "not-yet-valid"),
        ((OLD, NEXT), "expired"),
        ((SHEET, "words on the bag,naturally so,,,"), "missing"),
        ((TEST, "certificate,,≤20,2027-01-01,2028-01-01"), "good"),
    ],
)
def test_one_good_paper_in_force_is_enough_while_none_speaks_against_it(
    rows: tuple[str, ...], state: str
) -> None:
    assert record_state(papers(*rows), on=DAY) == state


@pytest.mark.parametrize(
    "row",
    [
        "specification,may contain wheat,,2026-01-01,",
        "may contain,wheat and soya,,2026-01-01,2026-02-01",
        "words on the bag,allergens: barley,,,",
        "own handling,scooped with the wheat scoop,,2027-06-01,",
        "doubt,the bag stood open on a wheat day,,2027-06-09,",
        "doubt,,,,",
        "lab test,,35,2026-01-01,2026-06-01",
        "lab test,,>80,2026-01-01,2026-06-01",
    ],
)
def test_what_speaks_against_a_lot_is_not_outweighed_and_does_not_run_out(row: str) -> None:
    assert record_state(papers(TEST, row), on=DAY) == "conflict"
    assert record_state(papers(row, TEST), on=DAY) == "conflict"


@pytest.mark.parametrize(
    "row",
    [
        "own handling,kept apart from wheat,,2027-06-01,",
        "own handling,own scoop; closed box,,2027-06-01,",
        "specification,no wheat or rye,,2026-01-01,",
        "specification,contains no gluten,,2026-01-01,",
        "words on the bag,wheat-free,,,",
        "doubt,label was wet,,2027-05-01,2027-05-20",
    ],
)
def test_what_plainly_denies_it_or_is_over_takes_nothing_away(row: str) -> None:
    assert record_state(papers(TEST, row), on=DAY) == "good"


def test_a_doubt_ends_the_day_after_the_one_that_is_written_and_opens_nothing_itself() -> None:
    doubt = "doubt,label was wet,,2027-05-01,2027-05-20"
    both = papers(TEST, doubt)
    assert record_state(both, on=date(2027, 5, 20)) == "conflict"
    assert record_state(both, on=date(2027, 5, 21)) == "good"
    assert record_state(papers(doubt), on=DAY) == "missing"


@pytest.mark.parametrize(
    ("method", "state"), [("R5 ELISA", "good"), ("PCR", "missing"), ("test strip", "missing"),
                          ("by eye", "missing"), ("", "good")]
)  # fmt: skip
def test_a_test_counts_by_a_method_that_gives_a_figure_of_gluten(method: str, state: str) -> None:
    head = HEAD.strip() + ",method\n"
    row = f"L,teff flour,lab test,,<5,2027-01-01,2028-01-01,{method}\n"
    assert record_state(read_lots(head + row).value[0], on=DAY) == state


@pytest.mark.parametrize(("result", "state"), [("<25", "missing"), ("n. d.", "missing")])
def test_a_method_that_cannot_see_the_limit_shows_nothing_and_says_nothing_against(
    result: str, state: str
) -> None:
    assert record_state(papers(TEST.replace("<5", result)), on=DAY) == state
    assert record_state(papers(TEST, TEST.replace("<5", result)), on=DAY) == "good"


def test_where_the_rule_is_not_judged_no_record_is_good() -> None:
    assert record_state(papers(TEST), on=DAY, market="au-nz") == "missing"


def test_each_paper_says_why_it_does_not_count() -> None:
    lot = papers(OLD, "lab test,,35,2026-01-01,2026-06-01", "words on the bag,fine,,,")
    said = {s.record.line: (s.state, s.why) for s in record_standings(lot, on=DAY)}
    assert said[2] == ("expired", "ran out on 2027-01-01")
    assert said[3] == ("conflict", "35 is not 20 mg/kg or less")
    assert said[4] == ("missing", "words on the bag: no record of gluten")


def test_a_strip_that_only_the_words_name_counts_as_none_either() -> None:
    strip = papers("lab test,my own test strip,<10,2027-01-01,2028-01-01")
    assert record_state(strip, on=DAY) == "missing"
    assert record_state(papers("lab test,R5 ELISA,<5,2027-01-01,2028-01-01"), on=DAY) == "good"
