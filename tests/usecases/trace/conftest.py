"""A demo book in a database that each test may write in."""

import shutil
from pathlib import Path

import pytest

from krume.usecases import Asked, load_demo


@pytest.fixture(scope="session")
def loaded(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo studio in a database, which nobody changes."""
    path = tmp_path_factory.mktemp("trace") / "book"
    load_demo(Asked(book=path))
    return path


@pytest.fixture
def own(loaded: Path, tmp_path: Path) -> Asked:
    """A request on a copy of it."""
    shutil.copytree(loaded, tmp_path / "book")
    return Asked(book=tmp_path / "book")
