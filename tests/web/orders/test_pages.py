"""Orders as pages: judged, asked, edited, their sheets made and opened."""

import html
import re
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from krume.usecases import Asked, save_text

PLAIN = "Order 9\nCustomer: Café\nDate: 2027-06-14\nHand-over: 10:00, pick-up\n\n1 F2\n"


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    return Asked(book=tmp_path / "book")


def test_the_list_goes_by_date_and_says_what_stops_each(client: TestClient) -> None:
    text = client.get("/orders").text
    assert text.index("Pell Harbour Office") < text.index("M. Tarrow")
    assert "and T3 with walnut" in text
    assert "gate shut" in text
    assert "Pell" not in client.get("/orders", params={"search": "tarrow"}).text
    assert "Show all of them" in client.get("/orders", params={"search": "zzz"}).text


def test_past_orders_are_folded(own: TestClient, asked: Asked) -> None:
    save_text("order", "8", PLAIN.replace("06-14", "06-01"), asked, seen=None)
    text = own.get("/orders").text
    assert text.index("1 past") < text.index('href="/orders/8"')


def test_an_empty_book_says_what_to_do(bare: TestClient) -> None:
    answer = bare.get("/orders")
    assert answer.status_code == 200
    assert "Paste one here" in answer.text
    assert bare.get("/orders/101").status_code == 404


def test_the_demo_order_answers_its_five_questions(client: TestClient) -> None:
    text = client.get("/orders/101").text
    places = [
        text.index(f'id="q-{key}"') for key in ("sized", "timed", "priced", "diets", "labels")
    ]
    assert places == sorted(places)
    assert "27.43 for an hour of your work" in text
    assert text.index("of another lot than L-008") < places[0]
    assert "12 of 99.6" in text


def test_a_contradiction_stands_in_its_line_and_one_tap_answers_it(own: TestClient) -> None:
    text = own.get("/orders/102").text
    lit = text[text.index('class="lit"') :]
    assert "1 T3" in lit[:200]
    fields = re.search(
        r'name="where" value="([^"]*)".*?name="line" value="([^"]*)".*?name="seen" value="(\d+)"',
        lit,
    )
    assert fields is not None
    form = dict(zip(("where", "line", "seen"), map(html.unescape, fields.groups()), strict=True))
    answered = own.post("/orders/102/answer", data=form)
    assert answered.status_code == 200
    assert "Note: 1 T3, left out" in answered.text
    assert "version 2, as it is now" in answered.text


def test_a_new_order_is_kept_as_it_was_typed_and_asked_about(own: TestClient) -> None:
    answer = own.post("/orders", data={"text": PLAIN + "2 T9\n", "name": "9"})
    assert answer.url.path == "/orders/9"
    assert "names T9, and the book has no torte" in html.unescape(answer.text)
    again = own.post("/orders", data={"text": "Other\n", "name": "101"})
    assert again.status_code == 409
    assert 'id="wrong-name"' in again.text


def test_sheets_are_made_listed_and_opened_with_their_own_style_alone(
    own: TestClient, asked: Asked
) -> None:
    save_text("order", "9", PLAIN, asked, seen=None)
    made = own.post("/orders/9/sheets")
    assert made.url.path == "/orders/9"
    assert "All as written" in made.text
    addresses = re.findall(r'href="(/orders/9/sheets/[^"]+)"', made.text)
    assert len(addresses) >= 8
    for address in addresses:
        found = own.get(address)
        assert found.status_code == 200
        kind = "application/pdf" if address.endswith("pdf") else "text/html; charset=utf-8"
        assert found.headers["content-type"] == kind
        policy = found.headers["content-security-policy"]
        assert policy.startswith("default-src 'none'")
        assert ("style-src 'sha256-" in policy) == address.endswith("html")
        assert "unsafe" not in policy


def test_a_contradiction_makes_no_sheets_and_says_why(own: TestClient) -> None:
    answer = own.post("/orders/102/sheets")
    assert answer.status_code == 422
    assert "stands against T3" in answer.text[answer.text.index('id="sheets"') :]


def test_what_is_no_sheet_of_the_order_is_not_there(own: TestClient) -> None:
    for file in ("none.pdf", "..%2F..%2Fkrume.db", "sheets.json"):
        assert own.get(f"/orders/101/sheets/{file}").status_code == 404
    assert own.post("/orders/nope/sheets").status_code == 404


def test_nothing_typed_is_ever_markup(own: TestClient, asked: Asked) -> None:
    evil = (
        "<script>alert(1)</script>\nCustomer: <b>x</b>\nDate: 2027-06-14\nNotes: <i>no nuts</i>\n"
    )
    save_text("order", "evil", evil + "\n1 T1\n1 <u>T9</u>\n", asked, seen=None)
    for address in ("/orders", "/orders/evil", "/", "/plan/2027-06-13"):
        text = own.get(address).text
        assert "<script>alert" not in text
        assert "<b>x" not in text
        assert "<i>no" not in text
        assert "<u>T9" not in text
