"""A variation on a page: allergens first, grams second, kept as a child; and the children."""

import html
import re

from starlette.testclient import TestClient

COVERS = ("shown",)
SUNFLOWER = {"of": "ground hazelnuts", "to": "sunflower"}


def _text(page: str) -> str:
    found = re.search(r'name="text"[^>]*>([^<]*)</textarea>', page)
    assert found is not None
    return html.unescape(found[1])


def _kept(own: TestClient, name: str = "F1-sun") -> str:
    text = _text(own.get("/vary/F1", params=SUNFLOWER).text)
    answer = own.post("/formulas", data={"text": text, "name": name})
    assert answer.status_code == 200
    return text


def _edited(own: TestClient, name: str, old: str, new: str) -> None:
    page = own.get(f"/formulas/{name}/edit").text
    seen = re.search(r'name="seen" value="(\d+)"', page)
    assert seen is not None
    text = _text(page)
    assert old in text
    data = {"text": text.replace(old, new), "seen": seen[1]}
    assert own.post(f"/formulas/{name}/edit", data=data).status_code == 200


def test_allergens_stand_before_grams_and_what_is_not_known_is_said(client: TestClient) -> None:
    text = client.get("/vary/F1", params=SUNFLOWER).text
    places = [text.index(f">{head}</h2>") for head in ("Allergens", "Grams", "Not known")]
    assert places == sorted(places)
    assert "lost: nuts (hazelnut)" in text
    assert "gained: nothing" in text
    assert "3.7 g more sunflower oil" in text
    assert "--fat" not in text


def test_butter_brings_milk_and_that_is_shut(client: TestClient) -> None:
    text = client.get("/vary/F1", params={**SUNFLOWER, "fat": "butter"}).text
    assert "gained milk" in text
    shut = text[: text.index("gained milk")]
    assert shut.rindex('class="state stop"') > shut.rindex("<h2")
    assert "4.5<" in text[text.index(">Grams</h2>") :]


def test_what_nobody_has_said_of_an_ingredient_is_never_nothing_gained(client: TestClient) -> None:
    text = client.get("/vary/F2", params={"of": "butter", "to": "margarine"}).text
    told = text[text.index(">Allergens</h2>") : text.index(">Grams</h2>")]
    assert "not known: what is in margarine" in told
    assert "gained: nothing" not in told
    assert "lost: not known" in told
    assert "lost: milk" not in told


def test_a_line_and_what_comes_are_asked_for_together(client: TestClient) -> None:
    answer = client.get("/vary/F1", params={"to": "pistachio"})
    assert answer.status_code == 422
    assert 'id="wrong-of"' in answer.text
    assert 'value="pistachio"' in answer.text


def test_what_no_swap_is_known_for_is_said_and_nothing_is_offered_to_keep(
    client: TestClient,
) -> None:
    text = client.get("/vary/F1", params={"for": "vegan"}).text
    assert "No swap is known for this" in text
    assert "no swap here is known to hold that foam" in text
    assert "Keep it as a child" not in text


def test_an_unknown_thing_is_asked_with_its_answers(client: TestClient) -> None:
    text = client.get("/vary/F1", params={"of": "ground hazelnuts", "to": "moonstone"}).text
    assert "Asked first" in text
    assert "Keep it as a child" not in text


def test_kept_it_is_a_child_and_its_parent_knows_it(own: TestClient) -> None:
    assert "No text of the book names F1" in own.get("/vary/F1/children").text
    _kept(own)
    text = own.get("/vary/F1/children").text
    assert 'href="/formulas/F1-sun"' in text
    assert "Its parent is as it was" in text


def test_a_child_follows_its_parent_and_is_kept_by_version(own: TestClient) -> None:
    _kept(own)
    _edited(own, "F1", "34 g potato starch", "36 g potato starch")
    family = own.get("/vary/F1/children").text
    assert "it follows" in family
    found = re.search(r'href="([^"]*child=F1-sun)">Show its new text', family)
    assert found is not None
    shown = own.get(html.unescape(found[1])).text
    seen = re.search(r'name="seen" value="(\d+)"', shown)
    assert seen is not None
    assert "36 g potato starch" in _text(shown)
    data = {"text": _text(shown), "seen": seen[1]}
    assert own.post("/formulas/F1-sun/edit", data=data).status_code == 200
    assert "Its parent is as it was" in own.get("/vary/F1/children").text
    assert own.post("/formulas/F1-sun/edit", data={**data, "text": "x"}).status_code == 409


def test_a_line_both_changed_is_decided_by_one_of_two_buttons(own: TestClient) -> None:
    _kept(own)
    _edited(own, "F1", "34 g potato starch", "36 g potato starch")
    _edited(own, "F1-sun", "34 g potato starch", "30 g potato starch")
    family = own.get("/vary/F1/children").text
    assert "you decide" in family
    choices = re.findall(r'class="choice" href="([^"]*)">([^<]*)<', family)
    assert [label for _, label in choices] == [
        "30 g potato starch, as you have it",
        "36 g potato starch, after its parent",
    ]
    decided = own.get(html.unescape(choices[1][0])).text
    found = re.search(r'href="([^"]*child=F1-sun)">Show its new text', decided)
    assert found is not None
    assert "36 g potato starch" in _text(own.get(html.unescape(found[1])).text)


def test_a_parent_that_asks_something_is_answered_before_its_children(own: TestClient) -> None:
    _kept(own)
    _edited(own, "F1", "135 g caster sugar", "140 g caster sugar")
    family = own.get("/vary/F1/children").text
    assert "60 g + 75 g = 135 g" in family or 'class="state ask"' in family
    assert "No text of the book names F1" not in family


def test_pages_of_no_formula_are_not_there(client: TestClient, bare: TestClient) -> None:
    assert client.get("/vary/F99").status_code == 404
    assert bare.get("/vary/F1/children").status_code == 404
