"""The guard at the door: own names only, no cross-site writing, no huge bodies."""

import pytest
from starlette.testclient import TestClient

from krume.web.frame.guarding import BODY_LIMIT

COVERS = ("application",)


@pytest.mark.parametrize("host", ["127.0.0.1:8710", "localhost", "LOCALHOST:1", "[::1]:8710"])
def test_this_machines_own_names_are_let_in(client: TestClient, host: str) -> None:
    assert client.get("/health", headers={"Host": host}).status_code == 200


@pytest.mark.parametrize(
    "host", ["", "evil.example", "127.0.0.1.evil.example", "127.0.0.1:80@evil", "10.0.0.4:8710"]
)
def test_any_other_name_is_refused(client: TestClient, host: str) -> None:
    assert client.get("/health", headers={"Host": host}).status_code == 421


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({"Sec-Fetch-Site": "cross-site"}, 403),
        ({"Sec-Fetch-Site": "same-site"}, 403),
        ({"Origin": "http://evil.example"}, 403),
        ({"Origin": "null"}, 403),
        ({"Sec-Fetch-Site": "same-origin"}, 405),
        ({"Origin": "http://127.0.0.1:8710"}, 405),
        ({}, 405),
    ],
)
def test_a_form_of_another_site_is_refused_before_it_reaches_a_page(
    client: TestClient, headers: dict[str, str], status: int
) -> None:
    assert client.post("/sums", headers=headers).status_code == status


def test_a_body_past_the_limit_is_refused(client: TestClient) -> None:
    answer = client.post("/sums", content=b"x" * (BODY_LIMIT + 1))
    assert answer.status_code == 413
    assert "2 MB" in answer.text


def test_every_answer_lets_nothing_in_from_elsewhere(client: TestClient) -> None:
    for path in ("/health", "/sums", "/static/tokens.css", "/nowhere"):
        headers = client.get(path).headers
        assert headers["content-security-policy"].startswith("default-src 'none'")
        assert "unsafe" not in headers["content-security-policy"]
        assert headers["x-content-type-options"] == "nosniff"
