"""The table of lots is read strictly, and nothing typed in it is lost."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.pantry import GlutenResult, read_lots, record_state

HEAD = "lot,ingredient,evidence,text,result_mg_kg,from,valid_to,status\n"
GOOD = "L-1,teff flour,lab test,test of the lot,<5,2027-03-02,2028-03-02,invented\n"


def test_a_good_row_is_read_without_a_question() -> None:
    read = read_lots(HEAD + GOOD)
    assert read.problems == ()
    assert read.value[0].result == GlutenResult("<5", 5.0, is_below=True)
    assert read.value[0].is_record


@pytest.mark.parametrize(
    ("row", "code"),
    [
        (GOOD.replace("2027-03-02", ""), "lot-date-missing"),
        (GOOD.replace("2028-03-02", ""), "lot-date-missing"),
        (GOOD.replace("2028-03-02", "next year"), "lot-date-unread"),
        (GOOD.replace("2028-03-02", "2026-03-02"), "lot-dates-swapped"),
        (GOOD.replace("lab test", "hearsay"), "evidence-unknown"),
        (GOOD.replace("<5", "none"), "result-unread"),
        (GOOD.replace("L-1", ""), "lot-unnamed"),
        (GOOD.replace("test of the lot", "a,b"), "row-too-long"),
        (GOOD + GOOD, "lot-twice"),
    ],
)
def test_what_is_wrong_in_a_row_is_asked_and_the_row_is_kept(row: str, code: str) -> None:
    read = read_lots(HEAD + row)
    assert code in [problem.code for problem in read.problems]
    assert sum(len(lot.records) for lot in read.value) == row.count("\n")
    assert all(problem.where.startswith("lots.csv line ") for problem in read.problems)


def test_words_on_a_bag_need_no_date() -> None:
    read = read_lots(
        HEAD + "L-2,teff flour,words on the bag,naturally without gluten,,,,invented\n"
    )
    assert read.problems == ()
    assert not read.value[0].is_record


def test_a_missing_column_is_asked_once() -> None:
    read = read_lots("lot,ingredient\nL-1,teff flour\nL-2,salt\n")
    missing = [p.ask for p in read.problems if p.code == "column-missing"]
    assert len(missing) == 5
    assert [lot.key for lot in read.value] == ["L-1", "L-2"]


def test_an_empty_table_has_no_lots() -> None:
    assert read_lots(HEAD).value == ()


def test_parts_that_the_bag_lists_are_kept_in_their_order() -> None:
    text = HEAD.replace("status", "ingredients") + (
        'L-1,vanilla extract,specification,,,,,"alcohol, water; vanilla beans"\n'
    )
    assert read_lots(text).value[0].ingredients == ("alcohol", "water", "vanilla beans")


@given(st.lists(st.text(max_size=12), min_size=8, max_size=8), st.integers(1, 4))
def test_every_row_is_kept_whatever_stands_in_it(cells: list[str], count: int) -> None:
    quoted = ",".join('"' + cell.replace('"', '""').replace("\r", "") + '"' for cell in cells)
    read = read_lots(HEAD + f"{quoted}\n" * count)
    kept = count if any(cell.strip() for cell in cells) else 0
    assert sum(len(lot.records) for lot in read.value) == kept


def test_a_table_no_reader_can_split_is_asked_about_and_holds_no_lot() -> None:
    read = read_lots("lot,ingredient,evidence\nL-1,teff flour," + "x" * 200_000)
    assert read.value == ()
    assert [problem.code for problem in read.problems] == ["table-unread"]


SHEET = "L-1,teff flour,specification,may contain wheat,,2027-03-02,,invented\n"


def test_rows_of_one_mark_are_the_papers_of_one_bag() -> None:
    read = read_lots(HEAD + GOOD + SHEET)
    assert read.problems == ()
    (lot,) = read.value
    assert [record.evidence for record in lot.records] == ["lab-test", "specification"]
    assert lot.lines == (2, 3)
    assert lot.is_specified
    assert lot.is_record


def test_a_mark_on_two_kinds_of_goods_is_asked_and_stays_two_lots() -> None:
    read = read_lots(HEAD + GOOD + SHEET.replace("teff", "rice"))
    assert [problem.code for problem in read.problems] == ["lot-twice"]
    assert "L-1 is teff flour in line 2" in read.problems[0].ask
    assert [lot.ingredient for lot in read.value] == ["teff flour", "rice flour"]


def test_two_rows_without_a_mark_are_never_taken_for_one_bag() -> None:
    read = read_lots(HEAD + GOOD.replace("L-1", "") + SHEET.replace("L-1", ""))
    assert len(read.value) == 2


MORE = "lot,ingredient,evidence,text,result_mg_kg,from,valid_to,method,limit_mg_kg\n"


@pytest.mark.parametrize(
    ("method", "limit", "result", "codes"),
    [
        ("R5 ELISA", "5", "n. d.", []),
        ("R5 ELISA", "", "n. d.", ["result-unread"]),
        ("R5 ELISA", "five", "n. d.", ["limit-unread", "result-unread"]),
        ("by eye", "", "<5", ["method-unknown"]),
        ("", "", "<5", []),
    ],
)
def test_a_test_says_its_method_and_what_that_can_see(
    method: str, limit: str, result: str, codes: list[str]
) -> None:
    row = f"L-1,teff flour,lab test,,{result},2027-03-02,2028-03-02,{method},{limit}\n"
    read = read_lots(MORE + row)
    assert [problem.code for problem in read.problems] == codes
    assert (read.value[0].result is None) is ("result-unread" in codes)


def test_brackets_keep_a_part_of_the_bag_together() -> None:
    text = HEAD.replace("status", "ingredients") + (
        'L-1,glaze,specification,,,,,"sugar, chocolate (sugar, cocoa butter), water"\n'
    )
    want = ("sugar", "chocolate (sugar, cocoa butter)", "water")
    assert read_lots(text).value[0].ingredients == want


def test_a_mark_is_the_same_in_small_letters() -> None:
    (lot,) = read_lots(HEAD + GOOD + SHEET.replace("L-1", "l-1")).value
    assert lot.key == "L-1"
    assert len(lot.records) == 2


@pytest.mark.parametrize(
    ("row", "state"),
    [
        ("L-9,,may contain,may contain wheat,,2027-04-04,", "conflict"),
        ("L-9,,may contain,milk,,2027-04-04,", "missing"),
        ("L-9,ground walnuts", "missing"),
        ("l-9,ground walnuts,hearsay,,,,", "missing"),
        ('L-9,ground walnuts,lab test,,"1,000",2027-04-04,2028-04-04', "missing"),
        ("L-9,ground walnuts,may contain,nuts, wheat,,2027-04-04,", "missing"),
        ("L-9,ground almonds,words on the bag,,,,", "missing"),
        ("L-9,ground almonds,may contain,wheat,,,", "conflict"),
    ],
)
@pytest.mark.parametrize("is_first", [True, False])
def test_a_row_that_cannot_be_read_shuts_the_lot_whose_mark_it_bears(
    row: str, state: str, is_first: bool
) -> None:
    head = "lot,ingredient,evidence,text,result_mg_kg,from,valid_to\n"
    good = "L-9,ground walnuts,lab test,,<5,2027-04-04,2028-04-04\n"
    read = read_lots(head + (f"{row}\n{good}" if is_first else f"{good}{row}\n"))
    states = [
        record_state(lot, on=date(2027, 6, 10))
        for lot in read.value
        if lot.ingredient == "ground walnuts"
    ]
    assert states == [state]
    assert read.problems
