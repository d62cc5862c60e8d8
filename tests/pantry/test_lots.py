"""The table of lots is read strictly, and nothing typed in it is lost."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.pantry import GlutenResult, read_cleaning, read_lots

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
    assert len(read.value) == row.count("\n")
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
    assert len(read.value) == kept


@pytest.mark.parametrize(("said", "is_clean"), [("yes", True), ("done", True), ("no", False)])
def test_the_rooms_record_is_the_word_of_its_row(said: str, is_clean: bool) -> None:
    read = read_cleaning(f"date,cleaned\n2027-06-12,{said}\n")
    assert read.problems == ()
    assert read.value[0].is_cleaned is is_clean


@pytest.mark.parametrize(
    ("row", "code", "kept"),
    [
        ("2027-06-12,perhaps", "cleaning-unread", 1),
        ("yesterday,yes", "cleaning-date", 0),
    ],
)
def test_a_rooms_record_that_is_unclear_never_counts_as_clean(
    row: str, code: str, kept: int
) -> None:
    read = read_cleaning(f"date,cleaned\n{row}\n")
    assert [problem.code for problem in read.problems] == [code]
    assert len(read.value) == kept
    assert not any(record.is_cleaned for record in read.value)


def test_a_table_no_reader_can_split_is_asked_about_and_holds_no_lot() -> None:
    read = read_lots("lot,ingredient,evidence\nL-1,teff flour," + "x" * 200_000)
    assert read.value == ()
    assert [problem.code for problem in read.problems] == ["table-unread"]
