"""What is learnt of the oven on its page: shown, written in one line, named where odd."""

import re

from starlette.testclient import TestClient


def _oven(client: TestClient) -> str:
    text = client.get("/ovens").text
    return text[text.index('id="oven"') :]


def test_the_demos_oven_shows_its_offset_its_heat_and_its_bakes(client: TestClient) -> None:
    text = _oven(client)
    assert "turn the dial to" in text and "182" in text
    assert "from 4 bakes (invented)" in text
    assert "heat-0-name" in text
    table = text[text.index('aria-label="Bakes in deck"') :]
    assert table[: table.index("</table>")].count("trial t") == 4


def test_a_reading_and_a_bake_in_one_line_each_are_kept_once(own: TestClient) -> None:
    typed = {"reading": "dial 160: 148, 152, 144", "bake": "F1, dial 182, 40 min, core 95"}
    for _ in range(2):
        answer = own.post("/ovens/said", data=typed)
        assert str(answer.url).endswith("/ovens#oven")
    text = _oven(own)
    assert text.count("dial 160: 148, 152, 144") == 1
    assert text.count("F1, dial 182, 40 min, core 95") == 1
    assert "3 looks at a thermometer" in text
    assert "stands back for real ones" in text


def test_what_is_asked_stands_beside_the_line_and_the_line_stays(own: TestClient) -> None:
    typed = {"reading": "dial 325: 148", "bake": "F1, dial 182, core 95"}
    answer = own.post("/ovens/said", data=typed)
    assert answer.status_code == 422
    assert 'value="dial 325: 148"' in answer.text
    assert "dial 325 C: 148; dial 325 F: 148" in answer.text
    assert "How long was it in the oven?" in answer.text
    assert "dial 325" not in _oven(own)


def test_nothing_typed_is_asked(own: TestClient) -> None:
    answer = own.post("/ovens/said", data={"reading": " ", "bake": ""})
    assert answer.status_code == 422
    assert "Type a reading or a finished bake." in answer.text


def test_an_odd_bake_is_named_under_its_line_with_a_way_to_correct_it(own: TestClient) -> None:
    for line in ("F1, dial 182, 40 min, core 95", "F2, dial 182, 38 min, core 95",
                 "F1, dial 182, 95 min, core 95"):  # fmt: skip
        own.post("/ovens/said", data={"bake": line})
    text = _oven(own)
    row = text[text.index("F1, dial 182, 95 min") :]
    row = row[: row.index("</tr>")]
    assert "longer than what the others say" in row
    assert "does not count" in row
    address = re.search(r'href="(/ovens/bakes/\d+)">F1, dial 182, 95 min', text)
    assert address is not None
    assert 'value="95"' in own.get(address[1]).text


def test_a_bake_box_by_box_is_asked_beside_its_box(own: TestClient) -> None:
    typed = {"formula": "F1", "done_min": "38", "dial_c": "182", "core_c": "130"}
    answer = own.post("/ovens/bakes/new", data=typed)
    assert answer.status_code == 422
    asked = answer.text[answer.text.index('id="wrong-core_c"') :]
    assert "boils" in asked[:600]
    kept = own.post("/ovens/bakes/new", data={**typed, "core_c": "95"})
    assert str(kept.url).endswith("/ovens#oven")
    assert "F1, dial 182, 38 min, core 95" in kept.text


def test_without_a_book_nothing_is_known_and_nothing_fails(bare: TestClient) -> None:
    answer = bare.get("/ovens")
    assert answer.status_code == 200
    assert "Its offset is not known" in answer.text
    assert "How strong it is nobody knows" in answer.text


def test_a_name_in_a_line_is_shown_as_text_alone(own: TestClient) -> None:
    answer = own.post("/ovens/said", data={"bake": "<b>F1</b>, dial 182, 40 min, core 95"})
    assert answer.status_code == 422
    assert "<b>F1" not in answer.text
