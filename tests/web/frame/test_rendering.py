"""What stands around every page."""

import re

from starlette.testclient import TestClient

COVERS = ("glyphs",)


def test_every_page_has_one_head_one_main_and_a_way_past_the_navigation(
    client: TestClient,
) -> None:
    for path in ("/sums", "/sums/dial", "/nowhere"):
        text = client.get(path).text
        assert len(re.findall(r"<h1[ >]", text)) == 1
        assert text.count("<main ") == 1
        assert 'href="#main"' in text
        assert "krume 0." in text


def test_every_section_of_the_navigation_is_a_page(client: TestClient) -> None:
    addresses = re.findall(r'<li><a href="(/[^"]*)"', client.get("/nowhere").text)
    assert addresses
    for address in addresses:
        assert client.get(address).status_code == 200


def test_health_is_for_a_machine_to_read(client: TestClient, bare: TestClient) -> None:
    assert client.get("/health").json()["counts"]["formulas"] == 13
    assert bare.get("/health").json()["book"] is False


def test_a_page_says_which_book_it_is_of(client: TestClient, bare: TestClient) -> None:
    said = [re.findall(r'data-book="(\w+)"', c.get("/sums").text) for c in (client, client, bare)]
    assert said[0] == said[1] != said[2]
    assert all(said)


def test_a_sign_that_turns_a_line_round_does_not_come_back_on_a_page(client: TestClient) -> None:
    shown = client.get("/trace", params={"name": "L-\u202e800"}).text
    assert "L-800" in shown
    assert "\u202e" not in shown
