"""The stable addresses of the web app: each answers, holds its marks, and asks nobody else."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from krume.usecases import Asked, init_book, load_demo
from krume.web import application
from tests.web.walking import Seen

OWN = "http://127.0.0.1:8710"
LISTS = ("/", "/formulas", "/tortes", "/orders", "/trials", "/sums", "/pantry", "/ovens")
ALWAYS = (*LISTS, "/plan/2027-06-12", "/sums/dial")
NAMED = (
    *(
        f"/{page}/{name}"
        for page in ("formulas", "bench", "bake", "teach")
        for name in ("F1", "F5")
    ),
    *("/formulas/C2", "/tortes/T1", "/tortes/T3", "/orders/101", "/orders/102", "/teach/CLASS7"),
)
NAME_TAKERS = ("formulas", "bench", "bake", "tortes", "orders", "sums", "teach")
HEAVIEST_BYTES = 150_000


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[TestClient]:
    """The app over the demo studio."""
    book = tmp_path_factory.mktemp("addresses") / "book"
    load_demo(Asked(book=book))
    with TestClient(application(book), base_url=OWN, follow_redirects=False) as client:
        yield client


@pytest.fixture(scope="module", params=["an empty book", "no book"])
def nothing(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[TestClient]:
    """The app where nothing is kept yet."""
    book: Path = tmp_path_factory.mktemp("nothing") / "book"
    if request.param == "an empty book":
        init_book(Asked(book=book))
    with TestClient(application(book), base_url=OWN, follow_redirects=False) as client:
        yield client


@pytest.mark.parametrize("address", [*ALWAYS, *NAMED])
def test_a_stable_address_answers_with_a_whole_page(demo: TestClient, address: str) -> None:
    answer = demo.get(address)
    assert answer.status_code == 200
    assert answer.headers["content-type"] == "text/html; charset=utf-8"
    assert len(answer.content) <= HEAVIEST_BYTES
    check(Seen(answer.text))


@pytest.mark.parametrize("address", ALWAYS)
def test_it_answers_where_nothing_is_kept_yet(nothing: TestClient, address: str) -> None:
    answer = nothing.get(address)
    assert answer.status_code == 200
    check(Seen(answer.text))


def check(page: Seen) -> None:
    """What every page has, and what none may have."""
    assert page.headings == 1
    assert page.mains == 1
    assert page.language == "en"
    assert page.unlabelled == []
    assert page.inline == []
    assert len(page.ids) == len(set(page.ids))
    assert [each for each in page.fetched if not is_local(each)] == []


def is_local(address: str) -> bool:
    """Whether an address stays with this app: a path, or a place in the page itself."""
    return not address.startswith("//") and address.startswith(("/", "#", "?"))


@pytest.mark.parametrize("kind", NAME_TAKERS)
@pytest.mark.parametrize("name", ["nobody", "..%2F..%2Fbook", "%00", "a%2Fb", "<b>", "Ä ö"])
def test_a_name_that_does_not_exist_is_not_found(demo: TestClient, kind: str, name: str) -> None:
    answer = demo.get(f"/{kind}/{name}")
    assert answer.status_code == 404
    assert "<b>" not in answer.text
    check(Seen(answer.text))


@pytest.mark.parametrize("date", ["2027-06-10", "2027-02-29", "tomorrow", "9999-99-99"])
def test_a_day_of_the_plan_is_a_page_or_is_not_found(demo: TestClient, date: str) -> None:
    wanted = 200 if date == "2027-06-10" else 404
    assert demo.get(f"/plan/{date}").status_code == wanted


@pytest.mark.parametrize("address", [*ALWAYS, "/formulas/nobody", "/static/base.css", "/health"])
def test_the_policy_lets_nothing_in_from_elsewhere(demo: TestClient, address: str) -> None:
    policy = demo.get(address).headers["content-security-policy"]
    rules = dict(rule.strip().partition(" ")[::2] for rule in policy.split(";"))
    assert rules["default-src"] == "'none'"
    assert {rules["script-src"], rules["style-src"], rules["form-action"]} == {"'self'"}
    assert rules["frame-ancestors"] == rules["base-uri"] == "'none'"
    assert "unsafe" not in policy
    assert "*" not in policy


def test_every_file_of_a_page_is_there_and_asks_for_none_from_elsewhere(demo: TestClient) -> None:
    files = {
        each
        for address in (*ALWAYS, *NAMED)
        for each in Seen(demo.get(address).text).fetched
        if each.startswith("/static/")
    }
    assert "/static/tokens.css" in files
    for file in sorted(files):
        answer = demo.get(file)
        assert answer.status_code == 200
        assert "http://" not in answer.text.replace("http://www.w3.org/", "")
        assert "https://" not in answer.text


def test_health_is_for_a_machine_to_read(demo: TestClient, nothing: TestClient) -> None:
    for client in (demo, nothing):
        answer = client.get("/health")
        assert answer.status_code == 200
        assert answer.headers["content-type"] == "application/json"
        assert answer.json()["ok"] is True


def test_the_tests_see_a_page_that_lacks_its_marks() -> None:
    page = Seen("<html><h1>a</h1><h1>b</h1><input name=x><img src='https://elsewhere'><p style=x>")
    assert (page.headings, page.mains, page.language) == (2, 0, "")
    assert page.unlabelled == ["x"]
    assert page.inline == ["p style"]
    assert [each for each in page.fetched if not is_local(each)] == ["https://elsewhere"]
