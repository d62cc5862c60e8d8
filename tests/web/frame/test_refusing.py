"""Every error is a page with the way on."""

from pathlib import Path

from starlette.routing import Route
from starlette.testclient import TestClient

from krume.web.frame.application import application


def test_a_page_that_is_not_there_says_so(client: TestClient) -> None:
    answer = client.get("/nowhere/<b>")
    assert answer.status_code == 404
    assert "There is no such page" in answer.text
    assert "<b>" not in answer.text


def test_what_the_book_refuses_is_no_fault_of_krume(tmp_path: Path) -> None:
    (tmp_path / "formulas").mkdir()
    (tmp_path / "formulas" / "F1.txt").write_text("Mine\n\n5 g salt\n", encoding="utf-8")
    with TestClient(application(tmp_path), base_url="http://127.0.0.1:8710") as client:
        answer = client.post("/formulas/F1/answer", data={"where": "line 3", "line": "6 g salt"})
    assert answer.status_code == 503
    assert "The book refused" in answer.text
    assert "krume book import" in answer.text


def test_a_fault_shows_nothing_of_itself() -> None:
    app = application()

    def broken(_: object) -> None:
        raise LookupError("a secret place")

    app.router.routes.append(Route("/broken", broken))
    with TestClient(app, base_url="http://127.0.0.1", raise_server_exceptions=False) as client:
        answer = client.get("/broken")
    assert answer.status_code == 500
    assert "A fault in krume itself" in answer.text
    assert "secret" not in answer.text
