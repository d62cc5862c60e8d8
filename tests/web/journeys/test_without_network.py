"""The connection goes in the middle of a weighing: the hand does not wait, and nothing is lost."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from krume.usecases import Asked, bench_of, load_demo, trial_rows
from tests.web.browsing import cut, joined, served, visit
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
        cut(context)
        person.slip(8)
        person.touch(page.locator(".ways .out").first, "the first way out")
        person.weigh_all()
        total = page.locator("[data-x=total]").inner_text()
        assert bench_of("F2", Asked(book=book)).found.now is not None
        joined(context)
        person.all_kept()
        page.reload()
        person.at_the_bench()
        assert person.panel() == "done"
        assert page.locator("[data-x=total]").inner_text() == total
        assert [line for line in heard.lines if "Failed to load resource" not in line] == []
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
        cut(context)
        person.weigh_row()
        person.weigh_row()
        page.close()
        joined(context)
        again = Person(context.new_page())
        again.page.goto(f"{address}/bench/F2")
        again.at_the_bench()
        again.all_kept()
        found = bench_of("F2", Asked(book=book)).found
        assert [spot.got_g for spot in found.spots if spot.got_g] == [40.0, 20.0]


def test_a_bake_goes_from_the_scale_to_its_trial_while_the_network_is_gone(
    browser: Browser, book: Path
) -> None:
    with served(book) as address, visit(browser) as (context, page, heard):
        person = Person(page)
        page.goto(f"{address}/bench/F2")
        person.at_the_bench()
        person.weigh_row()
        person.weigh_row()
        person.all_kept()
        person.kept_pages()
        cut(context)
        page.reload()
        person.at_the_bench()
        assert page.locator("[data-x=display]").inner_text() == "60"
        assert page.locator("[data-x=lost]").is_visible()
        person.weigh_all()
        cup_taken(person)
        timed(person)
        written_down(person)
        assert trial_rows(Asked(book=book)) == ()
        assert bench_of("F2", Asked(book=book)).found.now is not None
        assert bench_of("F2", Asked(book=book)).key != ""
        joined(context)
        page.wait_for_url("**/trials/*")
        assert "Tidewick vanilla sponge" in page.locator("h1").inner_text()
        person.all_kept()
        assert [line for line in heard.lines if "Failed to load resource" not in line] == []
    (row,) = trial_rows(Asked(book=book))
    assert (row.trial.centre_mm, row.trial.core_c, row.trial.sg) == (49.0, 95.0, 0.48)
    assert row.differs == ()


def cup_taken(person: Person) -> None:
    """The cup's sum and its sentence come from this device."""
    person.tap("link", "The cup")
    person.page.wait_for_url("**/cup")
    person.at_the_bench()
    for label, grams in (("Cup, empty", "100"), ("Cup full of water", "340")):
        person.write(label, grams)
    person.write("Cup with batter", "99")
    person.tap("button", "It shows that")
    assert "no more than the empty cup" in person.page.locator("#wrong-batter").inner_text()
    person.write("Cup with batter", "215,2")
    person.tap("button", "It shows that")
    said = person.page.locator("[data-x=said]").inner_text()
    assert said == "0.48 In its band: go on, fill the tin."


def timed(person: Person) -> None:
    """The clock starts, goes on through a reload, and stops."""
    page = person.page
    person.tap("link", "The clock")
    page.wait_for_url("**/clock")
    person.at_the_bench()
    person.tap("button", "Whisk is out")
    assert person.panel() == "foam"
    person.tap("button", "In the oven")
    page.reload()
    person.at_the_bench()
    assert person.panel() == "oven"
    person.tap("button", "It is out")
    page.wait_for_url("**/end")
    person.at_the_bench()


def written_down(person: Person) -> None:
    """What is no number is asked again at once; then the bake is kept on the phone."""
    page = person.page
    assert page.locator("#f-sg").input_value() == "0.48"
    person.write("Height in the middle", "49")
    person.write("Core when it came out", "955")
    person.tap("button", "Keep it")
    assert "A core in °C" in page.locator("#wrong-core").inner_text()
    person.write("Core when it came out", "95")
    person.tap("button", "Keep it")
    page.get_by_text("Written down on this phone.").wait_for()
    end = page.url
    page.goto(end.removesuffix("/end"))
    person.at_the_bench()
    assert person.panel() == "ended"
    page.goto(end)
    person.at_the_bench()


def test_a_bench_never_opened_here_says_what_still_works(browser: Browser, book: Path) -> None:
    with served(book) as address, visit(browser) as (context, page, _):
        person = Person(page)
        page.goto(f"{address}/bench/F2")
        person.at_the_bench()
        person.kept_pages()
        cut(context)
        page.goto(f"{address}/bench/F1")
        assert page.locator("h1").inner_text() == "Not on this phone"
        person.tap("link", "Weigh F2")
        page.wait_for_url("**/bench/F2")
        person.at_the_bench()
        joined(context)
        page.goto(f"{address}/bench/F1")
        person.at_the_bench()
        assert person.panel() == "tare"
