"""Eggs of the open orders on a page: counted when asked, what to buy first."""

import re

from starlette.testclient import TestClient

COVERS = ("shown",)


def _bought(text: str) -> dict[str, str]:
    rows = re.findall(r'class="big">([\d.]+)</span> <span class="what">([^<]*)<', text)
    return {label: count for count, label in rows}


def test_open_orders_are_ticked_and_nothing_is_counted_unasked(client: TestClient) -> None:
    text = client.get("/eggs").text
    assert len(re.findall(r'name="of" value="[^"]*" checked', text)) >= 2
    assert _bought(text) == {}


def test_the_eggs_of_two_orders_are_bought_together(client: TestClient) -> None:
    text = client.get("/eggs", params={"of": ["101", "102"]}).text
    assert _bought(text) == {"EU L": "4", "EU M": "17"}
    assert text.index("To buy") < text.index(">Crack<") < text.index("Into the bowls")
    assert "255 ± 8.9 g" in text


def test_eggs_in_the_house_are_taken_off_and_packs_are_told(client: TestClient) -> None:
    asked = {"of": ["101", "102"], "have": "10 EU M", "pack": "6, 10"}
    text = client.get("/eggs", params=asked).text
    assert _bought(text)["EU M"] == "7"
    assert "1 pack of 10, 3 over" in text
    assert "10 EU M</textarea>" in text


def test_other_names_are_counted_too(client: TestClient) -> None:
    text = client.get("/eggs", params={"more": "F1*12"}).text
    assert _bought(text) == {"EU M": "60"}
    assert 'value="F1*12"' in text


def test_too_few_eggs_are_said_with_what_may_be_bought(client: TestClient) -> None:
    asked = {"of": "101", "have": "2 EU M", "shop": "none"}
    text = client.get("/eggs", params=asked).text
    assert "The eggs are not enough" in text
    assert _bought(text) == {}


def test_what_is_typed_wrongly_is_said_and_kept(client: TestClient) -> None:
    answer = client.get("/eggs", params={"of": "101", "pack": "six"})
    assert answer.status_code == 422
    assert 'id="wrong-pack"' in answer.text
    assert 'value="six"' in answer.text
    unknown = client.get("/eggs", params={"more": "F99"})
    assert unknown.status_code in (200, 422)
    assert "F99" in unknown.text
    assert _bought(unknown.text) == {}


def test_no_book_says_where_to_begin(bare: TestClient) -> None:
    answer = bare.get("/eggs")
    assert answer.status_code == 200
    assert "No order is open" in answer.text
