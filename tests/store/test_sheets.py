"""Tables of a book: rows keep their words, their order and their versions."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import ConflictError, NotFoundError, StoreError
from krume.store.database import reading, writing
from krume.store.sheets import (
    add_row,
    add_sheet,
    as_csv,
    delete_row,
    from_csv,
    head_of,
    rows_of,
    save_row,
    sheet_places,
)
from tests.store.database_of import empty

HEAD = ("lot", "ingredient")


def _lots(path: Path) -> None:
    with writing(path) as book:
        add_sheet(book, "lots.csv", HEAD)
        add_row(book, "lots.csv", ("L-001", "white rice flour"))
        add_row(book, "lots.csv", ("L-002", "teff flour"))


def test_rows_come_back_in_their_order(tmp_path: Path) -> None:
    path = empty(tmp_path)
    _lots(path)
    with reading(path) as book:
        assert sheet_places(book) == ("lots.csv",)
        assert head_of(book, "lots.csv") == HEAD
        assert [row.cells[0] for row in rows_of(book, "lots.csv")] == ["L-001", "L-002"]


def test_two_edits_of_different_rows_are_both_kept(tmp_path: Path) -> None:
    path = empty(tmp_path)
    _lots(path)
    with writing(path) as book:
        first, second = rows_of(book, "lots.csv")
        save_row(book, first.key, ("L-001", "brown rice flour"), seen=1)
        save_row(book, second.key, ("L-002", "teff"), seen=1)
        assert [row.cells[1] for row in rows_of(book, "lots.csv")] == ["brown rice flour", "teff"]


def test_a_second_edit_of_the_same_version_keeps_nothing(tmp_path: Path) -> None:
    path = empty(tmp_path)
    _lots(path)
    with writing(path) as book:
        first = rows_of(book, "lots.csv")[0]
        save_row(book, first.key, ("L-001", "a"), seen=1)
    with pytest.raises(ConflictError), writing(path) as book:
        save_row(book, first.key, ("L-001", "b"), seen=1)
    with pytest.raises(ConflictError), writing(path) as book:
        delete_row(book, 99, seen=1)


def test_a_deleted_row_is_gone_and_its_versions_are_kept(tmp_path: Path) -> None:
    path = empty(tmp_path)
    _lots(path)
    with writing(path) as book:
        delete_row(book, rows_of(book, "lots.csv")[0].key, seen=1)
        assert [row.cells[0] for row in rows_of(book, "lots.csv")] == ["L-002"]
        assert book.execute("SELECT count(*) FROM sheet_row_history").fetchone()[0] == 3


def test_a_table_may_gain_columns_and_loses_none(tmp_path: Path) -> None:
    path = empty(tmp_path)
    _lots(path)
    with writing(path) as book:
        add_sheet(book, "lots.csv", ("ingredient", "note"))
        assert head_of(book, "lots.csv") == ("lot", "ingredient", "note")


def test_a_row_wants_a_table(tmp_path: Path) -> None:
    with pytest.raises(NotFoundError), writing(empty(tmp_path)) as book:
        add_row(book, "lots.csv", ("L-1",))


_CELLS = st.text(st.characters(codec="utf-8", exclude_characters="\0\r"), max_size=12)


@given(st.lists(st.tuples(_CELLS.filter(str.strip), _CELLS), min_size=1, max_size=6))
def test_a_table_written_as_text_reads_back_word_for_word(rows: list[tuple[str, str]]) -> None:
    assert from_csv(as_csv(HEAD, rows), "lots.csv") == (HEAD, tuple(rows))


@pytest.mark.parametrize("data", [b"\xff\xfe\x00", b"a,b\nc," + b"x" * 200_000])
def test_what_is_no_table_is_refused_whole(data: bytes) -> None:
    with pytest.raises(StoreError, match="no table"):
        from_csv(data, "lots.csv")
