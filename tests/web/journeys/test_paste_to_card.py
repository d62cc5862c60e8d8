"""From the first page of an empty book to a printed bench card of one's own formula."""

import io
from collections.abc import Iterator
from pathlib import Path

import pypdf
import pytest
from playwright.sync_api import Browser, Page

from tests.web.browsing import Heard, served, visit
from tests.web.journeys.person import OWN_TEXT, Person

WAYS = [
    pytest.param(360, False, id="phone"),
    pytest.param(1280, False, id="desk"),
    pytest.param(1280, True, id="keys alone"),
]


@pytest.fixture
def address(tmp_path: Path) -> Iterator[str]:
    with served(tmp_path / "book") as found:
        yield found


def first_page(page: Page, address: str, *, by_keys: bool) -> Person:
    page.goto(address)
    return Person(page, by_keys=by_keys)


def printed(page: Page) -> str:
    """What stands on the paper when a page is printed, on one line."""
    leaves = pypdf.PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True))).pages
    return " ".join(" ".join(leaf.extract_text() for leaf in leaves).split())


def said_nothing(heard: Heard) -> bool:
    return (heard.lines, heard.outside) == ([], [])


@pytest.mark.parametrize(("width", "by_keys"), WAYS)
def test_the_first_page_leads_to_a_printed_card_in_a_dozen_touches(
    browser: Browser, address: str, width: int, *, by_keys: bool
) -> None:
    with visit(browser, width) as (_, page, heard):
        person = first_page(page, address, by_keys=by_keys)
        person.paste(OWN_TEXT)
        assert person.answer_all() == 3
        person.more("Bench card to print")
        page.wait_for_url("**/card.html")
        paper = printed(page)
        assert said_nothing(heard)
    assert person.touches <= 12, person.steps
    assert "Aunt Ilse's lemon cake" in paper
    for word in ("caster sugar", "130", "170", "95"):
        assert word in paper


@pytest.mark.parametrize(("width", "by_keys"), WAYS)
def test_a_whole_bake_from_paste_to_card_with_a_slip_on_the_way(
    browser: Browser, address: str, width: int, *, by_keys: bool
) -> None:
    with visit(browser, width) as (_, page, heard):
        person = first_page(page, address, by_keys=by_keys)
        person.paste(OWN_TEXT)
        person.answer_all()
        sized(person)
        weighed_with_a_slip(person)
        baked(person)
        written_down(person)
        person.tap("link", "Formulas")
        person.tap("link", "Aunt Ilse's lemon cake")
        person.more("Bench card to print")
        page.wait_for_url("**/card.html")
        assert "Aunt Ilse's lemon cake" in printed(page)
        assert said_nothing(heard)


def sized(person: Person) -> None:
    """The same in another tin: eggs stay whole."""
    person.write("Tin", "round 24 x 7 cm")
    person.tap("button", "Size it")
    person.page.locator(".option").first.wait_for()
    assert "7 eggs" in person.page.locator("#sizes").inner_text()
    person.tap("button", "Weigh this size")
    person.page.wait_for_url("**/bench/*7-eggs")


def weighed_with_a_slip(person: Person) -> None:
    """Six grams too many of the second flour, a way out chosen, then all the rest."""
    person.at_the_bench()
    person.weigh_row()
    person.weigh_row()
    person.slip(6)
    ways = person.page.locator(".ways .out")
    assert ways.count() >= 2
    person.touch(ways.first, ways.first.locator(".head span").first.inner_text())
    person.page.locator("[data-x=slip-text]").wait_for(state="hidden")
    person.weigh_all()
    person.all_kept()


def baked(person: Person) -> None:
    """From the last whisk stroke until it is out."""
    page = person.page
    person.tap("link", "The clock")
    page.wait_for_url("**/clock")
    person.at_the_bench()
    person.tap("button", "Whisk is out")
    person.tap("button", "In the oven")
    person.tap("button", "It is out")


def written_down(person: Person) -> None:
    """The trial the bake ends as."""
    page = person.page
    page.wait_for_url("**/end")
    person.write("Height in the middle", "46")
    person.write("Core when it came out", "95")
    person.tap("button", "Keep it")
    page.wait_for_url("**/trials/*")
    assert "Aunt Ilse's lemon cake" in page.locator("h1").inner_text()
