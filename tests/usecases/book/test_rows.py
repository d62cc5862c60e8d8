"""Rows of a book's tables: listed with their line and version, edited by version, never lost."""

from pathlib import Path

import pytest

from krume.base import InputError, NotFoundError, StoreError
from krume.store import book_at, keep_row
from krume.usecases import Asked, RowConflictError, add_row, delete_row, load_demo, save_row
from krume.usecases.book.rows import CELL_LIMIT, lines_of, row_now, table_now

HEAD = ("tin", "count", "status")
TINS = "tins.csv"


@pytest.fixture
def kept(tmp_path: Path) -> Asked:
    """A demo book with a database, which the test may change."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def test_rows_have_the_lines_of_the_table_and_a_version(kept: Asked) -> None:
    rows = table_now(TINS, kept).rows
    assert [row.line for row in rows] == [2, 3, 4, 5, 6, 7, 8]
    assert {row.revision for row in rows} == {1}
    assert rows[0].get("tin") == "round 20 x 7 cm"
    assert rows[0].get("colour") == ""


def test_a_folder_of_plain_texts_has_the_same_rows_without_keys(
    kept: Asked, own_demo: Asked
) -> None:
    plain, database = table_now(TINS, own_demo), table_now(TINS, kept)
    assert [row.cells for row in plain.rows] == [row.cells for row in database.rows]
    assert [row.line for row in plain.rows] == [row.line for row in database.rows]
    assert {row.key for row in plain.rows} == {None}


def test_a_table_that_is_not_there_has_no_rows(kept: Asked, bare: Asked) -> None:
    assert table_now("packs.csv", kept).rows == ()
    assert table_now("packs.csv", bare).rows == ()


def test_a_row_is_added_once_however_often_it_is_sent(kept: Asked) -> None:
    cells = {"tin": "round 24  x 7 cm", "count": "1"}
    first = add_row(TINS, cells, kept, head=HEAD)
    assert add_row(TINS, cells, kept, head=HEAD).key == first.key
    assert [row.get("tin") for row in table_now(TINS, kept).rows][-1] == "round 24 x 7 cm"
    assert len(table_now(TINS, kept).rows) == 8


def test_a_table_is_made_with_its_first_row_and_may_gain_columns(kept: Asked) -> None:
    add_row("packs.csv", {"item": "caster sugar"}, kept, head=("item", "pack_g"))
    add_row("packs.csv", {"item": "butter", "where": "mill"}, kept, head=("item", "where"))
    table = table_now("packs.csv", kept)
    assert table.head == ("item", "pack_g", "where")
    assert [row.get("where") for row in table.rows] == ["", "mill"]


def test_a_row_keeps_the_columns_that_were_not_typed(kept: Asked) -> None:
    row = table_now(TINS, kept).rows[0]
    assert row.key is not None
    saved = save_row(TINS, row.key, {"count": "5"}, kept, seen=1)
    assert saved.cells == {**row.cells, "count": "5"}
    assert saved.revision == 2


def test_the_same_words_sent_again_are_one_version(kept: Asked) -> None:
    key = table_now(TINS, kept).rows[0].key
    assert key is not None
    save_row(TINS, key, {"count": "5"}, kept, seen=1)
    assert save_row(TINS, key, {"count": "5"}, kept, seen=1).revision == 2


def test_the_second_of_two_editors_is_shown_the_first(kept: Asked) -> None:
    key = table_now(TINS, kept).rows[0].key
    assert key is not None
    save_row(TINS, key, {"count": "5"}, kept, seen=1)
    with pytest.raises(RowConflictError) as caught:
        save_row(TINS, key, {"count": "6"}, kept, seen=1)
    assert caught.value.now is not None
    assert caught.value.now.get("count") == "5"
    assert row_now(TINS, key, kept).get("count") == "5"


def test_a_row_that_was_taken_out_meanwhile_is_said(kept: Asked) -> None:
    key = table_now(TINS, kept).rows[0].key
    assert key is not None
    delete_row(TINS, key, kept, seen=1)
    delete_row(TINS, key, kept, seen=1)
    with pytest.raises(RowConflictError) as caught:
        save_row(TINS, key, {"count": "6"}, kept, seen=1)
    assert caught.value.now is None
    with pytest.raises(NotFoundError):
        row_now(TINS, key, kept)


def test_a_row_that_changed_is_not_taken_out(kept: Asked) -> None:
    key = table_now(TINS, kept).rows[0].key
    assert key is not None
    save_row(TINS, key, {"count": "5"}, kept, seen=1)
    with pytest.raises(RowConflictError):
        delete_row(TINS, key, kept, seen=1)
    assert row_now(TINS, key, kept).get("count") == "5"


def test_a_version_that_was_not_sent_overwrites_nothing(kept: Asked) -> None:
    key = table_now(TINS, kept).rows[0].key
    assert key is not None
    with pytest.raises(RowConflictError):
        save_row(TINS, key, {"count": "6"}, kept, seen=None)


@pytest.mark.parametrize("cells", [{}, {"tin": "  "}, {"tin": "x" * (CELL_LIMIT + 1)}])
def test_nothing_and_too_much_are_refused(kept: Asked, cells: dict[str, str]) -> None:
    with pytest.raises(InputError):
        add_row(TINS, cells, kept, head=HEAD)
    assert len(table_now(TINS, kept).rows) == 7


def test_a_row_is_never_emptied(kept: Asked) -> None:
    key = table_now(TINS, kept).rows[0].key
    assert key is not None
    with pytest.raises(InputError, match="take the row out"):
        save_row(TINS, key, dict.fromkeys(HEAD, ""), kept, seen=1)


def test_without_a_database_nothing_is_edited(own_demo: Asked, bare: Asked) -> None:
    for asked in (own_demo, bare):
        with pytest.raises(StoreError):
            add_row(TINS, {"tin": "round 24 x 7 cm"}, asked, head=HEAD)


def test_a_row_without_a_word_moves_no_line_of_the_others(kept: Asked) -> None:
    book = book_at(kept.book)
    keep_row(book, TINS, ["", "", ""], key=None)
    keep_row(book, TINS, ["1", "round 12 x 5 cm", ""], key=None)
    lines = [row.line for row in table_now(TINS, kept).rows]
    assert lines == [2, 3, 4, 5, 6, 7, 8, 0, 10]


def test_lines_count_as_an_editor_counts_them() -> None:
    assert lines_of("") == ()
    assert lines_of('lot,text\r\nL-1,"two\r\nlines"\r\n\r\nL-2,x\r\n') == (3, 5)
