"""Texts of a book's database: every version is kept, and an edit names the version it saw."""

import sqlite3
from dataclasses import dataclass

from krume.base import ConflictError, NotFoundError
from krume.store.moment import moment


@dataclass(frozen=True, slots=True)
class KeptText:
    """One version of one text; `place` is its name in the book: formulas/F1.txt."""

    place: str
    title: str
    body: bytes
    revision: int
    is_deleted: bool
    changed_at: str


def text_at(connection: sqlite3.Connection, place: str) -> KeptText | None:
    """The text of a place as it is now; None where there is none, or it was deleted."""
    row = connection.execute("SELECT * FROM text WHERE place = ?", (place,)).fetchone()
    return None if row is None or row["is_deleted"] else _kept(row, place)


def titles(connection: sqlite3.Connection) -> tuple[tuple[str, str], ...]:
    """Place and title of every text, by place."""
    rows = connection.execute("SELECT place, title FROM text WHERE NOT is_deleted ORDER BY place")
    return tuple((row["place"], row["title"]) for row in rows)


def bodies(connection: sqlite3.Connection, folder: str) -> dict[str, bytes]:
    """Every text of a folder by its place: one question for all of them."""
    rows = connection.execute(
        "SELECT place, body FROM text WHERE NOT is_deleted AND place >= ? AND place < ? "
        "ORDER BY place",
        (f"{folder}/", f"{folder}0"),
    )
    return {row["place"]: bytes(row["body"]) for row in rows}


def text_places(connection: sqlite3.Connection, folder: str) -> tuple[str, ...]:
    """Places of the texts of a folder."""
    rows = connection.execute(
        "SELECT place FROM text WHERE NOT is_deleted AND place >= ? AND place < ? ORDER BY place",
        (f"{folder}/", f"{folder}0"),
    )
    return tuple(row["place"] for row in rows)


def versions(connection: sqlite3.Connection, place: str) -> tuple[KeptText, ...]:
    """All versions of a text, the newest first; of a deleted one too."""
    rows = connection.execute(
        "SELECT kept.* FROM text_history AS kept JOIN text ON text.id = kept.text_id "
        "WHERE text.place = ? ORDER BY kept.revision DESC",
        (place,),
    )
    return tuple(_kept(row, place) for row in rows)


def save_text(
    connection: sqlite3.Connection, place: str, body: bytes, *, seen: int | None
) -> KeptText:
    """Keep a new version of a text; `seen` is the version that was edited, None for a new text.

    Raises ConflictError where the text has changed since, or is there already: nothing is kept
    then, and both versions can be shown.
    """
    return _save(connection, place, body, seen=seen, is_deleted=False)


def delete_text(connection: sqlite3.Connection, place: str, *, seen: int) -> KeptText:
    """Take a text out of the book; its versions are kept."""
    there = text_at(connection, place)
    if there is None:
        raise NotFoundError(f"The book has no text {place}.", where=place, got=place)
    return _save(connection, place, there.body, seen=seen, is_deleted=True)


def _save(
    connection: sqlite3.Connection, place: str, body: bytes, *, seen: int | None, is_deleted: bool
) -> KeptText:
    row = connection.execute("SELECT * FROM text WHERE place = ?", (place,)).fetchone()
    now = None if row is None or row["is_deleted"] else row["revision"]
    if now != seen:
        raise _changed(place, seen=seen, now=now)
    kept = KeptText(
        place=place,
        title=first_line(body),
        body=body,
        revision=1 if row is None else row["revision"] + 1,
        is_deleted=is_deleted,
        changed_at=moment(),
    )
    _put(connection, kept)
    return kept


def _put(connection: sqlite3.Connection, kept: KeptText) -> None:
    values = (kept.title, kept.body, kept.revision, kept.is_deleted, kept.changed_at)
    connection.execute(
        "INSERT INTO text (place, title, body, revision, is_deleted, changed_at) "
        "VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (place) DO UPDATE SET title = excluded.title, "
        "body = excluded.body, revision = excluded.revision, is_deleted = excluded.is_deleted, "
        "changed_at = excluded.changed_at",
        (kept.place, *values),
    )
    connection.execute(
        "INSERT INTO text_history (text_id, title, body, revision, is_deleted, changed_at) "
        "SELECT id, ?, ?, ?, ?, ? FROM text WHERE place = ?",
        (*values, kept.place),
    )


def _changed(place: str, *, seen: int | None, now: int | None) -> ConflictError:
    if seen is None:
        message = f"{place} is there already and was left as it is. Choose another name."
    elif now is None:
        message = f"{place} was deleted since you opened it. Yours was not kept; save it anew."
    else:
        message = f"{place} changed since you opened it. Nothing was overwritten; look at both."
    got = "no text" if now is None else f"version {now}"
    want = "no text" if seen is None else f"version {seen}"
    return ConflictError(message, where=place, got=got, want=want)


def first_line(body: bytes) -> str:
    """The first line of a text that says anything."""
    text = body.decode("utf-8-sig", errors="replace")
    return next((line.strip() for line in text.splitlines() if line.strip()), "")


def _kept(row: sqlite3.Row, place: str) -> KeptText:
    return KeptText(
        place=place,
        title=row["title"],
        body=bytes(row["body"]),
        revision=row["revision"],
        is_deleted=bool(row["is_deleted"]),
        changed_at=row["changed_at"],
    )
