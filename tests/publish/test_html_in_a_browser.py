"""Pages of sheets in a real browser: readable on a phone, accessible, alone, and printable."""

import io
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from playwright.sync_api import Browser
from pypdf import PdfReader

from krume.publish import IndexPage, SheetFile, card_html, index_html, label_html, plan_html
from tests.design.studio import F1
from tests.publish.bench import HOLD, IMPRINT, card, named
from tests.publish.labels import with_panel
from tests.publish.plans import sheet

LONG = "Kastanien-Buchweizen-Haselnuss-Biskuitboden" * 2
PAGES = {
    "card": card_html(card(F1, dial_c=182)),
    "held": card_html(card(named(F1, LONG), hold=HOLD)),
    "hebrew": card_html(card(named(F1, "עוגת אגוזי לוז"))),
    "torte": plan_html(sheet("T3", hold=HOLD)),
    "roll": plan_html(sheet("T2")),
    "label": label_html(with_panel()),
    "index": index_html(
        IndexPage(
            "Order 101",
            ("4 bench cards.",),
            (HOLD,),
            (SheetFile("F1.pdf", "bench card, A5"), SheetFile("F1.html", "the same as a page")),
            ("Timetable: not part of this version yet.",),
            IMPRINT,
        )
    ),
}


@pytest.fixture
def address(tmp_path: Path, request: pytest.FixtureRequest) -> str:
    path = tmp_path / "sheet.html"
    path.write_text(PAGES[request.param], encoding="utf-8")
    return path.as_uri()


@pytest.mark.parametrize("address", PAGES, indirect=True)
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1280])
def test_a_page_is_accessible_fits_and_asks_for_nothing(
    browser: Browser, address: str, scheme: str, width: int
) -> None:
    context = browser.new_context(
        viewport={"width": width, "height": 800},
        color_scheme=scheme,  # type: ignore[arg-type]
    )
    page = context.new_page()
    asked: list[str] = []
    said: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: said.append(message.text))
    page.goto(address)
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    # The policy allows one style by its digest; a wrong digest would leave the page bare.
    assert page.evaluate("[...document.fonts].some(face => face.status === 'loaded')")
    assert [url for url in asked if not url.startswith(("file:", "data:"))] == []
    assert said == []
    context.close()


@pytest.mark.parametrize("address", ["card"], indirect=True)
def test_the_number_to_stop_at_is_the_largest_in_its_row(browser: Browser, address: str) -> None:
    page = browser.new_page(viewport={"width": 360, "height": 800})
    page.goto(address)
    sizes = page.evaluate(
        "[...document.querySelectorAll('tbody tr:nth-child(2) :is(td, th)')]"
        ".slice(0, 4).map(cell => parseFloat(getComputedStyle(cell).fontSize))"
    )
    assert max(sizes) == sizes[3]
    assert sizes[3] >= 1.5 * sizes[1]
    page.close()


@pytest.mark.parametrize("address", ["card", "held"], indirect=True)
def test_a_page_prints_on_a5_with_every_row_and_no_empty_sheet(
    browser: Browser, address: str
) -> None:
    page = browser.new_page()
    page.goto(address)
    reader = PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True)))
    texts = [sheet.extract_text().strip() for sheet in reader.pages]
    width_mm = float(reader.pages[0].mediabox.width) / 72 * 25.4
    assert width_mm == pytest.approx(148, abs=0.5)
    assert all(texts)
    assert "caster sugar, for the whites" in " ".join(" ".join(texts).split())
    page.close()
