"""The server stands on this machine alone."""

import socket
from pathlib import Path

import httpx2
import pytest
from starlette.testclient import TestClient

from krume.base import StoreError
from krume.usecases import export_book
from krume.web.frame.serving import HOST, serve
from tests.web.browsing import served_alone


def test_a_port_that_is_in_use_is_said_with_the_next_one() -> None:
    with socket.socket() as taken:
        taken.bind((HOST, 0))
        taken.listen()
        port = taken.getsockname()[1]
        with pytest.raises(StoreError, match=f"--port {port + 1}"):
            serve(None, port=port, tell=lambda _: None)


def test_a_book_that_is_not_there_is_made_so_that_a_first_formula_can_be_kept(
    tmp_path: Path,
) -> None:
    with served_alone(tmp_path / "book") as (_, address):
        sent = {"text": "Mine\n\n100 g sugar\n", "name": "mine"}
        answer = httpx2.post(f"{address}/formulas", data=sent, timeout=60)
        assert answer.status_code == 303
        assert httpx2.get(f"{address}/formulas/mine", timeout=60).status_code == 200


def test_a_folder_of_other_things_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("mine")
    with pytest.raises(StoreError, match="no book"):
        serve(tmp_path, port=0, tell=lambda _: None)
    assert [each.name for each in tmp_path.iterdir()] == ["letter.txt"]


def test_texts_in_the_folder_it_was_started_in_stand_for_none_of_the_book(
    own: TestClient, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    pages = ("/formulas/F2", "/orders/101", "/tortes/T1", "/slip/F2")
    export_book(own.app.state.asked, tmp_path / "out")  # type: ignore[attr-defined]
    for path in (tmp_path / "out").glob("*/*.txt"):
        path.write_text(f"Elsewhere {path.read_text(encoding='utf-8')}", encoding="utf-8")
    monkeypatch.chdir(tmp_path / "out")
    assert not [page for page in pages if "Elsewhere" in own.get(page).text]
