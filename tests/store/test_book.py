"""A book is texts found by name and never overwritten, in a database or as plain files."""

from pathlib import Path

import pytest

from krume.base import StoreError
from krume.store import (
    Book,
    add_texts,
    book_at,
    book_bytes,
    book_places,
    bytes_of_path,
    count_texts,
    database_of,
    digest,
    find_texts,
    folder_bytes,
    is_book,
    list_tables,
    list_texts,
    place_all,
    place_in,
)

FILES = {
    "studio.toml": b'name = "Somewhere"\n',
    "formulas/F1.txt": b"\xef\xbb\xbfOrl hazel sponge\n\n85 g flour\n",
    "formulas/F2.txt": b"\n\n  Plain   sponge \n",
    "tortes/T1.txt": b"Orl hazel torte\n",
    "orders/101.txt": b"Order 101\n",
    "lots.csv": b"lot,ingredient\nL-001,rice\n",
}


@pytest.fixture
def plain(tmp_path: Path) -> Book:
    """A book that is a folder of plain files."""
    book = Book(tmp_path / "plain")
    place_all(book.path, FILES)
    return book


@pytest.fixture(params=["plain", "database"])
def book(request: pytest.FixtureRequest, plain: Book, tmp_path: Path) -> Book:
    """The same book both ways."""
    if request.param == "plain":
        return plain
    book = Book(tmp_path / "book")
    add_texts(book, FILES)
    return book


def test_the_named_folder_comes_before_the_environment(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("KRUME_BOOK", "/somewhere/else")
    assert book_at(Path("/named")).path == Path("/named")
    assert book_at(None).path == Path("/somewhere/else")


def test_without_either_the_users_data_folder_is_meant(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    monkeypatch.setenv("KRUME_BOOK", "  ")
    assert book_at(None).path == tmp_path / "krume" / "book"


def test_a_tilde_means_the_home_folder(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    assert book_at(Path("~/book")).path == tmp_path / "book"
    monkeypatch.setenv("KRUME_BOOK", "~/other")
    assert book_at(None).path == tmp_path / "other"


@pytest.mark.parametrize(
    ("name", "found"),
    [
        ("F1", ["F1"]),
        ("f1", ["F1"]),
        (" 101 ", ["101"]),
        ("orl HAZEL sponge", ["F1"]),
        ("plain sponge", ["F2"]),
        ("F9", []),
        ("", []),
    ],
)
def test_a_text_goes_by_its_files_name_and_by_its_first_line(
    book: Book, name: str, found: list[str]
) -> None:
    assert [t.name for t in find_texts(book, name)] == found


def test_the_files_name_comes_before_a_first_line(book: Book) -> None:
    add_texts(book, {"formulas/Other.txt": b"F1\n"})
    assert [t.name for t in find_texts(book, "F1")] == ["F1"]


def test_a_name_in_two_folders_is_found_twice(book: Book) -> None:
    add_texts(book, {"tortes/F1.txt": b"A torte\n"})
    assert {t.kind for t in find_texts(book, "F1")} == {"formula", "torte"}


def test_only_texts_are_listed(plain: Book) -> None:
    (plain.path / "formulas" / "F1.txt~").write_bytes(b"backup")
    (plain.path / "formulas" / ".F3.txt").write_bytes(b"hidden")
    (plain.path / "formulas" / "F4.txt").mkdir()
    assert [t.name for t in list_texts(plain)] == ["F1", "F2", "T1", "101"]


def test_what_a_book_holds_is_listed_by_kind(book: Book) -> None:
    assert [t.name for t in list_texts(book)] == ["F1", "F2", "T1", "101"]
    assert count_texts(book) == {"formulas": 2, "tortes": 1, "orders": 1, "classes": 0}
    assert list_tables(book) == ("lots.csv",)
    assert book_places(book) == tuple(sorted(FILES))


def test_every_text_comes_back_byte_for_byte(book: Book) -> None:
    assert {place: book_bytes(book, place) for place in FILES} == FILES
    assert book_bytes(book, "formulas/F9.txt") is None


def test_the_texts_of_one_folder_come_by_name(book: Book) -> None:
    names = ("F1", "F2")
    assert folder_bytes(book, "formulas") == {n: FILES[f"formulas/{n}.txt"] for n in names}
    assert folder_bytes(book, "classes") == {}


def test_a_path_inside_the_book_means_its_text(book: Book, tmp_path: Path) -> None:
    path = book.path / "formulas" / "F1.txt"
    assert place_in(book, path) == "formulas/F1.txt"
    assert bytes_of_path(book, path) == FILES["formulas/F1.txt"]
    (tmp_path / "mine.txt").write_bytes(b"Mine\n")
    assert place_in(book, tmp_path / "mine.txt") is None
    assert bytes_of_path(book, tmp_path / "mine.txt") == b"Mine\n"
    assert bytes_of_path(book, tmp_path / "none.txt") is None


def test_a_book_that_is_not_there_holds_nothing(tmp_path: Path) -> None:
    nowhere = Book(tmp_path / "nowhere")
    assert list_texts(nowhere) == ()
    assert list_tables(nowhere) == ()
    assert not is_book(nowhere)
    assert not nowhere.path.exists()


def test_adding_again_changes_nothing(book: Book) -> None:
    before = digest(book)
    loaded = add_texts(book, FILES)
    assert loaded.added == ()
    assert loaded.kept == ()
    assert loaded.same == tuple(FILES)
    assert digest(book) == before


def test_a_text_that_differs_is_kept_and_the_missing_ones_are_added(book: Book) -> None:
    more = {**FILES, "formulas/F1.txt": b"Another\n", "tortes/T2.txt": b"Second torte\n"}
    loaded = add_texts(book, more)
    assert loaded.kept == ("formulas/F1.txt",)
    assert loaded.added == ("tortes/T2.txt",)
    assert book_bytes(book, "formulas/F1.txt") == FILES["formulas/F1.txt"]
    assert book_bytes(book, "tortes/T2.txt") == b"Second torte\n"


def test_a_new_book_is_a_database_and_a_plain_one_stays_plain(plain: Book, tmp_path: Path) -> None:
    add_texts(plain, {"formulas/F3.txt": b"Third\n"})
    assert database_of(plain) is None
    assert (plain.path / "formulas" / "F3.txt").is_file()
    new = Book(tmp_path / "new")
    add_texts(new, FILES)
    assert database_of(new) == new.path / "book.sqlite3"


def test_a_folder_with_other_things_in_it_is_refused(tmp_path: Path) -> None:
    (tmp_path / "photo.jpg").write_bytes(b"x")
    with pytest.raises(StoreError, match=r"is no book and is not empty \(it holds photo\.jpg\)"):
        add_texts(Book(tmp_path), FILES)
    assert [p.name for p in tmp_path.iterdir()] == ["photo.jpg"]


def test_an_empty_folder_may_become_a_book(tmp_path: Path) -> None:
    add_texts(Book(tmp_path), FILES)
    assert is_book(Book(tmp_path))


def test_the_digest_follows_every_byte_and_every_name(plain: Book) -> None:
    seen = {digest(plain)}
    (plain.path / "lots.csv").write_bytes(b"lot,ingredient\nL-001,rye\n")
    seen.add(digest(plain))
    (plain.path / "lots.csv").rename(plain.path / "bags.csv")
    seen.add(digest(plain))
    assert len(seen) == 3
    (plain.path / ".hidden").write_bytes(b"x")
    assert digest(plain) in seen


def test_both_ways_of_keeping_a_book_have_the_same_digest(plain: Book, tmp_path: Path) -> None:
    new = Book(tmp_path / "new")
    add_texts(new, FILES)
    assert digest(new) == digest(plain)
