"""Cells that leave are no formulas to a spreadsheet, and come back as they were."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.store.cells import own_cell, own_table, safe_cell, safe_table
from krume.store.sheets import as_csv, from_csv

WORKED_OUT = "=+-@\t\r\n\uff1d\uff0b\uff0d\uff20"
CELLS = st.text(st.sampled_from([*WORKED_OUT, *"'1 aß,\"‮\x1b"]), max_size=6)


@given(CELLS)
def test_a_cell_comes_back_as_it_was(cell: str) -> None:
    assert own_cell(safe_cell(cell)) == cell


@given(CELLS)
def test_no_cell_that_leaves_begins_as_a_formula_unless_it_is_a_number(cell: str) -> None:
    out = safe_cell(cell)
    assert not out.startswith(tuple(WORKED_OUT)) or float(out.replace(",", ".")) is not None


@pytest.mark.parametrize(
    ("cell", "out"),
    [
        ('=HYPERLINK("x")', '\'=HYPERLINK("x")'),
        ("+49 170 1", "'+49 170 1"),
        ("-12", "-12"),
        ("-12,5", "-12,5"),
        ("-12 eggs", "'-12 eggs"),
        ("@SUM(A1)", "'@SUM(A1)"),
        ("\t=1", "'\t=1"),
        ("\uff1d1+1", "'\uff1d1+1"),
        ("'=1", "''=1"),
        ("'tis", "'tis"),
        ("≤20", "≤20"),
    ],
)
def test_what_a_spreadsheet_would_work_out_is_text(cell: str, out: str) -> None:
    assert safe_cell(cell) == out


@given(st.lists(st.tuples(CELLS, CELLS), max_size=4))
def test_a_table_comes_back_as_it_was(rows: list[tuple[str, str]]) -> None:
    data = as_csv(("a", "b"), rows)
    kept = as_csv(*from_csv(data, "t.csv"))
    assert as_csv(*from_csv(own_table(safe_table(data, "t.csv"), "t.csv"), "t.csv")) == kept


def test_a_table_without_such_a_cell_stays_byte_for_byte() -> None:
    data = b"lot,text\r\nL-1,it's good\r\n"
    assert safe_table(data, "t.csv") is data
    assert own_table(data, "t.csv") is data


def test_a_table_that_leaves_holds_no_formula() -> None:
    data = safe_table(as_csv(("=a", "b"), [("=1", "-3"), ("'@x", "+y")]), "t.csv")
    rows = list(csv.reader(io.StringIO(data.decode())))
    assert rows == [["'=a", "b"], ["'=1", "-3"], ["''@x", "'+y"]]


def test_what_is_no_table_is_left_as_it_is() -> None:
    assert own_table(b"'\xff\xfe", "t.csv") == b"'\xff\xfe"
