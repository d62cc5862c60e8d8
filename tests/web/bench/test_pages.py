"""The bench without a script: forms, one step each, and the script's own way in."""

import html
import json
import re
from uuid import uuid4

import pytest
from starlette.testclient import TestClient

from krume.usecases import save_text, text_now


def fields(text: str) -> dict[str, str]:
    """The hidden fields of a page."""
    return dict(re.findall(r'type="hidden" name="(\w+)" value="([^"]*)"', text))


def say(client: TestClient, name: str, **more: str) -> str:
    """One step by a form, as a browser without a script sends it."""
    there = fields(client.get(f"/bench/{name}").text)
    sent = {"key": there["key"], "id": uuid4().hex, "position": there["position"], **more}
    return str(client.post(f"/bench/{name}/say", data=sent).text)


def shown(text: str) -> str:
    """The panel that is not hidden."""
    found = re.findall(r'data-panel="(\w+)"( hidden)?', text)
    return str(next(name for name, hidden in found if not hidden))


def display(text: str) -> str:
    return str(re.findall(r'data-x="display">([^<]*)<', text)[0])


def test_the_first_thing_is_the_number_the_display_must_show(own: TestClient) -> None:
    first = own.get("/bench/F1").text
    assert (shown(first), first.count("<h1")) == ("tare", 1)
    assert "Put the <strong" in first
    after = say(own, "F1", kind="tare")
    assert (shown(after), display(after)) == ("add", "50")
    after = say(own, "F1", kind="in")
    assert display(after) == "62"
    assert "<s dir" in after
    assert "it was 50" in after


def test_nothing_else_is_on_the_page(client: TestClient) -> None:
    text = client.get("/bench/F1").text
    assert "<nav" not in text
    assert "<script>" not in text
    assert len(text) < 150_000


def test_looking_at_it_keeps_nothing(own: TestClient) -> None:
    for path in ("/bench/F2", "/bench/F2?else", "/bench/F2/state", "/bench/F2/clock",
                 "/bench/F2/cup", "/bench/F2/end"):  # fmt: skip
        assert own.get(path).status_code == 200
    assert own.get("/bench/F2/state").json()["key"] == ""


def test_a_slip_by_forms_alone_and_the_way_back(own: TestClient) -> None:
    say(own, "F2", kind="tare")
    say(own, "F2", kind="in")
    text = say(own, "F2", kind="got", shows="66,0 g")
    assert shown(text) == "slip"
    assert "Teff flour is 6 g over." in text
    assert re.findall(r'name="way" value="(\w+)"', text) == ["jar", "leave", "hold"]
    assert "Starch 29.7 %" in text
    text = say(own, "F2", kind="choose", way="jar")
    assert "Card corrected. Put 31.5 g in a jar." in text
    assert display(text) == "78"
    text = say(own, "F2", kind="undo", of=fields(text)["of"])
    assert shown(text) == "slip"


def test_eggs_are_asked_for_their_own_grams(own: TestClient) -> None:
    for _ in range(8):
        kind = "tare" if shown(own.get("/bench/F2").text) == "tare" else "in"
        say(own, "F2", kind=kind)
    text = say(own, "F2", kind="tare")
    assert shown(text) == "number"
    assert "yolks of 5 eggs" in text
    assert 'About <span class="n">87.5' in text
    text = say(own, "F2", kind="got", shows="85.1")
    assert "it was 85.1" in text


def test_what_cannot_be_read_is_kept_in_the_box(own: TestClient) -> None:
    say(own, "F2", kind="tare")
    there = fields(own.get("/bench/F2").text)
    typed = "<b>6o"
    sent = {**there, "kind": "got", "shows": typed, "id": "x"}
    answer = own.post("/bench/F2/say", data=sent)
    assert answer.status_code == 422
    assert html.escape(typed) in answer.text
    assert "a number such as 96" in answer.text
    assert shown(answer.text) == "number"


def test_the_script_is_heard_once_however_often_it_says_it(own: TestClient) -> None:
    said = [{"id": "a", "kind": "tare", "position": 0}, {"id": "b", "kind": "in", "position": 1}]
    for _ in range(2):
        answer = own.post("/bench/F2/said", json={"key": "k", "said": said})
        assert answer.status_code == 200
    steps = own.get("/bench/F2/state").json()["steps"]
    assert [step["id"] for step in steps] == ["a", "b"]


def test_a_page_from_before_the_formula_changed_weighs_no_row_of_the_next_version(
    own: TestClient,
) -> None:
    before = fields(own.get("/bench/F2").text)
    seen = int(before["version"])
    text = own.get("/bench/F2/state").json()["rows"][1]["take"]
    asked = own.app.state.asked  # type: ignore[attr-defined]
    now = text_now("formula", "F2", asked)
    other = now.text.replace("40 g white rice flour", "44 g millet flour")
    save_text("formula", "F2", other, asked, seen=now.revision)
    say(own, "F2", kind="tare")
    sent = {**before, "kind": "in", "position": "1"}
    refused = own.post("/bench/F2/say", data=sent)
    assert (refused.status_code, "look at the rows again" in refused.text) == (409, True)
    said = {"id": "b", "kind": "in", "position": 1, "version": seen}
    assert own.post("/bench/F2/said", json={"key": "k", "said": [said]}).status_code == 409
    after = own.get("/bench/F2/state").json()
    assert (after["version"], len(after["steps"])) == (seen + 1, 1)
    assert after["rows"][1]["take"] != text


@pytest.mark.parametrize(
    "body",
    ["", "[]", "{}", '{"key": "k", "said": 3}', '{"key": "k", "said": [{"id": "x"}]}',
     '{"key": "k", "said": [7]}'],
)  # fmt: skip
def test_what_is_no_step_is_refused(own: TestClient, body: str) -> None:
    answer = own.post("/bench/F2/said", content=body)
    assert answer.status_code == 422
    assert "wrong" in answer.json()
    assert own.get("/bench/F2/state").json()["key"] == ""


def test_a_step_that_cannot_be_says_why(own: TestClient) -> None:
    said = [{"id": "a", "kind": "got", "position": 1, "display_g": -4}]
    answer = own.post("/bench/F2/said", json={"key": "k", "said": said})
    assert answer.status_code == 422
    assert "A display shows" in answer.json()["wrong"]


def test_it_begins_again_from_an_empty_bowl(own: TestClient) -> None:
    say(own, "F2", kind="tare")
    assert own.post("/bench/F2/aside", data={"x": "1"}).status_code == 200
    assert shown(own.get("/bench/F2").text) == "tare"
    assert own.get("/bench/F2/state").json()["key"] == ""


def test_a_formula_nobody_knows_is_404(client: TestClient, bare: TestClient) -> None:
    assert client.get("/bench/nothing").status_code == 404
    assert bare.get("/bench/F1").status_code == 404
    assert client.get("/bench/..%2F..%2Fetc").status_code == 404


def test_every_formula_of_the_studio_has_its_bench(client: TestClient) -> None:
    for name in ("F1", "F2", "F3", "F4", "F5", "F6", "F7", "C1", "C2", "C3", "C4", "C5", "S1"):
        answer = client.get(f"/bench/{name}")
        assert answer.status_code == 200, name
        state = html.unescape(re.findall(r'data-state="([^"]*)"', answer.text)[0])
        assert json.loads(state)["rows"][0]["kind"] == "tare"


def test_the_formula_leads_to_its_bench(client: TestClient) -> None:
    assert 'href="/bench/F1"' in client.get("/formulas/F1").text


def test_a_formula_with_an_open_question_says_so_first(own: TestClient) -> None:
    text = "Plain\n\n100 g white rice flour\n50 g corn flour\n100 g sugar\n"
    own.post("/formulas", data={"name": "open", "text": text})
    page = own.get("/bench/open").text
    assert "open in this formula" in page
    assert 'href="/formulas/open"' in page


def test_what_a_slip_put_into_a_jar_is_not_told_as_weighed_into_the_cake(own: TestClient) -> None:
    say(own, "F2", kind="tare")
    say(own, "F2", kind="in")
    say(own, "F2", kind="got", shows="66")
    text = say(own, "F2", kind="choose", way="jar")
    while 'data-x="progress">all in<' not in text:
        text = say(own, "F2", kind="tare" if shown(text) == "tare" else "in")
    steps = own.get("/bench/F2/state").json()["steps"]
    last_g = {step["position"]: step["got_g"] for step in steps if step["got_g"] is not None}
    weighed_g = sum(last_g.values())
    total = re.search(r'<output data-x="total">([\d.]+)', text)
    assert total is not None
    assert float(total[1]) == pytest.approx(weighed_g - 31.5)
