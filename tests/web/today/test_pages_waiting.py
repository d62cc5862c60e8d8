"""What waits on a phone is said on the first page, with the way to send it."""

from playwright.sync_api import Page, expect

from tests.browser import browser, page
from tests.web.bench.conftest import Served, served

__all__ = ["browser", "page", "served"]


def test_what_waits_of_a_bench_is_said_until_it_is_in_the_book(page: Page, served: Served) -> None:
    page.goto(served.address)
    expect(page.locator("[data-waiting]")).to_be_hidden()
    page.evaluate(
        """() => {
            const { book } = document.documentElement.dataset;
            localStorage.setItem(`krume bench ${book} F2`, JSON.stringify([
                { id: "a", kind: "tare", position: 0 }, { id: "b", kind: "in", position: 1 }]));
        }"""
    )
    page.reload()
    expect(page.locator("[data-waiting]")).to_contain_text("2 done at the bench of F2 wait")
    page.get_by_role("link", name="Open the bench of F2").click()
    page.wait_for_selector('.bench[data-ready="yes"]')
    page.wait_for_function("() => localStorage.length === 0")
    page.goto(served.address)
    expect(page.locator("[data-waiting]")).to_be_hidden()
