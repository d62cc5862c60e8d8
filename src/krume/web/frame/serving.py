"""The web app on this machine alone, until it is stopped."""

import socket
from collections.abc import Callable
from pathlib import Path

from krume.base import StoreError
from krume.usecases import Asked, health_of, init_book
from krume.web.frame.application import application

HOST = "127.0.0.1"
PORT = 8710


def serve(book: Path | None, *, port: int = PORT, tell: Callable[[str], None]) -> None:
    """Serve the book's pages on 127.0.0.1; `tell` hears the address once it is open.

    A book that is not there yet is made, so that the first page can keep the first formula.
    """
    import uvicorn

    with _bound(port) as listening:
        if not health_of(Asked(book=book)).book:
            init_book(Asked(book=book))
        tell(f"http://{HOST}:{listening.getsockname()[1]}/")
        config = uvicorn.Config(
            application(book), log_level="warning", access_log=False, server_header=False
        )
        uvicorn.Server(config).run(sockets=[listening])


def _bound(port: int) -> socket.socket:
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((HOST, port))
        # A browser that is quicker than the app waits, and is not refused.
        listening.listen()
    except OSError as error:
        listening.close()
        raise StoreError(
            f"Port {port} is in use. Another krume may be open; or choose one: --port {port + 1}.",
            field="--port",
            got=str(port),
        ) from error
    return listening
