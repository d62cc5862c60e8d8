"""Every page there is, in a real browser: small, wide, light, dark, by keyboard, on paper."""

import io
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pypdf
import pytest
from playwright.sync_api import Browser, Page
from starlette.testclient import TestClient

from krume.usecases import Asked, load_demo
from krume.web import application
from tests.web.browsing import Heard, served, violations, visit
from tests.web.conftest import OWN
from tests.web.walking import Walk, patterns

COVERS = ("__init__",)

PHONE, DESK, SMALLEST = 360, 1280, 320
COLOURS = ("color-contrast", "link-in-text-block")
MINE = "Mine\nTin: round 20 x 7 cm\n\n100 g white rice flour\n5 eggs\n120 g caster sugar\n"
NO_PAGES = (
    "a way on",
    "application/",
    "image/",
    "text/plain",
    "text/css",
    "text/javascript",
    "text/calendar",
    "text/csv",
)

# What a hand on the keys can come to. Of a group of radio buttons the keys stop at one.
MARK = """() => {
  const seen = (node) => node.checkVisibility({ visibilityProperty: true });
  const stops =
    "a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex='0']";
  const groups = new Set();
  const all = [...document.querySelectorAll(stops)].filter((node) => {
    if (!seen(node) || node.disabled || node.tabIndex < 0) return false;
    if (node.type !== "radio") return true;
    const is_new = !groups.has(node.name);
    groups.add(node.name);
    return is_new;
  });
  window.met = new Set();
  window.blind = [];
  const key = (node) => node.type === "radio" ? `radio ${node.name}` : all.indexOf(node);
  window.wanted = all.map((node) => [key(node), node.outerHTML.slice(0, 120)]);
  addEventListener("focusin", ({ target }) => {
    window.met.add(key(target));
    const box = target.getBoundingClientRect();
    const ring = [target, target.parentElement].some((node) => {
      const style = getComputedStyle(node);
      return style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
    });
    if (!ring || !box.width || !box.height) window.blind.push(target.outerHTML.slice(0, 120));
  });
  return all.length;
}"""
MISSED = "() => window.wanted.filter(([key]) => !window.met.has(key)).map(([, html]) => html)"
MOVING = """() => [...document.querySelectorAll("*")].filter((node) => {
  const style = getComputedStyle(node);
  const lasts = (text) => text.split(",").some((each) => parseFloat(each) > 0);
  const turns = style.animationName !== "none" && lasts(style.animationDuration);
  return turns || lasts(style.transitionDuration);
}).map((node) => node.outerHTML.slice(0, 120))"""
WIDE = """(width) => [...document.querySelectorAll("body *")].filter((node) => {
  if (node.closest("svg, .table-wrap, .off-screen")) return false;
  return node.getBoundingClientRect().right > width + 1 && node.checkVisibility();
}).map((node) => node.outerHTML.slice(0, 120))"""


@dataclass(frozen=True, slots=True)
class Studio:
    """A book in use, its pages, and one window on it."""

    address: str
    walk: Walk
    page: Page
    heard: Heard

    def open(self, path: str, width: int) -> Page:
        """A page at a width, by day, with motion as it comes."""
        self.page.emulate_media(
            media="screen", color_scheme="light", reduced_motion="no-preference"
        )
        self.page.set_viewport_size({"width": width, "height": 740})
        self.heard.lines.clear()
        answer = self.page.goto(self.address + path, wait_until="load")
        assert answer is not None
        assert answer.ok
        return self.page


IN_USE = (
    *("/formulas/mine", "/bench/F1", "/bench/F3", "/trials/ended", "/teach/mine"),
    *("/slip/F2?g8=40&g9=26", "/formulas/F2?tin=round+24+x+7+cm", "/tortes/T3?h6=15"),
    *("/tortes/T3/label?panel=no", "/formulas/F4/label?panel=no", "/orders/102/label?panel=no"),
)
"""Pages in the states that use brings: a question, a weighing that goes on, a slip, a trial."""


def use_a_little(client: TestClient) -> None:
    """A day's work, so that each page has something to show."""
    client.post("/formulas", data={"text": MINE, "name": "mine"})
    for name, shows in (("F1", "30"), ("F3", "400")):
        client.post(f"/bench/{name}/say", data=_said(name, kind="tare", position="0"))
        client.post(f"/bench/{name}/say", data=_said(name, kind="got", position="1", shows=shows))
    ended = {"key": "weighing of F2", "trial": "ended", "centre": "48", "core": "95"}
    client.post("/bench/F2/end", data={**ended, "word": "good"})
    client.post("/pantry/cleaning/new", data={"date": "2027-06-10", "cleaned": "yes"})
    client.post("/room", data={"source": "sieve", "state": "own"})
    client.post("/ovens/readings/new", data={"dial_c": "160", "read_c": "148; 152; 145"})
    client.post("/ovens/bakes/new", data={"formula": "F1", "dial_c": "182", "done_min": "38"})
    client.post("/pantry/packs/new", data={"item": "caster sugar", "pack_g": "1000"})
    client.post("/trace/of/101", data={"made": "2027-06-10"})
    client.post("/orders/101/sheets")


def _said(name: str, **said: str) -> dict[str, str]:
    return {"key": f"weighing of {name}", "id": f"{name} {said['position']}", **said}


@pytest.fixture(scope="module")
def studio(browser: Browser, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Studio]:
    """The demo studio in use, walked through once, and open in one window."""
    book = tmp_path_factory.mktemp("every") / "book"
    load_demo(Asked(book=book))
    with TestClient(application(book), base_url=OWN, raise_server_exceptions=False) as client:
        use_a_little(client)
        walk = Walk().go(client, IN_USE)
    with served(book) as address, visit(browser) as (_, page, heard):
        yield Studio(address, walk, page, heard)
    assert heard.outside == []


def pages_of(studio: Studio, pattern: str) -> list[str]:
    """Addresses of a route that are pages; a route must answer with something."""
    kind = studio.walk.kinds.get(pattern)
    assert kind is not None, f"nothing leads to {pattern}"
    assert pattern in studio.walk.by_pattern or kind.startswith(NO_PAGES)
    return studio.walk.by_pattern.get(pattern, [])


def test_no_page_fails_and_no_link_leads_nowhere(studio: Studio) -> None:
    assert studio.walk.faults == []
    assert studio.walk.dead == []


@pytest.mark.parametrize("pattern", patterns())
def test_no_rule_of_access_is_broken_and_nothing_is_said_on_the_console(
    studio: Studio, pattern: str
) -> None:
    found: dict[str, list[str]] = {}
    for path in pages_of(studio, pattern):
        for width in (PHONE, DESK):
            page = studio.open(path, width)
            # A colour that is still on its way to the other scheme is no colour of the page.
            page.emulate_media(reduced_motion="reduce")
            found[f"{path} at {width}"] = violations(page)
            page.emulate_media(color_scheme="dark")
            found[f"{path} at {width}, dark"] = violations(page, COLOURS)
            found[f"{path} at {width}, console"] = list(studio.heard.lines)
    assert {place: said for place, said in found.items() if said} == {}


@pytest.mark.parametrize("pattern", patterns())
def test_nothing_is_cut_off_on_the_smallest_phone(studio: Studio, pattern: str) -> None:
    for path in pages_of(studio, pattern):
        page = studio.open(path, SMALLEST)
        assert page.evaluate(WIDE, SMALLEST) == [], path
        assert page.evaluate("document.documentElement.scrollWidth") <= SMALLEST, path


@pytest.mark.parametrize("pattern", patterns())
def test_the_keys_come_to_everything_and_it_shows_where_they_are(
    studio: Studio, pattern: str
) -> None:
    for path in pages_of(studio, pattern)[:1]:
        page = studio.open(path, DESK)
        stops = page.evaluate(MARK) + 2
        # A busy machine may give a first key to a window that is not yet in front: a second round.
        for pressed in range(2 * stops):
            if pressed == stops and page.evaluate(MISSED) == []:
                break
            page.keyboard.press("Tab")
        assert page.evaluate(MISSED) == [], path
        assert page.evaluate("() => window.blind") == [], path


@pytest.mark.parametrize("pattern", patterns())
def test_nothing_moves_for_a_person_who_asked_for_stillness(studio: Studio, pattern: str) -> None:
    for path in pages_of(studio, pattern)[:1]:
        page = studio.open(path, PHONE)
        page.emulate_media(reduced_motion="reduce")
        assert page.evaluate(MOVING) == [], path


def test_a_formula_goes_on_paper_without_the_ways_around_it(studio: Studio) -> None:
    page = studio.open("/formulas/F2", DESK)
    paper = pypdf.PdfReader(io.BytesIO(page.pdf(format="A4", print_background=True)))
    text = " ".join(sheet.extract_text() for sheet in paper.pages)
    for word in ("white rice flour", "130 g caster sugar", "Balance"):
        assert word in " ".join(text.split())
    page.emulate_media(media="print")
    hidden = page.locator("nav, form button, .doings a")
    assert [each for each in hidden.all() if each.is_visible()] == []


def test_a_page_that_is_not_there_is_a_page_too(studio: Studio) -> None:
    studio.heard.lines.clear()
    answer = studio.page.goto(f"{studio.address}/formulas/nobody", wait_until="load")
    assert answer is not None
    assert answer.status == 404
    assert violations(studio.page) == []
    assert studio.heard.lines == []


def test_the_tests_see_what_is_wrong(browser: Browser, tmp_path: Path) -> None:
    wrong = tmp_path / "wrong.html"
    wrong.write_text(
        "<!doctype html><html lang=en><title>a</title><main><h1>a</h1>"
        "<input style='outline:3px solid'>"
        "<p style='width:90rem;transition:color 1s'>wide</p><button tabindex=-1>a</button>"
        "<a href='#' style='outline:none'>a</a><script>console.log('said')</script></main>"
    )
    with visit(browser, SMALLEST) as (_, page, heard):
        page.goto(wrong.as_uri())
        assert violations(page) != []
        assert heard.lines == ["said"]
        assert page.evaluate(WIDE, SMALLEST) != []
        assert page.evaluate(MOVING) != []
        assert page.evaluate(MARK) == 2
        assert len(page.evaluate(MISSED)) == 2
        for _ in range(3):
            page.keyboard.press("Tab")
        assert page.evaluate(MISSED) == []
        assert len(page.evaluate("() => window.blind")) == 1
