"""Every version of a text is kept, and an edit names the version it saw."""

from pathlib import Path

import pytest

from krume.base import ConflictError, NotFoundError
from krume.store.database import reading, writing
from krume.store.texts import delete_text, first_line, save_text, text_at, titles, versions
from tests.store.database_of import empty

PLACE = "formulas/F1.txt"


def test_a_text_comes_back_byte_for_byte(tmp_path: Path) -> None:
    path = empty(tmp_path)
    body = b"\xef\xbb\xbf\n  Plain sponge \r\n\xbd tsp salt\r\n"
    with writing(path) as book:
        save_text(book, PLACE, body, seen=None)
    with reading(path) as book:
        kept = text_at(book, PLACE)
        assert kept is not None
        assert (kept.body, kept.title, kept.revision) == (body, "Plain sponge", 1)
        assert titles(book) == ((PLACE, "Plain sponge"),)


def test_an_edit_of_the_version_seen_is_kept_and_the_old_one_too(tmp_path: Path) -> None:
    path = empty(tmp_path)
    with writing(path) as book:
        save_text(book, PLACE, b"One\n", seen=None)
        assert save_text(book, PLACE, b"Two\n", seen=1).revision == 2
    with reading(path) as book:
        assert [kept.body for kept in versions(book, PLACE)] == [b"Two\n", b"One\n"]


@pytest.mark.parametrize("seen", [None, 1, 3])
def test_an_edit_of_another_version_keeps_nothing(tmp_path: Path, seen: int | None) -> None:
    path = empty(tmp_path)
    with writing(path) as book:
        save_text(book, PLACE, b"One\n", seen=None)
        save_text(book, PLACE, b"Two\n", seen=1)
    with pytest.raises(ConflictError), writing(path) as book:
        save_text(book, PLACE, b"Three\n", seen=seen)
    with reading(path) as book:
        assert len(versions(book, PLACE)) == 2


def test_a_deleted_text_is_gone_and_its_versions_are_kept(tmp_path: Path) -> None:
    path = empty(tmp_path)
    with writing(path) as book:
        save_text(book, PLACE, b"One\n", seen=None)
        delete_text(book, PLACE, seen=1)
        assert text_at(book, PLACE) is None
        assert titles(book) == ()
        assert save_text(book, PLACE, b"Again\n", seen=None).revision == 3
    with reading(path) as book:
        assert [kept.is_deleted for kept in versions(book, PLACE)] == [False, True, False]


def test_what_is_not_there_cannot_be_deleted(tmp_path: Path) -> None:
    with pytest.raises(NotFoundError), writing(empty(tmp_path)) as book:
        delete_text(book, PLACE, seen=1)


def test_the_first_line_that_says_anything_is_the_title() -> None:
    assert first_line(b"\n \n  Orl base\nmore") == "Orl base"
    assert first_line(b"") == ""
