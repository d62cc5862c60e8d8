"""A size on a formula's page: kept by one tap, weighed by one tap, its name its own."""

import re

from starlette.testclient import TestClient

TIN = "round 24 x 7 cm"
SENT = {"tin": TIN, "kind": "whole", "factor": "1.4", "seen": "1"}
CHILD = "F2-round-24x7-cm-7-eggs"


def test_each_new_size_can_be_weighed_or_kept(client: TestClient) -> None:
    text = client.get("/formulas/F2", params={"tin": TIN}).text
    assert text.count(">Weigh this size</button>") == text.count(">Keep this size</button>") == 3
    assert re.findall(r'name="factor" value="([\d.]+)"', text) == ["1.4", "1.6", "1.2"]


def test_the_size_it_has_already_is_weighed_as_it_is(client: TestClient) -> None:
    text = client.get("/formulas/F2", params={"tin": "round 20 x 7 cm"}).text
    assert "Weigh it as it is" in text
    assert text.count(">Keep this size</button>") == 2


def test_one_tap_keeps_it_and_the_child_names_its_parent(own: TestClient) -> None:
    answer = own.post("/formulas/F2/sizes", data={**SENT, "go": "formula"})
    assert answer.url.path == f"/formulas/{CHILD}"
    assert 'A size of <a href="/formulas/F2"' in answer.text
    assert "version 1, as it is now" in answer.text
    again = own.post("/formulas/F2/sizes", data={**SENT, "go": "formula"})
    assert "version 1, as it is now" in again.text


def test_one_tap_weighs_it(own: TestClient) -> None:
    answer = own.post("/formulas/F2/sizes", data={**SENT, "go": "weigh"})
    assert answer.url.path == f"/bench/{CHILD}"
    assert "round 24 x 7 cm, 7 eggs" in answer.text


def test_a_name_that_is_taken_is_said_beside_its_box_and_another_is_kept(own: TestClient) -> None:
    answer = own.post("/formulas/F2/sizes", data={**SENT, "go": "formula", "name": "F3"})
    assert answer.status_code == 409
    assert "Another formula goes by F3" in answer.text
    assert 'href="/formulas/F3">Look at the one' in answer.text
    assert answer.text.count('id="f-name"') == 1
    kept = own.post("/formulas/F2/sizes", data={**SENT, "go": "formula", "name": "wide one"})
    assert kept.url.path == "/formulas/wide one"


def test_a_size_of_an_older_version_is_worked_out_anew(own: TestClient) -> None:
    answer = own.post("/formulas/F2/sizes", data={**SENT, "seen": "7", "go": "formula"})
    assert answer.status_code == 409
    assert "Look at its sizes again" in answer.text
    assert own.get(f"/formulas/{CHILD}").status_code == 404


def test_what_is_no_size_is_refused_on_the_page(own: TestClient) -> None:
    for wrong in ({"factor": "much"}, {"factor": "1.5"}, {"tin": "triangle"}):
        answer = own.post("/formulas/F2/sizes", data={**SENT, **wrong, "go": "weigh"})
        assert answer.status_code == 422, wrong
