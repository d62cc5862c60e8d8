"""Every error is a page with the way on."""

from starlette.routing import Route
from starlette.testclient import TestClient

from krume.web.frame.application import application


def test_a_page_that_is_not_there_says_so(client: TestClient) -> None:
    answer = client.get("/nowhere/<b>")
    assert answer.status_code == 404
    assert "There is no such page" in answer.text
    assert "<b>" not in answer.text


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
