"""Custard as a page: depths by the fridge that is typed, the log that alone shows it."""

import re

import pytest
from starlette.testclient import TestClient


def _plain(text: str) -> str:
    return " ".join(re.sub("<[^>]*>", " ", text).split())


def test_a_torte_with_custard_has_its_depths_and_what_its_log_must_show(
    client: TestClient,
) -> None:
    answer = client.get("/tortes/T1/cooling")
    text = _plain(answer.text)
    assert answer.status_code == 200
    assert "metal tray in the fridge 1.5 cm 3 cm" in text
    assert "A prediction for C1, no evidence. Only its log shows it." in text
    assert "By 2 h it must be at 21 °C or below" in text
    assert answer.text.count("<h1") == 1


def test_the_books_logs_stand_beside_the_prediction_and_prove_nothing_of_another_batch(
    client: TestClient,
) -> None:
    text = _plain(client.get("/tortes/T1/cooling").text)
    assert "within log A of C1" in text
    assert "over log B of C1" in text
    assert text.count("It proves nothing of another batch.") == 2


def test_the_page_of_the_torte_leads_there(client: TestClient) -> None:
    assert 'href="/tortes/T1/cooling"' in client.get("/tortes/T1").text
    assert "/cooling" not in client.get("/tortes/TART").text


def test_a_custard_alone_has_the_same_page(client: TestClient) -> None:
    text = _plain(client.get("/formulas/C1/cooling").text)
    assert "All 942 g of C1" in text
    assert "the formula" in text


def test_a_cake_has_no_two_stages_and_that_is_said(client: TestClient) -> None:
    answer = client.get("/formulas/F1/cooling")
    assert answer.status_code == 200
    assert "No custard is in it" in answer.text


def test_a_warmer_fridge_moves_the_depths(client: TestClient) -> None:
    text = _plain(client.get("/tortes/T1/cooling", params={"fridge": "4 °C"}).text)
    assert "a fridge of 4 °C" in text
    assert "metal tray in the fridge 1 cm 2.5 cm" in text


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ({"fridge": "7"}, "never brings custard to 5 °C"),
        ({"fridge": "cold"}, "“cold” is no temperature"),
        ({"room": "80"}, "A room is asked about from 5 to 35 °C"),
    ],
)
def test_a_temperature_that_cannot_be_is_said_beside_its_field(
    client: TestClient, typed: dict[str, str], words: str
) -> None:
    answer = client.get("/tortes/T1/cooling", params=typed)
    assert answer.status_code == 422
    assert words in _plain(answer.text)
    (name, value), *_ = typed.items()
    assert f'id="wrong-{name}"' in answer.text
    assert f'value="{value}"' in answer.text


def test_a_name_that_is_not_there_is_not_found(client: TestClient, bare: TestClient) -> None:
    assert client.get("/tortes/NONE/cooling").status_code == 404
    assert bare.get("/formulas/C1/cooling").status_code == 404
