"""A book with the demo studio, and texts to ask about."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from krume.store import place_all
from krume.usecases import Answer, Asked, SheetResult, make_sheets
from krume.usecases.book.book import demo_files

PLAIN = """\
Plain sponge
Tin: round 20 x 7 cm

100 g white rice flour
5 eggs
120 g caster sugar

Whisk and bake.
"""


@pytest.fixture(scope="session")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A book of its own with the demo studio in it."""
    path = tmp_path_factory.mktemp("usecases") / "book"
    place_all(path, demo_files())
    return path


@pytest.fixture
def demo(book: Path) -> Asked:
    """A request on the demo book."""
    return Asked(book=book)


@dataclass(frozen=True, slots=True)
class Made:
    """Sheets that were made once for several tests, which leave them as they are."""

    folder: Path
    answer: Answer[SheetResult]


@pytest.fixture(scope="session")
def sheets_101(book: Path, tmp_path_factory: pytest.TempPathFactory) -> Made:
    """The sheets of the demo's order 101."""
    folder = tmp_path_factory.mktemp("order") / "out"
    return Made(folder, make_sheets("101", Asked(book=book), out=folder))


@pytest.fixture
def own_demo(tmp_path: Path) -> Asked:
    """A request on a demo book, a folder of plain files, that the test may change."""
    place_all(tmp_path / "own-demo", demo_files())
    return Asked(book=tmp_path / "own-demo")


@pytest.fixture
def bare(tmp_path: Path) -> Asked:
    """A request where there is no book."""
    return Asked(book=tmp_path / "no-book")


@pytest.fixture
def write(tmp_path: Path) -> Callable[[str], str]:
    """Write a text to a file of its own; its path."""

    def writes(text: str) -> str:
        path = tmp_path / "text.txt"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return writes
