"""Two browsers at the same book: no edit is lost, and nobody's is overwritten unseen."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from krume.usecases import Asked, bench_of, load_demo, text_now, versions_of
from tests.web.browsing import served, visit
from tests.web.journeys.person import Person


@pytest.fixture
def book(tmp_path: Path) -> Path:
    load_demo(Asked(book=tmp_path / "book"))
    return tmp_path / "book"


@pytest.fixture
def both(browser: Browser, book: Path) -> Iterator[tuple[Page, Page, str]]:
    """Two people's windows, and the address of the book."""
    with served(book) as address, visit(browser, 1280) as one, visit(browser, 360) as other:
        yield one[1], other[1], address


def put(page: Page, old: str, new: str) -> None:
    box = page.get_by_label(re.compile("text|Paste", re.IGNORECASE)).first
    box.fill(box.input_value().replace(old, new))
    page.get_by_role("button", name="Keep it").first.click()


def test_the_second_to_edit_a_text_sees_both_and_both_stay(
    both: tuple[Page, Page, str], book: Path
) -> None:
    one, other, address = both
    for page in both[:2]:
        page.goto(f"{address}/formulas/F2/edit")
    put(one, "130 g caster", "131 g caster")
    one.wait_for_url("**/formulas/F2")
    put(other, "4 g vanilla", "5 g vanilla")
    expect(other.locator("main")).to_contain_text("131 g caster sugar")
    expect(other.locator("textarea")).to_have_value(re.compile("5 g vanilla"))
    other.get_by_role("button", name="Keep").first.click()
    other.wait_for_url("**/formulas/F2")
    texts = [version.text for version in versions_of("formula", "F2", Asked(book=book))]
    assert len(texts) == 3
    assert "131 g caster" in texts[1]
    assert "5 g vanilla" in texts[0]


def test_two_answers_at_once_are_kept_once(both: tuple[Page, Page, str], book: Path) -> None:
    one, other, address = both
    one.goto(f"{address}/formulas")
    one.get_by_label("Paste it, or type it").fill("Mine\n\n100 g sugar\n5 eggs\n")
    one.get_by_label("Short name").fill("mine")
    one.get_by_role("button", name="Read it").click()
    one.wait_for_url("**/formulas/mine")
    other.goto(f"{address}/formulas/mine")
    for page in (one, other):
        with page.expect_navigation():
            page.locator("form button.choice").first.click()
    now = text_now("formula", "mine", Asked(book=book))
    assert now.revision == 2
    assert now.text.count("eggs") == 1


def test_the_second_to_edit_a_row_is_told_what_the_first_kept(
    both: tuple[Page, Page, str],
) -> None:
    one, other, address = both
    one.goto(f"{address}/pantry/packs/new")
    one.get_by_label("What").first.fill("caster sugar")
    one.get_by_role("button", name="Keep").first.click()
    one.wait_for_url(re.compile("/pantry(/packs)?(#.*)?$"))
    one.goto(f"{address}/pantry/packs")
    row = one.locator("main table a[href^='/pantry/packs/']").first.get_attribute("href")
    for page in (one, other):
        page.goto(f"{address}{row}")
    for page, held in ((one, "400"), (other, "900")):
        page.get_by_label("In the house").first.fill(held)
        page.get_by_role("button", name="Keep").first.click()
    expect(other.locator("main")).to_contain_text("400")
    expect(other.get_by_label("In the house").first).to_have_value("900")
    one.goto(f"{address}{row}")
    expect(one.get_by_label("In the house").first).to_have_value("400")


def test_one_bowl_weighed_from_two_phones_is_one_bowl(
    both: tuple[Page, Page, str], book: Path
) -> None:
    people = [Person(page) for page in both[:2]]
    for person in people:
        person.page.goto(f"{both[2]}/bench/F1")
        person.at_the_bench()
    for _ in range(2):
        for person in people:
            person.page.locator("[data-panel]:not([hidden]) .strip.in").first.click()
    for person in people:
        person.all_kept()
    found = bench_of("F1", Asked(book=book)).found
    for spot in found.spots:
        if spot.got_g is not None and spot.row.add_g is not None:
            assert spot.got_g == pytest.approx(spot.row.add_g, abs=0.05)
    assert sum(spot.held_g for spot in found.spots) > 0
    states = [person.page.locator("[data-x=progress]") for person in people]
    for person in people:
        person.page.reload()
        person.at_the_bench()
    assert states[0].inner_text() == states[1].inner_text()
