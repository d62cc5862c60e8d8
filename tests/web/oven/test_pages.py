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
    assert "25 min to the first check of load 1, F1" in text
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


def test_a_clock_without_a_formula_says_that_its_minutes_are_not_known(own: TestClient) -> None:
    assert "since the door no minutes known of load 1" in _plain(_put(own, "bare", ""))


def test_a_load_of_the_bench_has_its_minutes_worked_out_by_a_tap(own: TestClient) -> None:
    _put(own, "bare", "")
    assert "No formula was named" in _plain(own.get("/oven").text)


def test_a_formula_is_chosen_by_a_tap_with_its_tins(own: TestClient) -> None:
    text = own.get("/oven", params={"put": "1"}).text
    assert "/oven?put=1&amp;formula=F4" in text
    assert "Only the clock, no formula" in text
    chosen = own.get("/oven", params={"put": "1", "formula": "F4"}).text
    assert "Net-loft walnut sponge, round 22 x 5 cm" in _plain(chosen)
    assert chosen.count('name="tins"') == 4
    assert "What it does to the others" not in chosen
    answer = own.post("/oven/in", data={"new": "two", "formula": "F3", "tin": "", "tins": "2"})
    assert "to the first check of load 1, 2 × F3" in _plain(answer.text)
    assert "less heat between the tins" in _plain(answer.text)


def test_what_is_not_in_the_book_or_no_number_of_tins_is_said_and_keeps_what_was_typed(
    own: TestClient,
) -> None:
    gone = own.get("/oven", params={"put": "1", "formula": "F99"})
    assert "The book has no formula called F99." in _plain(gone.text)
    assert "/oven?put=1&amp;formula=F1" in gone.text
    many = own.post("/oven/in", data={"new": "x", "formula": "F3", "tin": "", "tins": "99"})
    assert many.status_code == 422
    assert "A load is 1 to 24 tins." in _plain(many.text)
    searched = own.get("/oven", params={"put": "1", "search": "zebra"}).text
    assert "No formula with a tin is called “zebra”." in _plain(searched)


def test_before_it_goes_in_it_says_what_it_would_do_to_those_that_are_in(own: TestClient) -> None:
    _put(own, formula="F4")
    asked = {"put": "look", "formula": "F4", "tins": "1", "tin": ""}
    text = _plain(own.get("/oven", params=asked).text)
    assert "Load 1: first check " in text
    assert "In now: first check " in text
    assert "Later side by side" not in _plain(own.get("/oven").text)


def test_a_second_load_moves_the_first_and_the_page_says_from_when_to_when(
    own: TestClient,
) -> None:
    _put(own, formula="F4")
    text = _plain(_put(own, "two", "F3"))
    assert "Later side by side: load 1 " in text
    assert text.count(" → ") >= 4
    assert "F3 wants 190 °C; the oven stands at 170 °C." in text
    assert "Air back at " in text
    assert ", by your own 5 min." in text


def test_looking_changes_nothing(own: TestClient) -> None:
    for path in ("/oven/in", "/oven/out", "/oven/back", "/oven/probe", "/oven/minutes"):
        assert own.get(path).status_code == 405
