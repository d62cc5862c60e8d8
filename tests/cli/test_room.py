"""`krume room` asks, shows and writes down the list of the room."""

from pathlib import Path

import pytest

from krume.usecases import Asked, load_demo
from tests.cli.conftest import Run


@pytest.fixture
def own(tmp_path: Path) -> str:
    """A demo book that the test may change."""
    load_demo(Asked(book=tmp_path / "book"))
    return str(tmp_path / "book")


@pytest.mark.parametrize("columns", [40, 100])
def test_a_list_that_is_not_begun_asks_each_thing(run: Run, columns: int) -> None:
    out = run("room", columns=columns).out
    said = " ".join(out.split())
    assert "The room on 2027-06-10: not begun" in said
    assert "Does wheat flour go through the same sieve?" in said
    assert "licensing authority decide" in said
    assert all(len(line) <= max(columns, 54) for line in out.splitlines())


def test_what_is_said_is_written_down_and_shown(run: Run, own: str) -> None:
    answer = run("room", "--say", "sieve=own", "--json", "--book", own).json["result"]
    assert answer["written"] == ["sieve: own, 2027-06-10"]
    assert answer["open_count"] == 1
    out = run("room", "--book", own).out
    assert "sieve: open" in out
    assert "of its own since 2027-06-10" in out
    assert "wooden spoons: shut" in out


def test_a_word_that_opens_nothing_is_refused(run: Run, own: str) -> None:
    said = run("room", "--say", "sieve=cleaned", "--book", own)
    assert said.code == 3
    assert "no washing frees a mesh of flour" in said.err
