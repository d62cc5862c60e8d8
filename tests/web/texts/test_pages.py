"""Texts of every kind keep their versions, and two editors see both."""

import html
import re

import pytest
from starlette.testclient import TestClient

from krume.web.texts.pages import TextKind, text_routes

KINDS = [
    ("formulas", "Mine\n\n100 g sugar\n"),
    ("orders", "Mine\nDate: 2027-06-12\n\n1 T1\n"),
]


@pytest.mark.parametrize(("section", "text"), KINDS)
def test_a_text_is_kept_edited_and_taken_back(own: TestClient, section: str, text: str) -> None:
    kept = own.post(f"/{section}", data={"text": text, "name": "mine"})
    assert kept.url.path == f"/{section}/mine"
    edited = own.post(f"/{section}/mine/edit", data={"text": text + "2 more\n", "seen": "1"})
    assert "version 2, as it is now" in edited.text
    old = own.get(f"/{section}/mine/versions/1").text
    assert "2 more" in old
    assert "version 3, as it is now" in own.post(f"/{section}/mine/versions/1").text


def test_many_versions_are_listed_when_they_are_asked_for(own: TestClient) -> None:
    own.post("/formulas", data={"text": "Mine\n\n100 g sugar\n", "name": "mine"})
    for seen in range(1, 14):
        text = f"Mine\n\n{100 + seen} g sugar\n"
        own.post("/formulas/mine/edit", data={"text": text, "seen": str(seen)})
    short = own.get("/formulas/mine").text
    assert "version 14, as it is now" in short
    assert "/formulas/mine/versions/3" in short
    assert "/formulas/mine/versions/2" not in short
    assert "All 14 versions" in short
    assert "/formulas/mine/versions/1" in own.get("/formulas/mine?all=versions").text


@pytest.mark.parametrize(("section", "text"), KINDS)
def test_two_editors_see_both(own: TestClient, section: str, text: str) -> None:
    own.post(f"/{section}", data={"text": text, "name": "mine"})
    own.post(f"/{section}/mine/edit", data={"text": text + "one\n", "seen": "1"})
    second = own.post(f"/{section}/mine/edit", data={"text": text + "other\n", "seen": "1"})
    assert second.status_code == 409
    both = html.unescape(re.sub("<[^>]*>", "", second.text))
    assert "one" in both
    assert "other" in both
    assert 'name="seen" value="2"' in second.text


def test_a_kind_has_six_routes_below_its_own_section() -> None:
    kind = TextKind("torte", "tortes")
    routes = text_routes(kind, lambda _request, _form, _status: pytest.fail("not asked"))
    assert len(routes) == 6
    assert all(route.path.startswith("/tortes") for route in routes)
    assert kind.address("a/b") == "/tortes/a%2Fb"


@pytest.mark.parametrize("section", ["formulas", "orders", "tortes"])
def test_more_than_a_megabyte_is_refused_and_stays_in_the_box(
    own: TestClient, section: str
) -> None:
    text = "Mine\n" + "long words\n" * 120_000
    answer = own.post(f"/{section}", data={"text": text, "name": "mine"})
    assert answer.status_code == 422
    assert "1,000,000 are the most" in answer.text
    assert answer.text.count("long words") >= 120_000
    assert own.get(f"/{section}/mine").status_code == 404
