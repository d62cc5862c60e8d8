"""The fridge was off as a page: what is said first, and questions beside their fields."""

import re

import pytest
from starlette.testclient import TestClient


def plain(text: str) -> str:
    return " ".join(re.sub("<[^>]*>", " ", text).split())


def test_before_anything_is_said_it_says_what_to_do_and_lists_the_orders(
    client: TestClient,
) -> None:
    answer = client.get("/fridge")
    text = plain(answer.text)
    assert answer.status_code == 200
    assert answer.text.count("<h1") == 1
    assert "What is not shown is not kept" in text
    assert "102 2 T2, 1 T3, 1 TART" in text


def test_a_night_without_current_names_what_is_thrown_away_then_the_orders(
    client: TestClient,
) -> None:
    text = plain(client.get("/fridge", params={"since": "22:30", "of": "101"}).text)
    assert text.index("T1 Orl hazel torte discard") < text.index("Order 101 M. Tarrow")
    assert "begin by Friday 2027-06-11" in text
    assert "C1 448 g" in text
    assert "The local authority in England" in text
    assert "safe" not in text.casefold()


def test_a_cold_reading_lets_the_order_go_on(client: TestClient) -> None:
    found = client.get("/fridge", params={"since": "22:30", "of": "101", "food": "5 °C"})
    text = plain(found.text)
    assert "goes on" in text
    assert "Nothing of it is lost." in text


def test_without_hours_and_readings_it_asks(client: TestClient) -> None:
    text = plain(client.get("/fridge", params={"more": "C2", "judge": "yes"}).text)
    assert "Since when was it off?" in text
    assert "not shown, as discarded" in text


@pytest.mark.parametrize(
    ("typed", "field", "words"),
    [
        ({"since": "soon"}, "since", "is no moment"),
        ({"since": "22:30", "food": "hot"}, "food", "“hot” is no temperature"),
        ({"since": "22:30", "food": "400"}, "food", "no figure of a fridge"),
        ({"since": "22:30", "until": "2027-06-01 09:00"}, "until", "is before"),
        ({"since": "22:30", "of": "101", "readings": "C1"}, "readings", "is no reading"),
    ],
)
def test_what_cannot_be_is_said_beside_its_field_and_stays_typed(
    client: TestClient, typed: dict[str, str], field: str, words: str
) -> None:
    answer = client.get("/fridge", params=typed)
    assert answer.status_code == 422
    assert words in plain(answer.text)
    assert f'id="wrong-{field}"' in answer.text
    assert f'value="{typed[field]}"' in answer.text


def test_a_name_that_is_not_there_is_said(client: TestClient) -> None:
    answer = client.get("/fridge", params={"more": "NONE", "since": "22:30"})
    assert answer.status_code == 422
    assert "NONE" in plain(answer.text)


def test_an_empty_book_answers_and_says_what_to_do(bare: TestClient) -> None:
    answer = bare.get("/fridge")
    assert answer.status_code == 200
    assert "No order is open" in plain(answer.text)
    assert bare.get("/fridge", params={"judge": "yes"}).status_code == 200


def test_what_is_typed_stays_text(client: TestClient) -> None:
    answer = client.get("/fridge", params={"since": "<script>alert(1)</script>"})
    assert "<script>alert" not in answer.text


def test_the_day_and_the_orders_lead_there(client: TestClient) -> None:
    assert 'href="/fridge"' in client.get("/").text
    assert 'href="/fridge"' in client.get("/orders").text
    assert 'href="/fridge?of=101"' in client.get("/orders/101").text


def test_a_kept_cake_says_in_the_open_that_its_torte_takes_it_along(client: TestClient) -> None:
    typed = {"since": "22:30", "until": "02:00", "food": "9", "of": "101"}
    text = re.sub(r"<details.*?</details>", "", client.get("/fridge", params=typed).text)
    assert "in a torte it goes with the torte: F1 in T1." in plain(text)
