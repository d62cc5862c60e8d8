"""Keeping as a page: the days first, what was asked for next, then why and whose rule."""

import re

import pytest
from starlette.testclient import TestClient


def plain(text: str) -> str:
    return " ".join(re.sub("<[^>]*>", " ", text).split())


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART", "F1", "C1", "S1", "101", "102"])
def test_everything_of_the_book_has_its_page(client: TestClient, name: str) -> None:
    answer = client.get(f"/keep/{name}")
    text = plain(answer.text)
    assert answer.status_code == 200
    assert answer.text.count("<h1") == 1
    assert "Rules of other places" in text
    assert "safe" not in text.casefold()
    assert "Freezing and thawing" in text


def test_nothing_is_predicted_before_it_is_asked(client: TestClient) -> None:
    text = plain(client.get("/keep/T1").text)
    assert "3–5 days count on 3" in text
    assert "Frozen through" not in text
    assert "predicted at" not in text


def test_freezing_the_road_and_a_heating_are_answered_when_asked(client: TestClient) -> None:
    typed = {"freeze": "yes", "road": "40 min", "outside": "28 C", "heat": "0=60, 1=60"}
    text = plain(client.get("/keep/T1", params=typed).text)
    assert "takes it with some loss" in text
    assert "Frozen through after" in text
    assert "not shown until it is read" in text
    assert "40 of 240 minutes count as warm" in text
    assert "information, no promise" in text


def test_an_order_says_when_it_leaves_the_freezer(client: TestClient) -> None:
    text = plain(client.get("/keep/101", params={"freeze": "yes"}).text)
    assert "Out of the freezer by Friday 11 June" in text


@pytest.mark.parametrize(
    ("typed", "field", "words"),
    [
        ({"freezer": "warm"}, "freezer", "“warm” is no number"),
        ({"freezer": "-2"}, "freezer", "A freezer is asked about"),
        ({"outside": "30"}, "road", "How many minutes"),
        ({"road": "-4"}, "road", "The road is asked about"),
        ({"road": "30", "packs": "-4"}, "packs", "asked about from 0"),
        ({"heat": "hot"}, "heat", "is no reading"),
        ({"ready": "2027-06-01 09:00"}, "ready", "is before"),
    ],
)
def test_what_cannot_be_is_said_beside_its_field(
    client: TestClient, typed: dict[str, str], field: str, words: str
) -> None:
    answer = client.get("/keep/T1", params=typed)
    assert answer.status_code == 422
    assert words in plain(answer.text)
    assert f'id="wrong-{field}"' in answer.text
    assert "3–5 days" in plain(answer.text)


def test_where_sources_differ_stands_for_what_is_in_it(client: TestClient) -> None:
    assert "held at the boil" in client.get("/keep/C1").text
    assert "held at the boil" not in client.get("/keep/T3").text
    assert "Gelatine of another strength" in client.get("/keep/C2").text
    assert "Where sources differ" not in client.get("/keep/S1").text


def test_a_name_that_is_not_there_is_not_found(client: TestClient, bare: TestClient) -> None:
    assert client.get("/keep/NONE").status_code == 404
    assert bare.get("/keep/T1").status_code == 404


def test_tortes_and_orders_lead_there(client: TestClient) -> None:
    assert 'href="/keep/T1"' in client.get("/tortes/T1").text
    assert 'href="/keep/101"' in client.get("/orders/101").text


def test_a_status_stands_once_behind_its_sentence(client: TestClient) -> None:
    text = plain(client.get("/keep/T1").text)
    assert "3 to 5 days cold (common practice)." in text
    assert "(common practice). (common practice)" not in text
