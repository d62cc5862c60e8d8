"""The server stands on this machine alone."""

import socket

import pytest

from krume.base import StoreError
from krume.web.frame.serving import HOST, serve


def test_a_port_that_is_in_use_is_said_with_the_next_one() -> None:
    with socket.socket() as taken:
        taken.bind((HOST, 0))
        taken.listen()
        port = taken.getsockname()[1]
        with pytest.raises(StoreError, match=f"--port {port + 1}"):
            serve(None, port=port, tell=lambda _: None)
