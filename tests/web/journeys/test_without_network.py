"""The connection goes in the middle of a weighing: the hand does not wait, and nothing is lost."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from krume.usecases import Asked, bench_of, load_demo
from tests.web.browsing import served, visit
from tests.web.journeys.person import Person


@pytest.fixture
def book(tmp_path: Path) -> Path:
    load_demo(Asked(book=tmp_path / "book"))
    return tmp_path / "book"


@pytest.mark.parametrize("width", [360, 1280])
@pytest.mark.parametrize("by_keys", [False, True], ids=["by hand", "by keys"])
def test_a_slip_is_answered_and_all_is_weighed_while_the_network_is_gone(
    browser: Browser, book: Path, width: int, *, by_keys: bool
) -> None:
    with served(book) as address, visit(browser, width) as (context, page, heard):
        person = Person(page, by_keys=by_keys)
        page.goto(f"{address}/bench/F2")
        person.at_the_bench()
        person.weigh_row()
        person.weigh_row()
        person.all_kept()
        context.set_offline(True)
        person.slip(8)
        person.touch(page.locator(".ways .out").first, "the first way out")
        person.weigh_all()
        total = page.locator("[data-x=total]").inner_text()
        assert bench_of("F2", Asked(book=book)).found.now is not None
        context.set_offline(False)
        person.all_kept()
        page.reload()
        person.at_the_bench()
        assert person.panel() == "done"
        assert page.locator("[data-x=total]").inner_text() == total
        assert [line for line in heard.lines if "ERR_INTERNET_DISCONNECTED" not in line] == []
    bench = bench_of("F2", Asked(book=book))
    assert bench.found.now is None
    assert [step.kind for step in bench.steps if not step.is_undone].count("choose") == 1


def test_a_weighing_goes_on_after_the_page_is_closed_without_network(
    browser: Browser, book: Path
) -> None:
    with served(book) as address, visit(browser) as (context, page, _):
        person = Person(page)
        page.goto(f"{address}/bench/F2")
        person.at_the_bench()
        person.weigh_row()
        person.all_kept()
        context.set_offline(True)
        person.weigh_row()
        person.weigh_row()
        page.close()
        context.set_offline(False)
        again = Person(context.new_page())
        again.page.goto(f"{address}/bench/F2")
        again.at_the_bench()
        again.all_kept()
        found = bench_of("F2", Asked(book=book)).found
        assert [spot.got_g for spot in found.spots if spot.got_g] == [40.0, 20.0]
