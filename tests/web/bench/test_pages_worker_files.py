"""The worker of the bench keeps every file its pages are made of."""

import re
from importlib.resources import files

import pytest
from starlette.testclient import TestClient

STATIC = files("krume.web") / "static"


def kept() -> set[str]:
    text = (STATIC / "bench-worker.js").read_text()
    listed = text[text.index("const FILES") : text.index("].map")]
    return set(re.findall(r'"([\w.-]+)"', listed))


def test_every_script_of_the_bench_is_kept_and_each_can_be_had(client: TestClient) -> None:
    scripts = {each.name for each in STATIC.iterdir() if each.name.startswith(("bench", "slip"))}
    assert scripts - kept() == {"bench-worker.js"}
    for name in kept():
        assert client.get(f"/static/{name}").status_code == 200, name


@pytest.mark.parametrize("path", ["/bench/F2", "/bench/F2/clock", "/bench/F2/cup", "/bench/F2/end"])
def test_a_page_asks_for_nothing_that_is_not_kept(client: TestClient, path: str) -> None:
    asked = set(re.findall(r'(?:src|href)="/static/([^"]+)"', client.get(path).text))
    assert asked <= kept()


def test_the_worker_stands_above_the_pages_of_the_bench(client: TestClient) -> None:
    answer = client.get("/bench-worker.js")
    assert answer.headers["content-type"].startswith("text/javascript")
    assert "worker-src 'self'" in answer.headers["content-security-policy"]
    assert client.get("/offline").status_code == 200
