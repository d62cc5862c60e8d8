"""`krume serve`: said with its address, stopped by its port."""

import socket

from tests.cli.conftest import Run


def test_a_port_in_use_is_refused_by_the_book(run: Run) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        said = run("serve", "--port", port, "--json")
    assert said.code == 5
    assert said.json["problems"][0]["where"] == "--port"
