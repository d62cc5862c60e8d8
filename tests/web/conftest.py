"""The web app over a book with the demo studio, and over none."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from krume.usecases import Asked, load_demo
from krume.web import application

OWN = "http://127.0.0.1:8710"


@pytest.fixture(scope="session")
def demo_book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A book with the demo studio, which tests leave as it is."""
    path = tmp_path_factory.mktemp("web") / "book"
    load_demo(Asked(book=path))
    return path


@pytest.fixture(scope="session")
def client(demo_book: Path) -> Iterator[TestClient]:
    """A browser's requests to the app over the demo book."""
    with TestClient(application(demo_book), base_url=OWN) as found:
        yield found


@pytest.fixture
def bare(tmp_path: Path) -> Iterator[TestClient]:
    """The app where there is no book yet."""
    with TestClient(application(tmp_path / "none"), base_url=OWN) as found:
        yield found


@pytest.fixture
def own(tmp_path: Path) -> Iterator[TestClient]:
    """The app over a demo book that the test may change."""
    load_demo(Asked(book=tmp_path / "book"))
    with TestClient(application(tmp_path / "book"), base_url=OWN) as found:
        yield found
