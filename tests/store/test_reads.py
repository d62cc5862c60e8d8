"""What is read is noted with its mark; what changed between two looks is never the same again."""

from pathlib import Path

import pytest

from krume.base import StoreError
from krume.store.reads import NEVER, is_noting, mark_of_file, note, note_all, note_file, noting


def test_what_is_noted_within_counts_around_it_too() -> None:
    assert not is_noting()
    with noting() as outer:
        note(("text", "A"), 1)
        with noting() as inner:
            note(("text", "B"), 2)
        note_all({("text", "C"): 3})
    assert inner == {("text", "B"): 2}
    assert outer == {("text", "A"): 1, ("text", "B"): 2, ("text", "C"): 3}


def test_what_changed_between_two_looks_is_never_the_same_again() -> None:
    with noting() as reads:
        note(("text", "A"), 1)
        note(("text", "A"), 2)
    assert reads == {("text", "A"): NEVER}


def test_what_failed_was_read_all_the_same() -> None:
    def fails() -> None:
        with noting():
            note(("text", "A"), 1)
            raise StoreError("no")

    with noting() as reads, pytest.raises(StoreError):
        fails()
    assert reads == {("text", "A"): 1}


def test_a_file_that_is_not_there_is_noted_and_one_that_is_written_anew_too(
    tmp_path: Path,
) -> None:
    path = tmp_path / "A.txt"
    with noting() as reads:
        note_file(path)
    assert reads == {("file", str(path)): None}
    path.write_bytes(b"one")
    first = mark_of_file(path)
    path.write_bytes(b"three")
    assert None not in (first, mark_of_file(path))
    assert first != mark_of_file(path)
