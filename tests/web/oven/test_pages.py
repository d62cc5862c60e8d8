"""The oven at the counter: one tap in, one tap out, the probe answered, nothing lost."""

import html
import re

from starlette.testclient import TestClient


def _plain(text: str) -> str:
    return " ".join(html.unescape(re.sub("<[^>]*>", " ", text)).split())


def _put(own: TestClient, new: str = "one", formula: str = "F1", tin: str = "") -> str:
    answer = own.post("/oven/in", data={"new": new, "formula": formula, "tin": tin})
    assert answer.status_code == 200
    return answer.text


def test_an_empty_oven_says_so_and_takes_a_load(client: TestClient) -> None:
    text = client.get("/oven").text
    assert "The oven is empty" in text
    assert 'href="/oven?put=1"' in text
    assert "A load goes in" in _plain(text)


def test_without_a_book_it_answers(bare: TestClient) -> None:
    assert bare.get("/oven").status_code == 200
    refused = bare.post("/oven/in", data={"new": "one", "formula": "", "tin": ""})
    assert refused.status_code >= 400
    assert "Traceback" not in refused.text


def test_first_stands_the_next_thing_and_its_minutes(own: TestClient) -> None:
    text = _plain(_put(own))
    assert "25 min to the first check of load 1" in text
    assert "dial 182, oven 170 °C" in text
    assert "Load 1 is out" in text
    assert "Probe load 1" in text


def test_sent_twice_one_load_is_in(own: TestClient) -> None:
    _put(own)
    assert "load 2" not in _put(own).casefold()


def test_a_core_is_answered_with_the_minutes_left_and_stays_after_a_reload(
    own: TestClient,
) -> None:
    _put(own)
    assert 'name="core"' in own.get("/oven", params={"probe": "one"}).text
    own.post("/oven/probe", data={"id": "one", "core": "88,5"})
    text = _plain(own.get("/oven").text)
    assert "Load 1: core 88.5, to 95: about" in text
    assert "check every few minutes" in text
    assert text == _plain(own.get("/oven").text)


def test_what_is_no_core_stays_in_the_box(own: TestClient) -> None:
    _put(own)
    for typed in ("warm", "300", ""):
        answer = own.post("/oven/probe", data={"id": "one", "core": typed})
        assert answer.status_code == 422
        assert 'id="wrong-core"' in answer.text
        assert f'value="{typed}"' in answer.text


def test_out_by_one_tap_and_back_by_one(own: TestClient) -> None:
    _put(own)
    out = own.post("/oven/out", data={"id": "one"}).text
    assert "The oven is empty" in out
    assert "Load 1 is still in" in _plain(out)
    assert "F1 goes in" in _plain(out)
    assert "of load 1" in _plain(own.post("/oven/back", data={"id": "one"}).text)
    gone = own.post("/oven/out", data={"id": "nothing"})
    assert gone.status_code == 404
    assert "The oven has no such load." in gone.text


def test_a_formula_that_is_not_there_is_said_beside_its_field(own: TestClient) -> None:
    answer = own.post("/oven/in", data={"new": "x", "formula": "F99", "tin": "round 20 x 7 cm"})
    assert answer.status_code == 404
    assert 'id="wrong-formula"' in answer.text
    assert 'value="F99"' in answer.text
    assert 'value="round 20 x 7 cm"' in answer.text


def test_a_load_of_the_bench_has_its_minutes_worked_out_by_a_tap(own: TestClient) -> None:
    _put(own, "bare", "")
    assert "No formula was named" in _plain(own.get("/oven").text)


def test_looking_changes_nothing(own: TestClient) -> None:
    for path in ("/oven/in", "/oven/out", "/oven/back", "/oven/probe", "/oven/minutes"):
        assert own.get(path).status_code == 405
