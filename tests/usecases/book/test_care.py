"""Backups, checks, and the way out and in, asked for as a person asks."""

from pathlib import Path

import pytest

from krume.base import NotFoundError, StoreError
from krume.store import Book, add_texts, book_bytes, digest, table_rows
from krume.usecases import Asked, export_book, import_book, load_demo, restore_book, verify_book


def test_one_text_goes_to_the_place_of_its_kind(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    texts = {
        "mine.txt": "Mine\n\n100 g white rice flour\n",
        "big.txt": "Big\nSlices: 12\n\n2 layers of F1, 14 mm\n",
        "7.txt": "Order 7\nDate: 2027-06-12\nCustomer: A. Invented\n\n1 big\n",
        "lots.csv": "lot,ingredient\nL-1,teff flour\n",
    }
    for name, text in texts.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
        import_book(asked, tmp_path / name)
    places = ("formulas/mine.txt", "tortes/big.txt", "orders/7.txt", "lots.csv")
    found = [book_bytes(Book(tmp_path / "book"), place) for place in places]
    assert found == [text.encode() for text in texts.values()]


def test_what_is_no_text_of_a_book_stays_outside(tmp_path: Path) -> None:
    folder = tmp_path / "in"
    (folder / "formulas").mkdir(parents=True)
    (folder / "formulas" / "F1.txt").write_text("Mine\n", encoding="utf-8")
    (folder / "photo.jpg").write_bytes(b"x")
    answer = import_book(Asked(book=tmp_path / "book"), folder)
    assert answer.result.added == ("formulas/F1.txt",)
    (tmp_path / "other").mkdir()
    with pytest.raises(NotFoundError, match="holds no texts"):
        import_book(Asked(book=tmp_path / "book"), tmp_path / "other")


def test_an_export_never_writes_over_anything(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    (tmp_path / "out").mkdir()
    assert export_book(asked, tmp_path / "out").result.file == str(tmp_path / "out")
    with pytest.raises(StoreError, match="not empty"):
        export_book(asked, tmp_path / "out")


def test_a_book_that_is_not_there_is_named(bare: Asked) -> None:
    with pytest.raises(NotFoundError, match="book init"):
        verify_book(bare)
    with pytest.raises(NotFoundError, match="no backup"):
        restore_book(bare)


def test_a_name_that_is_a_formula_leaves_as_text_and_comes_back_as_it_was(tmp_path: Path) -> None:
    """By import, and where the export is read as a book of plain texts."""
    head, row = "lot,ingredient,evidence,text\n", '=1+1,teff flour,lab test,"-2, ≤20"\n'
    own, other = Asked(book=tmp_path / "own"), Asked(book=tmp_path / "other")
    add_texts(Book(tmp_path / "own"), {"lots.csv": (head + row).encode()})
    told = export_book(own, tmp_path / "out").result
    written = (tmp_path / "out" / "lots.csv").read_text(encoding="utf-8")
    assert written == head + "'=1+1,teff flour,lab test,\"'-2, ≤20\"\n"
    assert import_book(other, tmp_path / "out").result.sha256 == told.sha256
    for book in (tmp_path / "other", tmp_path / "out"):
        (found,) = table_rows(Book(book), "lots.csv")
        assert (found["lot"], found["text"]) == ("=1+1", "-2, ≤20")
        assert digest(Book(book)) == told.sha256
    single = Asked(book=tmp_path / "single")
    import_book(single, tmp_path / "out" / "lots.csv")
    assert table_rows(Book(tmp_path / "single"), "lots.csv")[0]["lot"] == "=1+1"
