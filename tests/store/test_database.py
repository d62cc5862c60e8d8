"""One writer, whole transactions, and a sentence for everything the database refuses."""

import signal
import sqlite3
import subprocess
import sys
import time
from contextlib import closing
from contextvars import Context
from pathlib import Path

import pytest

from krume.base import ConflictError, StoreError
from krume.store.database import connect, looked, one_look, reading, refused, writing
from krume.store.migrations import migrate
from krume.store.texts import save_text, text_at, titles, versions
from tests.store.database_of import empty


def test_what_fails_half_way_leaves_nothing(tmp_path: Path) -> None:
    path = empty(tmp_path)
    with pytest.raises(ConflictError), writing(path) as book:
        _saved_and_failed(book)
    with reading(path) as book:
        assert titles(book) == ()


def test_a_reader_sees_one_moment_while_another_writes(tmp_path: Path) -> None:
    path = empty(tmp_path)
    with reading(path) as book:
        assert text_at(book, "formulas/F1.txt") is None
        with writing(path) as other:
            save_text(other, "formulas/F1.txt", b"Sponge\n", seen=None)
        assert text_at(book, "formulas/F1.txt") is None
    with reading(path) as book:
        assert text_at(book, "formulas/F1.txt") is not None


def test_tables_are_strict_and_keys_point_somewhere(tmp_path: Path) -> None:
    path = empty(tmp_path)
    with reading(path) as book:
        tables = book.execute(
            "SELECT name, strict FROM pragma_table_list WHERE schema = 'main' "
            "AND type = 'table' AND name NOT LIKE 'sqlite%'"
        ).fetchall()
        assert {row["name"] for row in tables if not row["strict"]} == set()
        assert book.execute("PRAGMA journal_mode").fetchone()[0] == "wal"
    with pytest.raises(StoreError), writing(path) as book:
        book.execute("INSERT INTO text_history VALUES (99, 1, '', x'00', 0, '')")


@pytest.mark.parametrize(
    ("ruin", "words"),
    [(b"no database at all, only words\n" * 40, "book restore"), (b"", "another program")],
)
def test_a_file_that_is_no_book_is_refused_and_left_as_it_is(
    tmp_path: Path, ruin: bytes, words: str
) -> None:
    path = tmp_path / "book.sqlite3"
    path.write_bytes(ruin)
    with pytest.raises(StoreError, match=words):
        migrate(path)
    assert path.read_bytes() == ruin


def test_a_full_disk_is_said_in_one_sentence(tmp_path: Path) -> None:
    path = empty(tmp_path)
    with pytest.raises(StoreError, match="Make room"), writing(path) as book:
        _filled(book)
    with reading(path) as book:
        assert titles(book) == ()


def test_a_second_writer_is_told_to_wait(tmp_path: Path) -> None:
    path = empty(tmp_path)
    with writing(path), closing(connect(path)) as second:
        second.execute("PRAGMA busy_timeout = 0")
        with pytest.raises(StoreError, match="Another krume is writing"):
            _begun(path, second)


def _saved_and_failed(book: sqlite3.Connection) -> None:
    save_text(book, "formulas/F1.txt", b"Sponge\n", seen=None)
    save_text(book, "formulas/F1.txt", b"Sponge\n", seen=None)


def _filled(book: sqlite3.Connection) -> None:
    book.execute("PRAGMA max_page_count = 30")
    save_text(book, "formulas/F1.txt", b"x" * 1_000_000, seen=None)


def _begun(path: Path, second: sqlite3.Connection) -> None:
    with refused(path):
        second.execute("BEGIN IMMEDIATE")


_SAVING = """
import sys
from pathlib import Path
from krume.store.database import writing
from krume.store.migrations import migrate
from krume.store.texts import save_text, text_at
path = Path(sys.argv[1])
for number in range(1, 100_000):
    with writing(path) as book:
        there = text_at(book, "formulas/F1.txt")
        body = f"Sponge\\n\\n{number} g white rice flour\\n".encode() * 50
        save_text(book, "formulas/F1.txt", body, seen=there.revision if there else None)
        save_text(book, f"formulas/N{there.revision if there else 0}.txt", body, seen=None)
    print(there.revision + 1 if there else 1, flush=True)
"""


def test_a_kill_in_the_middle_loses_nothing_that_was_said_to_be_kept(tmp_path: Path) -> None:
    path = empty(tmp_path)
    for turn in range(8):
        said = _killed_while_saving(path, after_s=0.01 + 0.015 * turn)
        with reading(path) as book:
            kept = text_at(book, "formulas/F1.txt")
            revision = 0 if kept is None else kept.revision
            assert said <= revision <= said + 1
            assert len(titles(book)) == revision + (kept is not None)
            assert [each.revision for each in versions(book, "formulas/F1.txt")] == list(
                range(revision, 0, -1)
            )


def _killed_while_saving(path: Path, *, after_s: float) -> int:
    """Revision that was last said to be kept when the writer was killed."""
    with reading(path) as book:
        before = text_at(book, "formulas/F1.txt")
    process = subprocess.Popen(
        [sys.executable, "-c", _SAVING, str(path)], stdout=subprocess.PIPE, text=True
    )
    if process.stdout is None:
        raise RuntimeError
    first = process.stdout.readline()
    time.sleep(after_s)
    process.send_signal(signal.SIGKILL)
    rest = process.stdout.read().splitlines()
    process.wait()
    process.stdout.close()
    said = [int(line) for line in [first.strip(), *rest] if line.strip()]
    return max(said, default=0 if before is None else before.revision)


def test_one_look_sees_one_moment_until_something_is_kept_within(tmp_path: Path) -> None:
    path = empty(tmp_path)

    def keep(number: int) -> None:
        with writing(path) as book:
            save_text(book, f"formulas/{number}.txt", b"x", seen=None)

    def count() -> int:
        with reading(path) as book:
            return len(titles(book))

    with one_look():
        assert count() == 0
        Context().run(keep, 1)
        assert count() == 0
        assert Context().run(count) == 1
        keep(2)
        assert count() == 2
    assert count() == 2


def test_every_commit_moves_the_stamp_and_one_that_was_given_up_does_not(tmp_path: Path) -> None:
    path = empty(tmp_path)

    def count() -> object:
        with looked(path) as look:
            return look.stamp[-1]

    first = count()
    with pytest.raises(ConflictError), writing(path) as book:
        save_text(book, "formulas/1.txt", b"x", seen=7)
    assert count() == first
    with writing(path) as book:
        save_text(book, "formulas/1.txt", b"x", seen=None)
    assert count() != first
