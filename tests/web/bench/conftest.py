"""A book of its own, served for a real browser on a port nobody else has."""

import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from krume.usecases import Asked, load_demo


@dataclass(frozen=True, slots=True)
class Served:
    """An open app: its address, and its book."""

    address: str
    asked: Asked


@pytest.fixture
def served(tmp_path: Path) -> Iterator[Served]:
    """The app over a demo book that the test may change."""
    import uvicorn

    from krume.web import application

    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    config = uvicorn.Config(application(asked.book), port=0, log_level="error", access_log=False)
    server = uvicorn.Server(config)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    for _ in range(400):
        if server.started:
            break
        time.sleep(0.05)
    assert server.started
    port = server.servers[0].sockets[0].getsockname()[1]
    yield Served(f"http://127.0.0.1:{port}", asked)
    server.should_exit = True
    thread.join(20)


@pytest.fixture
def served_static(served: Served) -> str:
    """The address the page's own modules are served from."""
    return served.address
