"""The app is killed in the middle of its saves: what it said was kept is in the book."""

from pathlib import Path

from krume.usecases import Asked, load_demo, save_text, verify_book
from tests.web.killing import Told, killed, lost

KILLS = 12


def test_nothing_that_was_said_to_be_kept_is_lost(tmp_path: Path) -> None:
    load_demo(Asked(book=tmp_path / "book"))
    told = killed(tmp_path / "book", times=KILLS)
    assert told.total >= KILLS
    assert min(len(told.texts), len(told.rows), len(told.steps)) > 0
    assert lost(tmp_path / "book", told) == []
    assert verify_book(Asked(book=tmp_path / "book")).is_answered


def test_a_loss_would_be_seen(tmp_path: Path) -> None:
    load_demo(Asked(book=tmp_path / "book"))
    save_text("formula", "killed", "Killed\n\nmark 1\n", Asked(book=tmp_path / "book"), seen=None)
    told = Told(texts=["mark 1", "mark 2"], rows=["mark 3"], steps=["mark 4"])
    assert lost(tmp_path / "book", told) == ["mark 2", "mark 3", "mark 4"]
