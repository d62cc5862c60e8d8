"""A book's database comes to its present form by named steps, or is left as it is."""

import hashlib
from contextlib import closing
from pathlib import Path

import pytest

from krume.base import StoreError
from krume.store import migrations
from krume.store.backups import FOLDER
from krume.store.database import connect, reading, writing
from krume.store.migrations import MIGRATIONS, Migration, is_current, make, migrate
from krume.store.texts import save_text, text_at
from tests.store.database_of import empty

MORE = Migration("0999-more", ("CREATE TABLE more (id INTEGER PRIMARY KEY) STRICT",))
BROKEN = Migration("0999-more", (*MORE.statements, "CREATE TABLE more (id INTEGER)"))


def test_a_new_book_has_every_step_and_making_it_again_changes_nothing(tmp_path: Path) -> None:
    path = empty(tmp_path)
    assert is_current(path)
    with writing(path) as book:
        save_text(book, "formulas/F1.txt", b"Sponge\n", seen=None)
    make(path)
    assert migrate(path) == ()
    with reading(path) as book:
        assert text_at(book, "formulas/F1.txt") is not None


def test_a_step_is_run_once_after_a_backup(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = empty(tmp_path)
    monkeypatch.setattr(migrations, "MIGRATIONS", (*MIGRATIONS, MORE))
    assert not is_current(path)
    assert migrate(path) == ("0999-more",)
    assert migrate(path) == ()
    assert [p.name for p in (path.parent / FOLDER).iterdir()] == ["before-0999-more.sqlite3"]


def test_a_step_that_breaks_leaves_the_book_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = empty(tmp_path)
    with monkeypatch.context() as patch:
        patch.setattr(migrations, "MIGRATIONS", (*MIGRATIONS, BROKEN))
        with pytest.raises(StoreError):
            migrate(path)
        assert not is_current(path)
    assert is_current(path)


def test_an_older_program_refuses_a_newer_book(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = empty(tmp_path)
    with monkeypatch.context() as patch:
        patch.setattr(migrations, "MIGRATIONS", (*MIGRATIONS, MORE))
        migrate(path)
    with pytest.raises(StoreError, match="newer krume"):
        migrate(path)


def test_steps_that_were_released_are_never_changed() -> None:
    """A released step is known by its digest: to change the book, add another step."""
    digests = {
        step.name: hashlib.sha256("\n".join(step.statements).encode()).hexdigest()[:12]
        for step in MIGRATIONS
    }
    assert digests == {
        "0001-texts-and-tables": "f79eb2faafba",
        "0002-weighings-and-trials": "dde6d80f693b",
        "0003-lots-of-bakes": "26fca391174c",
    }


def test_a_copy_that_was_put_back_writes_its_log_apart_again(tmp_path: Path) -> None:
    path = empty(tmp_path)
    with closing(connect(path)) as book:
        book.execute("PRAGMA journal_mode = DELETE")
    migrate(path)
    with closing(connect(path)) as book:
        assert book.execute("PRAGMA journal_mode").fetchone()[0] == "wal"
