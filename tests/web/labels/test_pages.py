"""Labels as pages: what stands on them, what holds them, and each in its forms."""

import html

import pytest
from starlette.testclient import TestClient

from krume.usecases import Asked, save_text

HOSTILE = "<script>alert(1)</script>\n\n100 g sugar\n"


@pytest.mark.parametrize("address", ["/tortes/T3", "/formulas/F4", "/orders/102"])
def test_a_label_leads_with_its_words_and_is_linked_from_its_text(
    client: TestClient, address: str
) -> None:
    answer = client.get(f"{address}/label")
    assert answer.status_code == 200
    assert answer.text.index("Ingredients:") < answer.text.index("What it carries")
    assert f'href="{address}/label"' in client.get(address).text


def test_each_part_has_its_own_list_and_additives_their_numbers_where_asked(
    client: TestClient,
) -> None:
    text = client.get("/tortes/T2/label", params={"list": "parts", "additives": "numbers"}).text
    assert "thickener: E415" in text
    assert "Lemon syrup (sugar, water, lemon juice" in text
    one = client.get("/tortes/T2/label").text
    assert "thickener: xanthan gum" in one
    assert "Lemon syrup (" not in one


def test_what_no_list_names_is_told_and_never_among_what_is_printed(client: TestClient) -> None:
    text = client.get("/tortes/T1/label").text
    assert text.index("What stands on it") < text.index("Buckwheat is a known allergen")
    assert text.index("Beside the list, not printed") < text.index("Buckwheat is a known allergen")


def test_a_held_label_says_why_and_offers_no_paper(client: TestClient) -> None:
    text = client.get("/tortes/T1/label").text
    assert "Not printed yet" in text
    assert "L-016" in text
    assert "/tortes/T1/label/T1.pdf" not in text
    refused = client.get("/tortes/T1/label/T1.pdf")
    assert refused.status_code == 422
    assert "not printed yet" in refused.text


def test_a_closed_panel_alone_can_be_left_out(client: TestClient) -> None:
    text = client.get("/tortes/T3/label").text
    assert "/tortes/T3/label?panel=no" in text
    opened = client.get("/tortes/T3/label", params={"panel": "no"}).text
    assert "may be printed" in opened
    assert "/tortes/T3/label/T3.pdf?panel=no" in html.unescape(opened)


@pytest.mark.parametrize(
    ("end", "media", "begins"),
    [("pdf", "application/pdf", b"%PDF"), ("html", "text/html", b"<!doctype"),
     ("txt", "text/plain", b"Net-loft"), ("json", "application/json", b"{")],
)  # fmt: skip
def test_a_label_comes_in_each_of_its_forms(
    client: TestClient, end: str, media: str, begins: bytes
) -> None:
    params = {"panel": "no", "net": "1574", "code": "270611-1", "labels": "roll-102"}
    answer = client.get(f"/tortes/T3/label/T3.{end}", params=params)
    assert answer.status_code == 200
    assert answer.headers["content-type"].startswith(media)
    assert answer.content.startswith(begins)
    assert "default-src 'none'" in answer.headers["content-security-policy"]


def test_what_does_not_fit_stands_beside_the_paper(client: TestClient) -> None:
    params = {"market": "us", "net": "465", "labels": "single-62x100"}
    answer = client.get("/formulas/F4/label/F4.pdf", params=params)
    assert answer.status_code == 422
    assert 'id="wrong-labels"' in answer.text
    assert "Choose a larger label or an endless roll." in answer.text
    assert 'value="465"' in answer.text


def test_an_address_no_phone_should_open_stands_beside_its_field(client: TestClient) -> None:
    answer = client.get("/tortes/T3/label/T3.pdf", params={"panel": "no", "link": "javascript:1"})
    assert answer.status_code == 422
    assert 'id="wrong-link"' in answer.text


def test_what_cannot_be_used_is_kept_and_said(client: TestClient) -> None:
    answer = client.get("/tortes/T3/label", params={"net": "heavy", "made": "soon"})
    assert answer.status_code == 422
    assert 'id="wrong-net"' in answer.text
    assert 'id="wrong-made"' in answer.text
    assert 'value="heavy"' in answer.text


@pytest.mark.parametrize(
    "address",
    ["/tortes/NONE/label", "/formulas/NONE/label", "/orders/NONE/label",
     "/tortes/T3/label/T9.pdf", "/tortes/T3/label/T3.exe"],
)  # fmt: skip
def test_a_label_nobody_has_is_not_found(client: TestClient, address: str) -> None:
    assert client.get(address).status_code == 404


def test_an_empty_book_has_no_label(bare: TestClient) -> None:
    assert bare.get("/tortes/T3/label").status_code == 404


def test_a_hostile_name_is_only_words(own: TestClient) -> None:
    asked: Asked = own.app.state.asked  # type: ignore[attr-defined]
    save_text("formula", "EVIL", HOSTILE, asked, seen=None)
    text = own.get("/formulas/EVIL/label").text
    assert "<script>alert" not in text
    assert "&lt;script&gt;alert" in text


def test_nothing_on_the_page_promises_what_no_record_shows(client: TestClient) -> None:
    text = client.get("/tortes/T3/label", params={"panel": "no"}).text.casefold()
    assert "gluten-free" not in text
    assert "the gate is shut" in text
    assert " safe " not in text


def test_a_shut_gate_leads_to_what_opens_it_on_the_day_of_its_order(client: TestClient) -> None:
    assert 'href="/gluten/101"' in client.get("/orders/101/label").text
    assert 'href="/gluten/T1"' in client.get("/tortes/T1/label").text


def test_what_was_typed_is_never_folded_away(client: TestClient) -> None:
    assert "<details><summary>More of it" in client.get("/tortes/T1/label").text
    cut = client.get("/tortes/T1/label", params={"slices": "10"}).text
    assert "<details open><summary>More of it" in cut
