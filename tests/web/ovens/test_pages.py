"""Tins and ovens as pages: water against size first, the dial beside, kept by version."""

import html
import re
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from krume.store import book_at, book_bytes


def _form(text: str) -> dict[str, str]:
    form = text[text.index('class="block row-form"') :]
    form = form[: form.index("</form>")]
    values = {
        name: html.unescape(value)
        for name, value in re.findall(r'<input[^>]*name="(\w+)"[^>]*value="([^"]*)"', form)
    }
    for name, inside in re.findall(r'<select[^>]*name="(\w+)"[^>]*>(.*?)</select>', form, re.S):
        chosen = re.search(r"<option selected>([^<]*)", inside)
        values[name] = html.unescape(chosen[1]) if chosen else ""
    return values


def _row(client: TestClient, tin: str) -> str:
    found = re.search(rf'href="(/ovens/tins/\d+)">{re.escape(tin)}</a>', client.get("/ovens").text)
    assert found is not None
    return found[1]


def test_tins_stand_before_the_oven_and_nothing_unmeasured_is_a_blank(client: TestClient) -> None:
    text = client.get("/ovens").text
    assert text.index("what water says against their size") < text.index("The oven")
    table = text[text.index('aria-label="Tins"') : text.index("</table>")]
    assert table.count("not measured") == 14
    assert "2\u202f199" in table
    assert "285.9" in table


def test_a_tin_filled_with_water_stands_first_with_its_difference(own: TestClient) -> None:
    address = _row(own, "ring 22 x 6 cm")
    form = _form(own.get(address).text)
    for _ in range(2):
        answer = own.post(address, data={**form, "water_g": "2 240 g"})
    table = answer.text[answer.text.index('aria-label="Tins"') :]
    first = table[table.index("<tbody>") : table.index("</tr>", table.index("<tbody>"))]
    assert "ring 22 x 6 cm, 2240 g water" in first
    assert "-37" in first
    assert "-1.6 %" in first
    assert "2\u202f244" in first
    assert "2\u202f281" in first


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"tin": "8in pan", "count": "1"}, "tin"),
        ({"tin": "round 20 x 7 cm", "count": "no"}, "count"),
        ({"tin": "round 20 x 7 cm", "count": "1", "water_g": "much"}, "water_g"),
        ({"tin": "", "count": "1"}, "tin"),
    ],
)
def test_what_is_wrong_with_a_tin_stands_beside_its_field(
    own: TestClient, typed: dict[str, str], field: str
) -> None:
    answer = own.post("/ovens/tins/new", data=typed)
    assert answer.status_code == 422
    assert f'id="wrong-{field}"' in answer.text
    assert _form(answer.text) == {**_form(answer.text), **typed}


def test_a_question_about_a_tin_says_what_may_be_typed(own: TestClient) -> None:
    answer = own.post("/ovens/tins/new", data={"tin": "8in pan", "count": "1"})
    assert "Type: round 8 in; square 8 in." in answer.text


def test_a_new_tin_is_kept_once_and_taken_out(own: TestClient) -> None:
    for _ in range(2):
        text = own.post("/ovens/tins/new", data={"tin": "glass loaf 21x11x7 cm", "count": "2"}).text
    assert text.count(">glass loaf 21x11x7 cm</a>") == 1
    address = _row(own, "glass loaf 21x11x7 cm")
    assert "glass loaf" not in own.post(f"{address}/delete", data={"seen": "1"}).text


def test_the_oven_is_said_in_words_with_the_dial_beside(client: TestClient) -> None:
    text = client.get("/ovens").text
    assert "reads low: the true temperature is 12 K below the dial" in text
    assert "For 170 °C turn the dial to" in text
    assert '<span class="n">182<span class="u">°C' in text
    assert "6 readings: mean 148 °C at dial 160 °C" in text
    assert "has one, you bake without it" in text
    assert '<span class="n">169<span class="u">°C' in client.get("/ovens?want=157").text


@pytest.mark.parametrize("want", ["warm", "-4", "nan", "1e9"])
def test_a_temperature_that_is_none_is_asked_and_stays_typed(client: TestClient, want: str) -> None:
    answer = client.get("/ovens", params={"want": want})
    assert answer.status_code == 422
    assert 'id="wrong-want"' in answer.text
    assert f'value="{want}"' in answer.text


def test_editing_the_oven_leaves_the_rest_of_its_text_alone(
    own: TestClient, tmp_path: Path
) -> None:
    before = book_bytes(book_at(tmp_path / "book"), "studio.toml")
    form = _form(own.get("/ovens/oven").text)
    assert own.post("/ovens/oven", data=form).status_code == 200
    assert book_bytes(book_at(tmp_path / "book"), "studio.toml") == before
    answer = own.post("/ovens/oven", data={**form, "mean_c": "165", "name": "dèck"})
    assert "reads high: the true temperature is 5 K above the dial" in answer.text
    after = book_bytes(book_at(tmp_path / "book"), "studio.toml")
    assert before is not None
    assert after is not None
    changed = [
        line for line in after.decode().splitlines() if line not in before.decode().splitlines()
    ]
    assert changed == ['name = "dèck"', "mean_c = 165", "offset_c = 5"]


def test_two_tabs_of_the_oven_are_shown_both_versions(own: TestClient) -> None:
    form = _form(own.get("/ovens/oven").text)
    own.post("/ovens/oven", data={**form, "spread_c": "3"})
    second = own.post("/ovens/oven", data={**form, "spread_c": "6"})
    assert second.status_code == 409
    assert _form(second.text)["spread_c"] == "6"
    assert ">3</td>" in second.text
    assert own.post("/ovens/oven", data=_form(second.text)).status_code == 200
    assert _form(own.get("/ovens/oven").text)["spread_c"] == "6"


def test_a_number_that_is_none_stays_typed_with_its_sentence(own: TestClient) -> None:
    form = _form(own.get("/ovens/oven").text)
    answer = own.post("/ovens/oven", data={**form, "shelves": "two"})
    assert answer.status_code == 422
    assert 'id="wrong-shelves"' in answer.text
    assert _form(answer.text)["shelves"] == "two"


def test_an_empty_book_says_what_to_do(bare: TestClient) -> None:
    text = bare.get("/ovens").text
    assert "There is no book yet" in text
    assert "No tin is written down" in text
    assert "no dial can be said" in text
    answer = bare.post("/ovens/oven", data={"dial_c": "160", "mean_c": "148"})
    assert answer.status_code >= 400
    assert 'value="160"' in answer.text
