"""The first page, and what a studio begins with."""

import re

from starlette.testclient import TestClient

from krume.usecases import settings_now, settings_text


def test_what_has_a_clock_stands_before_what_is_held_and_what_to_buy(client: TestClient) -> None:
    text = client.get("/").text
    assert "Thursday 10 June" in text
    places = [text.index(word) for word in ('id="next-t"', "Held up", "Buy, or an order stops")]
    assert places == sorted(places)
    assert "ground hazelnuts, tested lot" in text
    assert "Order 102 Pell Harbour Office, Friday" in text


def test_a_plan_that_was_worked_out_gives_the_next_start(own: TestClient) -> None:
    own.get("/plan/2027-06-10", params={"work": "1"})
    text = own.get("/").text
    assert "at 8:00" in text
    assert "Foams, solid:" in text


def test_an_empty_book_has_three_ways_to_begin_and_the_first_settings(bare: TestClient) -> None:
    text = bare.get("/").text
    for address in ('href="/formulas#f-text"', 'action="/demo"', 'href="/ovens"'):
        assert address in text
    assert 'action="/settings"' in text


def test_the_demo_studio_is_loaded_by_its_button_once(bare: TestClient) -> None:
    loaded = bare.post("/demo")
    assert loaded.url.path == "/"
    assert "Pell Harbour Office" in loaded.text
    again = bare.post("/demo")
    assert again.status_code == 200
    assert "version 2" not in bare.get("/orders/101").text
    assert bare.get("/demo").status_code == 405


def test_settings_are_kept_and_what_is_left_empty_stays(own: TestClient) -> None:
    asked = own.app.state.asked  # type: ignore[attr-defined]
    before = settings_text(asked)
    page = own.get("/settings").text
    assert 'value="Tidewick Cake Bench"' in page
    seen = re.search(r'name="seen" value="(\d+)"', page)
    assert seen is not None
    data = {"name": "", "market": "us", "seen": seen[1]}
    assert own.post("/settings", data=data).url.path == "/"
    assert settings_now(asked).name == "Tidewick Cake Bench"
    assert settings_now(asked).market == "us"
    assert len(settings_text(asked)) == len(before)


def test_what_cannot_be_used_stays_in_its_field_and_says_why(bare: TestClient) -> None:
    answer = bare.post("/settings", data={"name": "Mine", "scale_step_g": "fine"})
    assert answer.status_code == 422
    assert 'id="wrong-scale_step_g"' in answer.text
    assert 'value="fine"' in answer.text
    assert 'value="Mine"' in answer.text


def test_two_who_change_the_settings_see_both(own: TestClient) -> None:
    own.post("/settings", data={"name": "Theirs", "seen": "1"})
    second = own.post("/settings", data={"name": "Mine", "seen": "1"})
    assert second.status_code == 409
    assert "Theirs" in second.text
    assert "Mine" in second.text
    assert 'name="seen" value="2"' in second.text
    assert own.post("/settings", data={"name": "Mine", "seen": "2"}).status_code == 200
