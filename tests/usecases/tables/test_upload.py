"""A table sent as a file: what it would change is said before anything is kept."""

from pathlib import Path

import pytest

from krume.base import ConflictError, InputError, StoreError
from krume.usecases import Asked, add_row, keep_table, load_demo, table_change
from krume.usecases.book.rows import table_now
from krume.usecases.tables.upload import ROWS_LIMIT

TINS, REQUIRED = "tins.csv", ("tin", "count")
SENT = "count,tin,status\n4,round 20 x 7 cm,invented\n3,ring 22 x 6 cm,measured\n"


@pytest.fixture
def kept(tmp_path: Path) -> Asked:
    """A demo book with a database, which the test may change."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def test_a_look_says_what_comes_goes_and_changes_and_keeps_nothing(kept: Asked) -> None:
    before = table_now(TINS, kept)
    change = table_change(TINS, SENT, kept, required=REQUIRED)
    assert change.rows == 2
    assert change.count("out") + change.count("changed") == 6
    assert change.count("in") == 0
    assert all(line.kind != "same" for line in change.changes)
    assert table_now(TINS, kept) == before


def test_what_was_seen_is_kept_once(kept: Asked) -> None:
    change = table_change(TINS, SENT, kept, required=REQUIRED)
    for _ in range(2):
        keep_table(TINS, change.text, kept, seen=change.seen, required=REQUIRED)
    rows = table_now(TINS, kept).rows
    assert [row.get("tin") for row in rows] == ["round 20 x 7 cm", "ring 22 x 6 cm"]
    assert rows[0].revision == 1


def test_a_table_that_left_the_book_comes_back_as_it_was(kept: Asked) -> None:
    sent = "tin,count,status\nround 20 x 7 cm,4,'=1\nring 22 x 6 cm,3,''=2\n"
    change = table_change(TINS, sent, kept, required=REQUIRED)
    keep_table(TINS, change.text, kept, seen=change.seen, required=REQUIRED)
    assert [row.get("status") for row in table_now(TINS, kept).rows] == ["=1", "'=2"]
    again = table_change(TINS, sent, kept, required=REQUIRED)
    assert again.changes == ()


def test_a_table_that_changed_since_is_not_overwritten(kept: Asked) -> None:
    change = table_change(TINS, SENT, kept, required=REQUIRED)
    add_row(TINS, {"tin": "round 24 x 7 cm", "count": "1"}, kept, head=REQUIRED)
    with pytest.raises(ConflictError):
        keep_table(TINS, change.text, kept, seen=change.seen, required=REQUIRED)
    assert len(table_now(TINS, kept).rows) == 8


@pytest.mark.parametrize("mark", [";", "\t"])
def test_other_marks_between_the_cells_and_capitals_in_the_head_are_read(
    kept: Asked, mark: str
) -> None:
    sent = f"\ufeffTin{mark}Count\r\nsheet 13x9 in, 1 in high{mark}2\r\n"
    change = table_change(TINS, sent, kept, required=REQUIRED)
    assert change.text == 'tin,count\n"sheet 13x9 in, 1 in high",2\n'


@pytest.mark.parametrize(
    ("sent", "said"),
    [
        ("", "nothing in it"),
        ("\n\n", "nothing in it"),
        ("PK\x03\x04tin,count\n", "spreadsheet"),
        ("%PDF-1.7\ntin,count\n", "PDF"),
        ("\ufffdPNG\r\n", "picture"),
        ("<html>tin,count", "web page"),
        ('{"tin": 1}', "JSON"),
        ("tin,count\nround\ufffd,1\n", "no plain text"),
        ("tin,count\nround\0,1\n", "no plain text"),
        ("tin,status\nround 20 x 7 cm,x\n", "no column count"),
        ("tin,count\nsheet 13x9 in, 1 in high,2\n", "Row 2 has more cells"),
        ('tin,count\n"round,1\n', "no table"),
        ("tin,count\n" + "a,1\n" * (ROWS_LIMIT + 1), "are the most"),
    ],
)
def test_what_is_no_table_is_refused_with_a_sentence(kept: Asked, sent: str, said: str) -> None:
    with pytest.raises(InputError, match=said):
        table_change(TINS, sent, kept, required=REQUIRED)


def test_without_a_database_no_table_is_kept(own_demo: Asked) -> None:
    change = table_change(TINS, SENT, own_demo, required=REQUIRED)
    with pytest.raises(StoreError):
        keep_table(TINS, change.text, own_demo, seen=change.seen, required=REQUIRED)
