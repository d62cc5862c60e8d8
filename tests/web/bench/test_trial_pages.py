"""Trials as pages: three boxes first, all of them in a list, each with its weighing."""

import re
from pathlib import Path

from starlette.testclient import TestClient

from krume.usecases import export_book
from krume.web import application

SENT = {"key": "k", "trial": "t", "centre": "49", "core": "95", "word": "springy"}


def weighed(client: TestClient) -> None:
    said = [
        {"id": "a", "kind": "tare", "position": 0},
        {"id": "b", "kind": "in", "position": 1},
        {"id": "c", "kind": "got", "position": 2, "display_g": 66},
        {"id": "d", "kind": "choose", "way": "leave"},
    ]
    assert client.post("/bench/F2/said", json={"key": "k", "said": said}).status_code == 200


def test_three_boxes_come_first_and_the_rest_may_wait(own: TestClient) -> None:
    text = own.get("/bench/F2/end").text
    first, _, rest = text.partition("<details")
    assert re.findall(r'<input id="f-(\w+)"', first) == ["centre", "core", "word"]
    assert re.findall(r'<input id="f-(\w+)"', rest) == ["edge", "minutes", "baked", "sg"]


def test_a_bake_is_written_down_and_found_with_what_differs(own: TestClient) -> None:
    weighed(own)
    for _ in range(2):
        text = own.post("/bench/F2/end", data=SENT).text
    assert "teff flour: 26 g instead of 20" in text
    assert "not weighed" in text
    listed = own.get("/trials").text
    assert listed.count('href="/trials/t"') == 1
    assert "teff flour: 26 g instead of 20" in listed
    assert 'href="/trials/t"' not in own.get("/trials?formula=F1").text


def test_what_is_wrong_stands_beside_its_box_and_nothing_is_kept(own: TestClient) -> None:
    answer = own.post("/bench/F2/end", data={**SENT, "core": "9500"})
    assert answer.status_code == 422
    assert 'id="wrong-core"' in answer.text
    assert 'value="9500"' in answer.text
    assert own.get("/trials/t").status_code == 404


def test_two_who_edit_see_both(own: TestClient) -> None:
    own.post("/bench/F2/end", data=SENT)
    edit = {**SENT, "seen": "1", "edge": "44"}
    assert own.post("/trials/t", data=edit).status_code == 200
    answer = own.post("/trials/t", data={**edit, "edge": "41"})
    assert answer.status_code == 409
    assert "edge 44" in answer.text
    assert 'value="41"' in answer.text
    assert own.post("/trials/t", data={**edit, "seen": "2", "sg": "9"}).status_code == 422


def test_an_empty_book_says_where_to_begin(bare: TestClient) -> None:
    answer = bare.get("/trials")
    assert answer.status_code == 200
    assert "No bake has been written down yet" in answer.text
    assert bare.get("/trials/nothing").status_code == 404


def test_beside_plain_texts_a_trial_is_shown_without_its_lines(
    own: TestClient, tmp_path: Path
) -> None:
    weighed(own)
    own.post("/bench/F2/end", data=SENT)
    export_book(own.app.state.asked, tmp_path / "plain")  # type: ignore[attr-defined]
    with TestClient(application(tmp_path / "plain"), base_url="http://127.0.0.1") as plain:
        assert "teff flour: 26 g instead of 20" in plain.get("/trials").text
        text = plain.get("/trials/t").text
    assert "plain texts do not keep the version" in text
    assert "teff flour: 26 g instead of 20" in text
    assert 'aria-label="What was weighed"' not in text
