"""Tortes as pages: the section first, sums that add, what to make, versions, clashes named."""

import re

import pytest
from starlette.testclient import TestClient

MINE = (
    "Mine\nSlices: 12\n\n3 layers of F1, 14 mm, trimmed to 19.5 cm\n"
    "2 x 10 mm C1 between the layers\n"
)


def _plain(text: str) -> str:
    return " ".join(re.sub("<[^>]*>", " ", text).split())


def _column(text: str, number: int) -> list[str]:
    """The cells of a column of the table of sums, its sum the last."""
    table = text[text.index('aria-label="Sums"') :]
    table = table[: table.index("</table>")]
    rows = re.findall(r"<tr>(.*?)</tr>", table)[1:]
    return [_plain(re.findall(r"<t[dh].*?</t[dh]>", row)[number]) for row in rows]


def test_the_list_holds_every_torte_and_a_box_for_a_new_one(client: TestClient) -> None:
    text = client.get("/tortes").text
    assert text.count('<li><a href="/tortes/') >= 4
    assert 'action="/tortes"' in text
    assert "Orl hazel torte" in client.get("/tortes", params={"search": "hazel"}).text


def test_an_empty_book_says_what_to_paste(bare: TestClient) -> None:
    answer = bare.get("/tortes")
    assert answer.status_code == 200
    assert "No torte yet" in answer.text
    assert bare.get("/tortes/T1").status_code == 404


def test_the_section_stands_first_and_has_a_narrow_one_beside_it(client: TestClient) -> None:
    text = client.get("/tortes/T1").text
    main = text[text.index("<main") :]
    assert main.index("torte-name") < main.index("<table")
    assert 'id="phone-name"' in main
    assert "Section of Orl hazel torte to scale, 203 mm wide and 66 mm high." in main


@pytest.mark.parametrize("name", ["T1", "T3"])
def test_the_sums_add_to_the_torte_as_printed(client: TestClient, name: str) -> None:
    text = client.get(f"/tortes/{name}").text
    *grams, total = (float(g.replace(" ", "")) for g in _column(text, 2))
    assert sum(grams) == pytest.approx(total, abs=1e-9)
    *heights, high = _column(text, 1)
    assert sum(float(h) for h in heights if h != "in it") == float(high)


def test_the_ring_says_that_it_is_full_and_the_cream_that_it_is_thick(client: TestClient) -> None:
    text = _plain(client.get("/tortes/T3").text)
    assert "Ring is full: 60 of 60 mm" in text
    assert "thicker than the usual 10" in text


def test_what_to_make_keeping_and_gate_are_said(client: TestClient) -> None:
    text = _plain(client.get("/tortes/T1").text)
    assert "half a batch 448.0 941.5 22.8 g over" in text
    assert "3 to 5 days at 5 °C or below; count on 3." in text
    assert "cooked custard" in text
    assert "No gluten sentence: L-008." in text
    assert "a valid test or certificate" in text
    assert "nuts (hazelnut)" in text


def test_a_torte_leads_to_its_formulas(client: TestClient) -> None:
    text = client.get("/tortes/T1").text
    for name in ("F1", "C1", "C5", "S1"):
        assert f'href="/formulas/{name}"' in text


def test_a_torte_is_pasted_drawn_edited_and_taken_back(own: TestClient) -> None:
    kept = own.post("/tortes", data={"text": MINE, "name": "mine"})
    assert kept.url.path == "/tortes/mine"
    assert "Heights add to 62 mm" in _plain(kept.text)
    thin = MINE.replace("10 mm", "8 mm")
    edited = own.post("/tortes/mine/edit", data={"text": thin, "seen": "1"})
    assert "Heights add to 58 mm" in _plain(edited.text)
    assert "Heights add to 62 mm" in _plain(own.post("/tortes/mine/versions/1").text)
    assert "version 3, as it is now" in own.get("/tortes/mine").text


def test_two_editors_see_both(own: TestClient) -> None:
    own.post("/tortes", data={"text": MINE, "name": "mine"})
    own.post("/tortes/mine/edit", data={"text": f"{MINE}Keep: cold\n", "seen": "1"})
    second = own.post("/tortes/mine/edit", data={"text": f"{MINE}Notes: x\n", "seen": "1"})
    assert second.status_code == 409
    assert "Keep: cold" in second.text
    assert "Notes: x" in second.text


def test_what_cannot_stand_is_named_and_the_text_stays(own: TestClient) -> None:
    ring = MINE.replace("Slices: 12", "Slices: 12\nRing: 22 x 5 cm")
    page = own.post("/tortes", data={"text": ring, "name": "low"})
    assert page.status_code == 200
    assert "It cannot stand like this" in page.text
    assert "Ring: 22 x 5 cm" in page.text


def test_a_formula_that_is_not_there_is_asked(own: TestClient) -> None:
    page = own.post("/tortes", data={"text": MINE.replace("F1", "F99"), "name": "gone"})
    assert page.status_code == 200
    assert "question" in _plain(page.text)
    assert "Edit the text" in page.text


def test_nothing_typed_is_ever_markup(own: TestClient) -> None:
    page = own.post("/tortes", data={"text": MINE.replace("Mine", "<b>M</b>"), "name": "evil"})
    assert "<b>M</b>" not in page.text
    assert "&lt;b&gt;" in page.text


def test_every_demo_torte_has_its_page(client: TestClient) -> None:
    for name in ("T1", "T2", "T3", "TART"):
        answer = client.get(f"/tortes/{name}")
        assert answer.status_code == 200
        assert len(answer.content) < 150_000
