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


def test_the_first_minute_asks_units_market_scale_oven_and_tins(bare: TestClient) -> None:
    text = bare.get("/").text
    form = text[text.index('action="/settings"') :]
    fields = ("units", "market", "eggs_region", "scale_step_g", "oven_offset_c", "tins", "name")
    places = [form.index(f'name="{each}"') for each in fields]
    assert places == sorted(places)
    sent = {"units": "both", "scale_step_g": "1", "tins": "4 x round 20 x 7 cm"}
    assert bare.post("/settings", data=sent).url.path == "/"
    asked = bare.app.state.asked  # type: ignore[attr-defined]
    assert (settings_now(asked).units, settings_now(asked).market) == ("both", "")
    assert "round 20 x 7 cm" in bare.get("/ovens").text


def test_a_tin_that_is_none_is_said_beside_its_box_and_nothing_is_kept(bare: TestClient) -> None:
    answer = bare.post("/settings", data={"name": "Mine", "tins": "triangle"})
    assert answer.status_code == 422
    assert 'id="wrong-tins"' in answer.text
    assert ">triangle</textarea>" in answer.text
    assert settings_now(bare.app.state.asked).name == ""  # type: ignore[attr-defined]


def test_oven_temperatures_are_printed_in_the_units_that_were_said(own: TestClient) -> None:
    def said() -> list[str]:
        card = own.get("/formulas/F2/card.html").text
        formula = own.get("/formulas/F2").text
        clock = own.get("/bench/F2/clock").text
        return [
            " ".join(re.sub("<[^>]*>", " ", card).split()),
            " ".join(re.sub("<[^>]*>", " ", formula).split()),
            clock,
        ]

    card, formula, clock = said()
    assert "170 °C, no fan" in formula
    assert "°F" not in card + formula + clock
    for units, oven, dial, core in (
        ("f", "338 °F", "360 °F", "203 °F"),
        ("both", "170 °C, 338 °F", "182 °C, 360 °F", "95 °C, 203 °F"),
    ):
        seen = re.search(r'name="seen" value="(\d+)"', own.get("/settings").text)
        assert seen is not None
        own.post("/settings", data={"units": units, "seen": seen[1]})
        card, formula, clock = said()
        assert dial in card
        assert core in card
        assert f"{oven}, no fan" in formula
        assert f"A core of {core} says it is done." in clock
        assert f"Oven {oven}" in clock
