"""A bench card from the formula's page: made as asked for, never while a question is open."""

import io

from pypdf import PdfReader
from starlette.testclient import TestClient

MINE = "Mine\nTin: round 20 x 7 cm\n\n100 g white rice flour\n5 eggs\n120 g caster sugar\n"


def test_a_card_comes_as_pdf_with_the_names_and_displays(client: TestClient) -> None:
    answer = client.get("/formulas/F2/card.pdf")
    assert answer.headers["content-type"] == "application/pdf"
    text = "".join(leaf.extract_text() for leaf in PdfReader(io.BytesIO(answer.content)).pages)
    assert "Tidewick vanilla sponge" in text
    assert "sweet rice flour" in text


def test_a_card_comes_as_a_page_with_a_policy_for_its_own_style(client: TestClient) -> None:
    answer = client.get("/formulas/F2/card.html")
    policy = answer.headers["content-security-policy"]
    assert answer.status_code == 200
    assert "sha256-" in policy
    assert "unsafe" not in policy
    assert "sweet rice flour" in answer.text


def test_there_is_no_card_while_a_question_is_open(own: TestClient) -> None:
    own.post("/formulas", data={"text": MINE, "name": "mine"})
    for ending in ("pdf", "html"):
        answer = own.get(f"/formulas/mine/card.{ending}")
        assert answer.status_code == 422
        assert "1 question is open" in answer.text
    assert "card.pdf" not in own.get("/formulas/mine").text


def test_the_formula_leads_to_its_card_and_making_it_changes_nothing(own: TestClient) -> None:
    text = own.get("/formulas/F2").text
    assert 'href="/formulas/F2/card.pdf"' in text
    assert 'href="/formulas/F2/card.html"' in text
    own.get("/formulas/F2/card.pdf")
    assert "version 1, as it is now" in own.get("/formulas/F2").text


def test_no_card_of_nobody(client: TestClient) -> None:
    assert client.get("/formulas/nobody/card.pdf").status_code == 404
