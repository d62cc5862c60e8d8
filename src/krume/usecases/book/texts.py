"""The texts of a book as pages keep them: listed, opened, saved by version, compared."""

from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Literal

from krume.base import ConflictError, InputError, NotFoundError
from krume.design import apply_answers, decode_text
from krume.store import (
    FOLDERS,
    Book,
    KeptText,
    book_at,
    book_bytes,
    drop_text,
    folder_bytes,
    keep_text,
    kept_text,
    kept_versions,
    list_texts,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.slug import slug

TEXT_LIMIT = 1_000_000
"""Signs a text may have on a page; a baker's note-book is a tenth of it."""


@dataclass(frozen=True, slots=True)
class TextRow:
    """One text of a list: the name it goes by, and the name on its first line."""

    kind: str
    name: str
    title: str


@dataclass(frozen=True, slots=True)
class TextNow:
    """One text as it is now; `revision` is None where it is a plain file, or not kept yet."""

    kind: str
    name: str
    title: str
    text: str
    revision: int | None
    changed_at: str = ""


@dataclass(frozen=True, slots=True)
class TextVersion:
    """One version of a text."""

    revision: int
    title: str
    text: str
    changed_at: str
    is_deleted: bool


@dataclass(frozen=True, slots=True)
class LineChange:
    """One line of two versions side by side: `same`, `out`, `in` or `changed`."""

    kind: Literal["same", "out", "in", "changed"]
    before: str
    after: str


def texts_of(kind: str, asked: Asked, *, search: str = "") -> tuple[TextRow, ...]:
    """Texts of a kind whose name or title holds every word that is searched for."""
    words = search.casefold().split()
    rows = (
        TextRow(t.kind, t.name, t.title) for t in list_texts(book_at(asked.book)) if t.kind == kind
    )
    return tuple(row for row in rows if _holds(f"{row.name} {row.title}".casefold(), words))


def _holds(text: str, words: list[str]) -> bool:
    return all(word in text for word in words)


def text_now(kind: str, name: str, asked: Asked) -> TextNow:
    """A text of the book by its name; raises NotFoundError where there is none."""
    book, place = book_at(asked.book), _place(kind, name)
    kept = kept_text(book, place)
    data = book_bytes(book, place) if kept is None else kept.body
    if data is None:
        raise NotFoundError(f"The book has no {kind} called {name}.", where=name, got=name)
    text = decode_text(data).value
    title = next((line.strip() for line in text.splitlines() if line.strip()), name)
    if kept is None:
        return TextNow(kind, name, title, text, None)
    return TextNow(kind, name, title, text, kept.revision, kept.changed_at)


def save_text(kind: str, name: str, text: str, asked: Asked, *, seen: int | None) -> TextNow:
    """Keep a text; sent twice it is kept once. Raises ConflictError where another was kept.

    Without a name it goes by the name on its first line.
    """
    if len(text) > TEXT_LIMIT:
        raise InputError(
            f"That text has {len(text):,} signs; {TEXT_LIMIT:,} are the most. Nothing was kept.",
            field="text",
            got=f"{len(text)} signs",
            want=f"at most {TEXT_LIMIT}",
        )
    if not text.strip():
        raise InputError("There is nothing in it. Type at least a name.", field="text")
    book = book_at(asked.book)
    if not name.strip() and (same := _same(kind, text, book)) is not None:
        return text_now(kind, same, asked)
    name = name.strip() or _free(kind, slug(_first(text)), book)
    place = _place(kind, name)
    try:
        kept = keep_text(book, place, text.encode(), seen=seen)
    except ConflictError:
        now = kept_text(book, place)
        if now is None or now.body != text.encode():
            raise
        kept = now
    return TextNow(kind, name, kept.title, text, kept.revision, kept.changed_at)


def answered_text(text: str, answer: str) -> str:
    """A text with one answer edited into it: "line 4=5 eggs, EU M"."""
    return apply_answers(text, (answer,))


def delete_text(kind: str, name: str, asked: Asked, *, seen: int) -> None:
    """Take a text out of the book; its versions stay."""
    drop_text(book_at(asked.book), _place(kind, name), seen=seen)


def bring_back(kind: str, name: str, asked: Asked, *, revision: int) -> TextNow:
    """An old version kept again as the newest one."""
    versions = versions_of(kind, name, asked)
    wanted = next((v for v in versions if v.revision == revision), None)
    if wanted is None:
        raise NotFoundError(f"{name} has no version {revision}.", where=name, got=str(revision))
    latest = versions[0]
    seen = None if latest.is_deleted else latest.revision
    return save_text(kind, name, wanted.text, asked, seen=seen)


def versions_of(kind: str, name: str, asked: Asked) -> tuple[TextVersion, ...]:
    """All versions of a text, the newest first."""
    return tuple(_version(kept) for kept in kept_versions(book_at(asked.book), _place(kind, name)))


def _version(kept: KeptText) -> TextVersion:
    text = decode_text(kept.body).value
    return TextVersion(kept.revision, kept.title, text, kept.changed_at, kept.is_deleted)


def differences(before: str, after: str) -> tuple[LineChange, ...]:
    r"""Two versions line by line.

    >>> [c.kind for c in differences("a\nb\nc", "a\nB\nc\nd")]
    ['same', 'changed', 'same', 'in']
    """
    old, new = before.splitlines(), after.splitlines()
    found: list[LineChange] = []
    for tag, a, b, c, d in SequenceMatcher(None, old, new, autojunk=False).get_opcodes():
        if tag == "equal":
            found += [LineChange("same", line, line) for line in old[a:b]]
            continue
        both = min(b - a, d - c)
        pairs = zip(old[a : a + both], new[c : c + both], strict=True)
        found += [LineChange("changed", was, now) for was, now in pairs]
        found += [LineChange("out", line, "") for line in old[a + both : b]]
        found += [LineChange("in", "", line) for line in new[c + both : d]]
    return tuple(found)


def _first(text: str) -> str:
    return next((line.strip() for line in text.splitlines() if line.strip()), "")


def _same(kind: str, text: str, book: Book) -> str | None:
    """Name of a text of the book that is this very one, typed or sent again."""
    held = folder_bytes(book, _folder(kind))
    return next((name for name, data in held.items() if _alike(data, text.encode())), None)


def _free(kind: str, stem: str, book: Book) -> str:
    """A name that is not taken."""
    number, name = 1, stem
    while book_bytes(book, _place(kind, name)) is not None:
        number += 1
        name = f"{stem}-{number}"
    return name


def _alike(held: bytes, data: bytes) -> bool:
    """Whether two texts are the same line for line, whatever ends their lines."""
    return _plain_ends(held) == _plain_ends(data)


def _plain_ends(data: bytes) -> bytes:
    return data.replace(b"\r\n", b"\n").rstrip()


def _place(kind: str, name: str) -> str:
    """Place of a text in the book; a name is never a path."""
    plain = " ".join(name.split())
    if not plain or any(sign in plain for sign in '/\\:*?"<>|') or plain.startswith("."):
        plain = slug(plain)
    return f"{_folder(kind)}/{plain}.txt"


def _folder(kind: str) -> str:
    return next(folder for folder, word in FOLDERS.items() if word == kind)
