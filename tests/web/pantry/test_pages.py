"""The pantry as pages: what stops first, rows edited by version, tables by file, ingredients."""

import html
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from krume.store import place_all
from krume.usecases import Asked, load_demo
from krume.usecases.book.book import demo_files
from krume.web import application
from tests.web.conftest import OWN

COVERS = ["kinds"]
LOT = {"lot": "L-019", "ingredient": "teff flour", "evidence": "lab test", "text": "",
       "result_mg_kg": "<5", "from": "2027-06-01", "valid_to": "2028-06-01"}  # fmt: skip


@pytest.fixture
def plain(tmp_path: Path) -> Iterator[TestClient]:
    """The app over a folder of plain texts."""
    place_all(tmp_path / "plain", demo_files())
    with TestClient(application(tmp_path / "plain"), base_url=OWN) as found:
        yield found


def _row(client: TestClient, lot: str) -> str:
    """Address of a lot's own form."""
    text = client.get("/pantry").text
    found = re.search(rf'href="(/pantry/lots/\d+)">{lot}</a>', text)
    assert found is not None
    return found[1]


def _form(text: str) -> dict[str, str]:
    """What the first form of a page for a row would send."""
    form = text[text.index('class="block row-form"') :]
    form = form[: form.index("</form>")]
    values = {
        name: html.unescape(value)
        for name, value in re.findall(r'<input[^>]*name="(\w+)"[^>]*value="([^"]*)"', form)
    }
    for name, inside in re.findall(r'<select[^>]*name="(\w+)"[^>]*>(.*?)</select>', form, re.S):
        chosen = re.search(r"<option selected>([^<]*)", inside)
        values[name] = html.unescape(chosen[1]) if chosen else ""
    return values


def test_what_stops_an_order_stands_before_the_lots(client: TestClient) -> None:
    text = client.get("/pantry").text
    assert text.index("What stops an order") < text.index("The room today")
    assert text.index("The room today") < text.index("Lots by ingredient")
    first = text[text.index('class="held stops"') :]
    assert first.index("L-008") < first.index("holds") < first.index("Order 101")
    assert first.index("Order 101") < first.index("L-004")
    assert "on 10 June 2027" in text


def test_every_lot_has_its_state_in_a_word_and_no_cell_is_blank(client: TestClient) -> None:
    text = client.get("/pantry").text
    table = text[text.index('aria-label="Lots by ingredient"') :]
    table = table[: table.index("</table>")]
    assert table.count("<tr id=") == 18
    assert table.count('class="glyph"') == 18
    assert "<td></td>" not in table
    assert 'dir="auto"></td>' not in table
    assert "not known" in table[table.index("L-002") : table.index("L-016")]


def test_an_empty_book_says_what_to_do(bare: TestClient) -> None:
    text = bare.get("/pantry").text
    assert "There is no book yet" in text
    assert "No lot is written down" in text
    for path in ("/pantry/prices", "/pantry/packs", "/pantry/cleaning"):
        assert "krume book init" in bare.get(path).text


def test_without_a_book_what_was_typed_stays(bare: TestClient) -> None:
    answer = bare.post("/pantry/lots/new", data=LOT)
    assert answer.status_code >= 400
    assert "has no database yet" in answer.text
    assert 'value="L-019"' in answer.text


def test_a_folder_of_plain_texts_is_shown_and_not_edited(plain: TestClient) -> None:
    text = plain.get("/pantry").text
    assert "L-008" in text
    assert "/pantry/lots/new" not in text
    assert "edit lots.csv where it lies" in text


def test_a_new_lot_is_kept_once_and_opens_the_gate(own: TestClient) -> None:
    for _ in range(2):
        answer = own.post("/pantry/lots/new", data=LOT)
        assert answer.status_code == 200
        assert answer.url.path == "/pantry"
    assert answer.text.count(">L-019</a>") == 1


def test_a_new_lot_has_no_evidence_until_it_is_chosen(own: TestClient) -> None:
    form = _form(own.get("/pantry/lots/new?ingredient=teff+flour").text)
    assert form["evidence"] == ""
    assert form["ingredient"] == "teff flour"
    answer = own.post("/pantry/lots/new", data={**form, "lot": "L-019"})
    assert answer.status_code == 422
    assert 'id="wrong-evidence"' in answer.text


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"lot": ""}, "lot"),
        ({"lot": "L-001"}, "lot"),
        ({"evidence": "hearsay"}, "evidence"),
        ({"result_mg_kg": "little"}, "result_mg_kg"),
        ({"valid_to": "2026-06-01"}, "valid_to"),
        ({"text": "x" * 2001}, "text"),
    ],
)
def test_what_is_wrong_stands_beside_its_field_and_stays_typed(
    own: TestClient, change: dict[str, str], field: str
) -> None:
    answer = own.post("/pantry/lots/new", data={**LOT, **change})
    assert answer.status_code == 422
    assert f'id="wrong-{field}"' in answer.text
    assert _form(answer.text) == {**_form(answer.text), **LOT, **change}


def test_a_row_is_edited_by_its_version(own: TestClient) -> None:
    address = _row(own, "L-002")
    form = _form(own.get(address).text)
    good = {**form, "evidence": "certificate", "result_mg_kg": "≤20", "from": "2027-06-01",
            "valid_to": "2028-06-01"}  # fmt: skip
    for _ in range(2):
        assert own.post(address, data=good).url.path == "/pantry"
    assert _form(own.get(address).text)["seen"] == "2"
    text = own.get("/pantry").text
    assert "good" in text[text.index(">L-002</a>") :][:400]


def test_two_tabs_are_shown_both_versions_and_the_second_may_go_on(own: TestClient) -> None:
    address = _row(own, "L-002")
    form = _form(own.get(address).text)
    own.post(address, data={**form, "text": "first words"})
    second = own.post(address, data={**form, "text": "second words"})
    assert second.status_code == 409
    assert "first words" in second.text
    assert _form(second.text)["text"] == "second words"
    assert "Keep mine, as the newest" in second.text
    assert own.post(address, data=_form(second.text)).status_code == 200
    assert _form(own.get(address).text)["text"] == "second words"


def test_a_row_is_taken_out_once_and_not_while_it_changed(own: TestClient) -> None:
    address = _row(own, "L-002")
    form = _form(own.get(address).text)
    own.post(address, data={**form, "text": "first words"})
    assert own.post(f"{address}/delete", data={"seen": form["seen"]}).status_code == 409
    for _ in range(2):
        assert own.post(f"{address}/delete", data={"seen": "2"}).status_code == 200
    assert ">L-002</a>" not in own.get("/pantry").text
    assert own.get(address).status_code == 404
    gone = own.post(address, data=form)
    assert gone.status_code == 409
    assert "Keep yours as a new row" in gone.text


def test_a_row_that_cannot_be_read_is_shown_with_its_question(own: TestClient) -> None:
    sent = "lot,ingredient,evidence,from\nL-1,teff flour,rumour,spring\n"
    look = own.post("/pantry/lots/file", files={"file": ("lots.csv", sent, "text/csv")}).text
    keep = {"text": sent, "seen": _seen(look)}
    own.post("/pantry/lots/file/keep", data=keep)
    text = own.get("/pantry").text
    assert "is no kind of evidence" in text
    form = own.get(_row(own, "L-1")).text
    assert 'id="wrong-evidence"' in form
    assert 'id="wrong-from"' in form
    assert _form(form)["evidence"] == "rumour"


def _seen(text: str) -> str:
    found = re.search(r'name="seen" value="(\w+)"', text)
    assert found is not None
    return found[1]


def test_the_room_of_the_day_is_one_tap_and_one_record(own: TestClient) -> None:
    assert "Not written yet" in own.get("/pantry").text
    for _ in range(2):
        assert "Cleaned before the work" in own.post("/pantry/room", data={"cleaned": "yes"}).text
    text = own.get("/pantry").text
    answer = own.post("/pantry/room", data={"cleaned": "no", "seen": _seen(text)})
    assert "no gluten sentence today" in answer.text
    listed = own.get("/pantry/cleaning").text
    assert listed.count("2027-06-10") == 1


def test_an_old_tab_does_not_turn_the_room_round(own: TestClient) -> None:
    own.post("/pantry/room", data={"cleaned": "yes"})
    own.post("/pantry/room", data={"cleaned": "no", "seen": "1"})
    assert own.post("/pantry/room", data={"cleaned": "yes", "seen": "1"}).status_code == 409
    assert "no gluten sentence today" in own.get("/pantry").text


def test_a_table_by_file_is_looked_at_before_it_is_kept(own: TestClient) -> None:
    sent = "item,price,per\r\nbutter,9.90,kg\r\n"
    look = own.post("/pantry/prices/file", files={"file": ("prices.csv", sent, "text/csv")})
    assert look.status_code == 200
    assert "What it would change" in look.text
    assert "9.20" in own.get("/pantry/prices").text
    found = re.search(r"readonly>\n?(.*?)</textarea>", look.text, re.S)
    assert found is not None
    keep = {"text": html.unescape(found[1]).strip("\n") + "\n", "seen": _seen(look.text)}
    for _ in range(2):
        kept = own.post("/pantry/prices/file/keep", data=keep)
        assert kept.url.path == "/pantry/prices"
    assert "9.90" in kept.text
    assert "1 row<" in kept.text


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"%PDF-1.7 item,price,per", "PDF"),
        (b"PK\x03\x04\x00\x00", "spreadsheet"),
        (b"\x89PNG\r\n\x1a\n", "picture"),
        ("item,price,per\nbutter,9,kg\n".encode("utf-16"), "no plain text"),
        (b"item,cost\nbutter,9\n", "no column price"),
        (b"", "nothing in it"),
    ],
)
def test_a_file_that_lies_about_its_type_is_refused(
    own: TestClient, data: bytes, said: str
) -> None:
    answer = own.post("/pantry/prices/file", files={"file": ("prices.csv", data, "text/csv")})
    assert answer.status_code == 422
    assert said in html.unescape(answer.text)
    assert "Nothing was changed" in answer.text


def test_a_file_of_more_than_two_megabytes_is_refused(own: TestClient) -> None:
    data = b"item,price,per\n" + b"a" * (2 * 1024 * 1024)
    answer = own.post("/pantry/prices/file", files={"file": ("prices.csv", data, "text/csv")})
    assert answer.status_code == 413


def test_a_long_table_comes_through_the_look_whole(own: TestClient) -> None:
    rows = "".join(f"thing {n},1.00,kg,{'' if n else 'declared'}\n" for n in range(4000))
    sent = "item,price,per,status\n" + rows.replace("1.00,kg,", f"1.00,kg,{' ' * 300}")
    look = own.post("/pantry/prices/file", files={"file": ("prices.csv", sent, "text/csv")})
    assert look.status_code == 200
    keep = own.post(
        "/pantry/prices/file/keep",
        data={"seen": _seen(look.text)},
        files={"text": (None, sent)},
    )
    assert keep.url.path == "/pantry/prices"


def test_a_table_that_changed_since_the_look_is_not_overwritten(own: TestClient) -> None:
    sent = "item,price,per\nbutter,9.90,kg\n"
    look = own.post("/pantry/prices/file", files={"file": ("prices.csv", sent, "text/csv")}).text
    own.post("/pantry/prices/new", data={"item": "quark", "price": "2.10", "per": "kg"})
    keep = own.post("/pantry/prices/file/keep", data={"text": sent, "seen": _seen(look)})
    assert keep.status_code == 409
    assert "quark" in own.get("/pantry/prices").text


def test_stock_that_runs_out_stands_among_what_stops(own: TestClient) -> None:
    own.post("/pantry/packs/new", data={"item": "ground walnuts", "stock_g": "100"})
    text = own.get("/pantry").text
    first = text[text.index("What stops an order") : text.index("The room today")]
    assert "ground walnuts" in first
    assert "100 g in the house, 115 g wanted" in first


def test_an_ingredient_shows_what_100_g_hold_and_where_that_comes_from(client: TestClient) -> None:
    text = client.get("/pantry/white%20rice%20flour").text
    assert "5.95" in text
    assert "National Nutrient Database" in text
    assert "Status: published" in text
    assert 'starch</dt><dd><span class="state ask">not known' in text


@pytest.mark.parametrize("name", ["quuxflour", "..%2Flots.csv", "lots.csv"])
def test_what_the_pantry_does_not_know_is_not_found(client: TestClient, name: str) -> None:
    assert client.get(f"/pantry/{name}").status_code == 404


def test_a_search_finds_and_asks_and_says_when_there_is_nothing(client: TestClient) -> None:
    assert "/pantry/flour-buckwheat" in client.get("/pantry/search?search=buckwheat").text
    assert "Nothing in the packed pantry" in client.get("/pantry/search?search=quuxflour").text
    asked = client.get("/pantry/search?search=potato+flour").text
    assert 'class="state ask"' in asked
    assert "Type a word" in client.get("/pantry/search").text


def test_nothing_typed_is_ever_markup(own: TestClient) -> None:
    evil = {**LOT, "lot": "<script>alert(1)</script>", "text": '"><b>x'}
    own.post("/pantry/lots/new", data=evil)
    text = own.get("/pantry").text
    assert "<script>alert" not in text
    assert "&lt;script&gt;" in text


def test_looking_changes_nothing(tmp_path: Path) -> None:
    load_demo(Asked(book=tmp_path / "book"))
    with TestClient(application(tmp_path / "book"), base_url=OWN) as client:
        before = client.get("/pantry").text
        for path in ("/pantry/lots/new", "/pantry/lots/file", "/pantry/room", "/pantry/prices"):
            client.get(path)
        assert client.get("/pantry").text == before
