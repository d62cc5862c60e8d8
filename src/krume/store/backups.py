"""Copies of a book's database: made while it is in use, checked, and put back whole."""

import contextlib
import hashlib
import os
import secrets
import sqlite3
from pathlib import Path

from krume.base import NotFoundError, StoreError
from krume.store.database import connect, refused
from krume.store.files import is_file, refusals

FOLDER = "backups"
"""Where copies go, inside a book's folder."""


def copy_to(path: Path, target: Path) -> Path:
    """A consistent copy of a database, whole or not there."""
    with refusals(target):
        target.parent.mkdir(parents=True, exist_ok=True)
        staged = target.with_name(f".krume-{secrets.token_hex(6)}")
        try:
            _copy(path, staged)
            _flush(staged)
            os.link(staged, target)
            _flush(target.parent)
        finally:
            staged.unlink(missing_ok=True)
    return target


def _copy(path: Path, staged: Path) -> None:
    with (
        refused(path),
        contextlib.closing(connect(path)) as source,
        contextlib.closing(sqlite3.connect(staged)) as copy,
    ):
        source.backup(copy)
        copy.execute("PRAGMA journal_mode = DELETE")


def _flush(path: Path) -> None:
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def free_name(folder: Path, stem: str) -> Path:
    """A name no backup has yet."""
    number, suffix = 1, ""
    while (found := folder / FOLDER / f"{stem}{suffix}.sqlite3").exists():
        number += 1
        suffix = f"-{number}"
    return found


def last_backup(folder: Path) -> Path | None:
    """The backup that was made last."""
    made = [p for p in (folder / FOLDER).glob("*.sqlite3") if is_file(p)]
    return max(made, key=lambda p: (p.stat().st_mtime_ns, p.name), default=None)


def put_back(copy: Path, path: Path) -> None:
    """Put a copy in the place of a database; the copy is checked first and stays where it is."""
    if not is_file(copy):
        raise NotFoundError(f"There is no backup {copy}.", where=str(copy), got=str(copy))
    faults = faults_of(copy)
    if faults:
        raise StoreError(
            f"{copy} is damaged itself ({faults[0]}). Name another backup. Nothing was changed.",
            where=str(copy),
            got=faults[0],
            want="a whole backup",
        )
    staged = path.with_name(f".krume-{secrets.token_hex(6)}")
    with refusals(path):
        path.parent.mkdir(parents=True, exist_ok=True)
        try:
            staged.write_bytes(copy.read_bytes())
            _flush(staged)
            _set_aside(path)
            staged.replace(path)
            _flush(path.parent)
        finally:
            staged.unlink(missing_ok=True)


def _set_aside(path: Path) -> None:
    """Move a database, with the log beside it, among the backups: it may still hold something."""
    aside = free_name(path.parent, "replaced")
    aside.parent.mkdir(parents=True, exist_ok=True)
    for end in ("", "-wal", "-shm"):
        beside = path.with_name(path.name + end)
        if beside.exists():
            beside.rename(aside.with_name(aside.name + end))


def faults_of(path: Path) -> tuple[str, ...]:
    """What is wrong with a database: damage, rows that point nowhere, a history with a gap."""
    try:
        with contextlib.closing(connect(path)) as connection:
            found = [row[0] for row in connection.execute("PRAGMA integrity_check")]
            found = [] if found == ["ok"] else found
            found += [f"{row[0]} points nowhere" for row in connection.execute(_LOOSE)]
            found += [f"{row[0]}: its history has a gap" for row in connection.execute(_GAPS)]
    except sqlite3.Error:
        return ("it cannot be read as a database",)
    return tuple(found)


_LOOSE = 'SELECT "table" FROM pragma_foreign_key_check'
_GAPS = """
    SELECT text.place FROM text
    LEFT JOIN text_history AS kept ON kept.text_id = text.id
    GROUP BY text.id
    HAVING count(kept.revision) <> text.revision
        OR max(CASE WHEN kept.revision = text.revision AND kept.body = text.body THEN 1 END) IS NULL
"""


def sha256_of(path: Path) -> str:
    """SHA-256 of a file."""
    with refusals(path, doing="read"), path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()
