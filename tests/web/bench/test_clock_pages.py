"""The clocks and the cup as pages: one strip starts, one stops, the words change at the limits."""

import re
from uuid import uuid4

import pytest
from starlette.testclient import TestClient

from krume.store import book_at, start_clock
from krume.usecases import Asked, begin_at_bench

COVERS = ("cup_pages",)


def post(client: TestClient, name: str, **more: str) -> str:
    sent = {"key": "k" + name, "id": uuid4().hex, **more}
    return client.post(f"/bench/{name}/clock", data=sent).text


def shown(text: str) -> set[str]:
    """The panels that are not hidden."""
    return set(re.findall(r'data-panel="(\w+)"(?: data-clock="\w+")?>', text))


def started(client: TestClient, kind: str, minutes: float) -> str:
    """The page of a clock that was started so long ago."""
    from datetime import UTC, datetime, timedelta

    asked: Asked = client.app.state.asked  # type: ignore[attr-defined]
    key = begin_at_bench("F2", "k", asked)
    at = datetime.now(UTC) - timedelta(minutes=minutes, seconds=5)
    start_clock(book_at(asked.book), uuid4().hex, kind=kind, weighing=key, at=at.isoformat())
    return client.get("/bench/F2/clock").text


@pytest.mark.parametrize(
    ("minutes", "stage", "words"),
    [
        (1, "", "Fold the whites in within 5 minutes."),
        (6, "late", "The whites lose air. Fold now."),
        (11, "gone", "Past its time. Into the oven at once."),
    ],
)
def test_at_its_limits_the_words_and_the_shape_change(
    own: TestClient, minutes: int, stage: str, words: str
) -> None:
    text = started(own, "foam", minutes)
    assert f'class="plate {stage}"' in text
    said = re.findall(r'data-from="[\d.]+" data-stage="\w*">(.*?)</p>', text, re.DOTALL)
    assert len(said) == 1
    assert words in said[0]
    assert f'data-x="minutes">{minutes}<' in text


def test_foam_to_oven_to_the_trial(own: TestClient) -> None:
    assert shown(own.get("/bench/F2/clock").text) == {"idle"}
    assert shown(post(own, "F2", start="foam")) == {"foam"}
    assert shown(post(own, "F2", start="oven")) == {"oven"}
    text = post(own, "F2", out="oven")
    assert "Height in the middle" in text


def test_an_occupied_oven_asks_twice_and_for_a_reason(own: TestClient) -> None:
    post(own, "F1", start="oven")
    text = own.get("/bench/F2/clock").text
    assert "The oven is occupied" in text
    assert shown(text) == {"idle"}
    assert 'name="start" value="foam" data-x="free" hidden>' in text
    text = own.get("/bench/F2/clock?anyway").text
    assert shown(text) == {"choosing"}
    assert text.count('name="reason"') == 3
    refused = own.post("/bench/F2/clock", data={"start": "foam", "key": "k", "id": "1"})
    assert refused.status_code == 422
    assert shown(refused.text) == {"choosing"}
    text = post(own, "F2", start="foam", reason="Another oven is free")
    assert "Begun although the oven was occupied: Another oven is free." in text


def test_a_cream_has_an_oven_clock_alone(own: TestClient) -> None:
    text = own.get("/bench/C1/clock").text
    assert 'value="foam"' not in text
    assert 'name="start" value="oven" data-x="free">' in text


def test_one_number_answers_once_the_cup_is_known(own: TestClient) -> None:
    sent = {"key": "k", "id": "1", "batter": "215,2", "empty": "100", "water": "340"}
    text = own.post("/bench/F2/cup", data=sent).text
    assert "In its band: go on, fill the tin." in text
    assert ">0.48<" in text
    assert 'value="340"' in own.get("/bench/F1/cup").text


@pytest.mark.parametrize(("field", "typed"), [("batter", "x"), ("empty", ""), ("water", "50")])
def test_a_cup_that_cannot_be_says_so_beside_its_box(
    own: TestClient, field: str, typed: str
) -> None:
    sent = {"key": "k", "id": "1", "batter": "215", "empty": "100", "water": "340", field: typed}
    answer = own.post("/bench/F2/cup", data=sent)
    assert answer.status_code == 422
    assert f'id="wrong-{field}"' in answer.text
    assert f'name="{field}" inputmode="decimal" autocomplete="off" value="{typed}"' in answer.text
