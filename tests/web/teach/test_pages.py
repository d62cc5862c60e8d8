"""The learner's page: conflicts first, publishing said as a sentence, both systems of units."""

import re

from starlette.testclient import TestClient

MINE = "Mine\n\n100 g white rice flour\n5 eggs\n120 g caster sugar\n"


def test_a_whole_formula_is_told_in_both_systems_of_units(client: TestClient) -> None:
    text = client.get("/teach/F2").text
    assert "No conflict is left" in text
    row = text[text.index("caster sugar") :]
    assert re.findall(r'class="n">([^<]*)<', row)[:2] == ["130", "4.59"]
    assert "5 eggs, medium, separated" in text
    assert "170 °C (338 °F)" in text
    assert "Whisk the whites with salt" in text


def test_open_conflicts_come_first_with_their_place_and_nothing_goes_out(own: TestClient) -> None:
    own.post("/formulas", data={"text": MINE, "name": "mine"})
    text = own.get("/teach/mine").text
    assert "1 conflict is left. Nothing goes out while one is open." in text
    assert text.index("line 4") < text.index("To weigh")
    assert text.index("No steps are written") < text.index("To weigh")
    assert 'href="/formulas/mine"' in text
    assert "<form" not in text


def test_what_is_not_known_is_never_a_nought(own: TestClient) -> None:
    own.post("/formulas", data={"text": "Mine\n\n100 g white rice flour\n1 gelp\n", "name": "mine"})
    text = own.get("/teach/mine").text
    row = text[text.index("gelp", text.index("To weigh")) :]
    assert row.index("not known") < row.index("</tr>")


def test_a_class_stands_in_its_own_words_beside_what_it_makes(client: TestClient) -> None:
    text = client.get("/teach/CLASS7").text
    assert "Learners: 8" in text
    assert 'href="/teach/F3"' in text
    assert 'href="/teach/F2"' not in text
    assert 'href="/teach/CLASS7"' in client.get("/teach/F3").text


def test_a_class_shows_its_seats_first_then_kits_loads_and_creams(client: TestClient) -> None:
    text = client.get("/teach/CLASS7").text
    places = [
        text.index(f'id="{each}"') for each in ("seats", "clashes", "kits", "loads", "creams")
    ]
    assert places == sorted(places)
    seats = text[places[0] : places[1]]
    assert "T2 holds powdered gelatine" in seats
    assert 'class="state ask"' in seats
    for figure in (">716.6<", ">70.25<", ">64<", ">2\u202f777<", ">3.26<"):
        assert figure in text, figure


def test_a_name_of_nothing_or_of_a_torte_is_not_found(client: TestClient) -> None:
    assert client.get("/teach/nobody").status_code == 404
    assert client.get("/teach/T1").status_code == 404
