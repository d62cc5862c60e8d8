"""A book's tables: plain text read whole, anything else refused."""

from pathlib import Path

import pytest

from krume.base import StoreError
from krume.store import Book, table_rows, table_text


def test_a_table_that_is_not_there_has_no_rows(tmp_path: Path) -> None:
    assert table_text(Book(tmp_path), "lots.csv") == ""
    assert table_rows(Book(tmp_path), "lots.csv") == []


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_rows_are_read_by_the_first_line_whatever_ends_a_line(tmp_path: Path, end: str) -> None:
    path = tmp_path / "tins.csv"
    path.write_bytes(end.join(["tin,count", "round 20 x 7 cm, 4 ", ""]).encode())
    assert table_rows(Book(tmp_path), path.name) == [{"tin": "round 20 x 7 cm", "count": "4"}]


@pytest.mark.parametrize("data", [b"lot,ingredient\nL-1,\xff\xfe", b"lot\0,ingredient\n"])
def test_bytes_that_are_no_text_refuse_the_table(tmp_path: Path, data: bytes) -> None:
    path = tmp_path / "lots.csv"
    path.write_bytes(data)
    with pytest.raises(StoreError, match="no plain text"):
        table_text(Book(tmp_path), path.name)


def test_a_cell_longer_than_any_is_refused_with_its_place(tmp_path: Path) -> None:
    path = tmp_path / "lots.csv"
    path.write_text("lot,text\nL-1,ok\nL-2," + "x" * 200_000)
    with pytest.raises(StoreError, match="line 2"):
        table_rows(Book(tmp_path), path.name)
