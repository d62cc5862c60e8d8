"""Formulas as pages: pasted, understood, answered by one tap, sized, every version kept."""

import html
import re

from starlette.testclient import TestClient

MINE = "Mine\nTin: round 20 x 7 cm\n\n100 g white rice flour\n5 eggs\n120 g caster sugar\n"


def _pasted(own: TestClient, text: str = MINE, name: str = "mine") -> str:
    answer = own.post("/formulas", data={"text": text, "name": name})
    assert answer.status_code == 200
    return answer.text


def _hidden(text: str, name: str) -> str:
    found = re.search(rf'name="{name}" value="([^"]*)"', text)
    assert found is not None
    return html.unescape(found[1])


def test_the_list_holds_every_formula_and_what_is_searched_for(client: TestClient) -> None:
    text = client.get("/formulas").text
    assert text.count('href="/formulas/') == 13
    found = client.get("/formulas", params={"search": "hazel"}).text
    assert "Orl hazel sponge" in found
    assert "Dark ganache" not in found
    assert "Show all of them" in client.get("/formulas", params={"search": "zzz"}).text


def test_an_empty_book_says_what_to_do(bare: TestClient) -> None:
    answer = bare.get("/formulas")
    assert answer.status_code == 200
    assert "Paste one here" in answer.text
    assert bare.get("/formulas/F1").status_code == 404


def test_a_pasted_text_is_read_and_its_question_stands_in_its_line(own: TestClient) -> None:
    text = _pasted(own)
    assert "1 question" in text
    lit = text[text.index('class="lit"') :]
    assert "5 eggs" in lit[:300]
    assert 'name="where" value="line 5"' in lit


def test_one_tap_answers_and_is_kept_as_an_edit_of_the_line(own: TestClient) -> None:
    text = _pasted(own)
    form = {name: _hidden(text, name) for name in ("where", "line", "seen")}
    answered = own.post("/formulas/mine/answer", data=form)
    assert answered.status_code == 200
    assert "1 question" not in answered.text
    assert form["line"] in html.unescape(own.get("/formulas/mine/edit").text)
    assert "version 2, as it is now" in answered.text


def test_an_answer_to_an_older_version_is_refused_and_changes_nothing(own: TestClient) -> None:
    text = _pasted(own)
    form = {name: _hidden(text, name) for name in ("where", "line", "seen")}
    own.post("/formulas/mine/edit", data={"text": MINE + "1 g salt\n", "seen": "1"})
    answered = own.post("/formulas/mine/answer", data=form)
    assert answered.status_code == 409
    assert "version 2, as it is now" in own.get("/formulas/mine").text


def test_two_editors_see_both_versions_and_the_second_may_go_on(own: TestClient) -> None:
    _pasted(own)
    own.post("/formulas/mine/edit", data={"text": MINE + "1 g salt\n", "seen": "1"})
    second = own.post("/formulas/mine/edit", data={"text": MINE + "2 g zest\n", "seen": "1"})
    assert second.status_code == 409
    assert "1 g salt" in second.text
    assert "2 g zest" in second.text
    again = own.post(
        "/formulas/mine/edit",
        data={"text": MINE + "2 g zest\n", "seen": _hidden(second.text, "seen")},
    )
    assert again.status_code == 200
    assert "version 3, as it is now" in again.text


def test_sent_twice_is_kept_once(own: TestClient) -> None:
    _pasted(own)
    assert "version 1, as it is now" in _pasted(own)
    data = {"text": MINE + "1 g salt\n", "seen": "1"}
    own.post("/formulas/mine/edit", data=data)
    assert "version 2, as it is now" in own.post("/formulas/mine/edit", data=data).text


def test_what_cannot_be_kept_stays_in_the_box(own: TestClient) -> None:
    answer = own.post("/formulas", data={"text": "Other\n\n1 g salt\n", "name": "F1"})
    assert answer.status_code == 409
    assert "1 g salt" in answer.text
    assert 'id="wrong-name"' in answer.text
    assert own.post("/formulas", data={"text": " ", "name": ""}).status_code == 422
    big = own.post("/formulas", data={"text": "x" * 1_000_001, "name": "big"})
    assert big.status_code == 422


def test_an_old_version_is_shown_against_the_new_and_taken_again(own: TestClient) -> None:
    _pasted(own)
    own.post("/formulas/mine/edit", data={"text": MINE.replace("120", "130"), "seen": "1"})
    page = own.get("/formulas/mine/versions/1").text
    assert "120 g caster sugar" in page
    assert "130 g caster sugar" in page
    assert "version 3, as it is now" in own.post("/formulas/mine/versions/1").text
    assert own.get("/formulas/mine/versions/9").url.path == "/formulas/mine"


def test_sizes_come_best_first_and_an_unread_tin_is_asked(client: TestClient) -> None:
    text = client.get("/formulas/F2", params={"tin": "round 8in x 3in"}).text
    assert text.index("Change nothing") < text.index("6 eggs")
    assert client.get("/formulas/F2", params={"tin": "triangle"}).status_code == 200


def test_every_band_opens_where_its_figure_comes_from(client: TestClient) -> None:
    page = client.get("/formulas/F2").text
    keys = re.findall(r"\?why=([a-z_]+)#why", page)
    assert len(keys) >= 7
    for key in keys:
        assert "Status: derived" in client.get("/formulas/F2", params={"why": key}).text


def test_nothing_typed_is_ever_markup(own: TestClient) -> None:
    text = _pasted(own, "<script>alert(1)</script>\n\n100 g <b>flour</b>\n", "evil")
    assert "<script" not in text
    assert "&lt;script&gt;" in text


def test_every_demo_formula_has_its_page(client: TestClient) -> None:
    for name in ("F1", "F3", "F4", "F5", "F6", "F7", "C1", "C2", "C3", "C4", "C5", "S1"):
        assert client.get(f"/formulas/{name}").status_code == 200
