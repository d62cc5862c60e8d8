"""The gluten page and the list of the room, as whoever asks and whoever answers sees them."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from krume.store import place_all
from krume.usecases.book.book import demo_files
from krume.web import application
from tests.web.conftest import OWN

CLAIM = re.compile(r"gluten[\s-]*free", re.IGNORECASE)


def body(text: str) -> str:
    """What stands on the page itself, tags left out."""
    main = text[text.index("<main") :]
    return " ".join(re.sub(r"<[^>]+>", " ", main).split())


@pytest.mark.parametrize("name", ["T3", "F1", "102", "CLASS7"])
def test_the_answer_stands_before_everything_and_claims_nothing(
    client: TestClient, name: str
) -> None:
    found = client.get(f"/gluten/{name}")
    assert found.status_code == 200
    text = body(found.text)
    assert text.index("Can somebody with coeliac disease eat it?") < text.index(
        "What this does not prove"
    )
    assert not CLAIM.search(found.text)
    assert "safe" not in text.casefold()
    assert found.text.count("<h1") == found.text.count("<main") == 1


def test_the_lots_stand_with_their_papers_and_the_sum_as_a_warning(client: TestClient) -> None:
    text = body(client.get("/gluten/101").text)
    assert "No. Please do not give Orl hazel torte to anybody with coeliac disease" in text
    assert "ground hazelnuts L-008 speaks against it specification: may contain wheat" in text
    assert "Warning, for the kitchen only" in text


@pytest.mark.parametrize("market", ["us", "uk", "ca", "au-nz"])
def test_each_markets_rule_can_be_asked_for(client: TestClient, market: str) -> None:
    found = client.get(f"/gluten/T3?market={market}")
    assert found.status_code == 200
    assert not CLAIM.search(found.text)


def test_a_market_nobody_knows_is_the_books_own(client: TestClient) -> None:
    assert "20 mg/kg or less" in client.get("/gluten/T3?market=mars").text


@pytest.mark.parametrize("name", ["T9", "..%2F..%2Fetc%2Fpasswd", "x%00y"])
def test_a_name_that_no_text_bears_is_not_there(client: TestClient, name: str) -> None:
    assert client.get(f"/gluten/{name}").status_code == 404


@pytest.mark.parametrize(("end", "media"), [("pdf", "application/pdf"), ("html", "text/html")])
def test_the_page_can_be_printed_and_sent(client: TestClient, end: str, media: str) -> None:
    found = client.get(f"/gluten/T1/page.{end}")
    assert found.status_code == 200
    assert found.headers["content-type"].startswith(media)
    assert client.get("/gluten/T1/page.exe").status_code == 404


def test_the_list_of_what_may_be_asked_about_is_searched(client: TestClient) -> None:
    assert 'href="/gluten/T1"' in client.get("/gluten").text
    found = client.get("/gluten?search=lemon").text
    assert 'href="/gluten/T2"' in found
    assert 'href="/gluten/T1"' not in found


@pytest.mark.parametrize("address", ["/gluten", "/room"])
def test_an_empty_book_says_what_to_do_next(bare: TestClient, address: str) -> None:
    assert bare.get(address).status_code == 200


def test_what_is_said_of_the_room_is_kept_once_and_shuts_what_is_not_answered(
    own: TestClient,
) -> None:
    assert "the list is not begun" in own.get("/room").text
    for _ in range(2):
        said = own.post("/room", data={"source": "sieve", "state": "own"}, follow_redirects=False)
        assert (said.status_code, said.headers["location"]) == (303, "/room#sieve")
    text = body(own.get("/room").text)
    assert "1 of 10 open" in text
    assert "sieve open of its own since 2027-06-10" in text
    assert text.count("wooden spoons shut") == 1
    assert own.get("/pantry/room-list").text.count('href="/pantry/room-list/') == 3
    assert "in the room wheat day" in body(own.get("/gluten/T3").text)


@pytest.mark.parametrize(
    ("source", "state"), [("sieve", "cleaned"), ("sieve", ""), ("cellar", "own"), ("", "")]
)
def test_what_cannot_be_said_is_refused_and_nothing_is_kept(
    own: TestClient, source: str, state: str
) -> None:
    said = own.post("/room", data={"source": source, "state": state}, follow_redirects=False)
    assert said.status_code in (400, 422)
    assert "the list is not begun" in own.get("/room").text


def test_another_paper_of_a_lot_is_added_from_its_row(own: TestClient) -> None:
    text = own.get("/pantry").text
    assert "/pantry/lots/new?lot=L-008&amp;ingredient=ground%20hazelnuts" in text
    form = own.get("/pantry/lots/new?lot=L-008&ingredient=ground%20hazelnuts").text
    assert 'value="L-008"' in form
    paper = {"lot": "L-008", "ingredient": "ground hazelnuts", "evidence": "lab test",
             "result_mg_kg": "n. d.", "limit_mg_kg": "5", "method": "R5 ELISA",
             "from": "2027-06-01", "valid_to": "2028-06-01"}  # fmt: skip
    assert own.post("/pantry/lots/new", data=paper, follow_redirects=False).status_code == 303
    shown = body(own.get("/gluten/T1").text)
    assert "may contain wheat" in shown
    assert "by R5 sandwich ELISA" in shown
    assert "No. Please do not give" in shown


@pytest.fixture
def plain(tmp_path: Path) -> Iterator[TestClient]:
    """The app over a folder of plain texts with a clean room."""
    files = {**demo_files(), "cleaning.csv": b"date,cleaned\n2027-06-10,yes\n"}
    place_all(tmp_path / "plain", files)
    with TestClient(application(tmp_path / "plain"), base_url=OWN) as found:
        yield found


def test_an_open_gate_says_yes_by_its_rule_and_what_it_does_not_prove(plain: TestClient) -> None:
    text = body(plain.get("/gluten/T3").text)
    assert "Yes, Net-loft ring torte may be called gluten-free by the rule" in text
    assert "The cake itself was not tested" in text
    assert "write room.csv where it lies" in body(plain.get("/room").text)
