"""The timetable on paper and page: lengthwise, tagged, drawn to the clock, words as text."""

import io
import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from datetime import datetime, timedelta
from itertools import pairwise

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from hypothesis import given
from hypothesis import strategies as st
from playwright.sync_api import Browser
from pypdf import PdfReader

from krume.base import InputError
from krume.publish import (
    Hold,
    ShopRow,
    missing_timetable_signs,
    timetable_dict,
    timetable_html,
    timetable_pdf,
)
from krume.publish.timetable_drawing import day_drawing, day_sentence, merged, spread
from tests.publish.days import DAY, NOTE, START, timetable

COVERS = ("timetable_drawing", "timetable_print")
SVG = "{http://www.w3.org/2000/svg}"


def text_of(reader: PdfReader) -> str:
    return " ".join("\n".join(page.extract_text() for page in reader.pages).split())


@pytest.mark.parametrize(("paper", "wide", "high"), [("a4", 297, 210), ("letter", 279.4, 215.9)])
def test_a_timetable_lies_lengthwise_a_day_a_page(paper: str, wide: float, high: float) -> None:
    reader = PdfReader(io.BytesIO(timetable_pdf(timetable(), paper)))
    assert len(reader.pages) == 2
    box = reader.pages[0].mediabox
    assert float(box.width) / 72 * 25.4 == pytest.approx(wide, abs=0.1)
    assert float(box.height) / 72 * 25.4 == pytest.approx(high, abs=0.1)


def test_words_of_the_drawing_and_of_the_list_are_text() -> None:
    text = text_of(PdfReader(io.BytesIO(timetable_pdf(timetable()))))
    for words in (
        "foam and fold: 2 F1", "2 F1, load 1", "caster sugar", "the mill", "first start 8:00",
        "Tightest: oven.", "3 whites", NOTE, "krume 0.1.0", "Tonight 12 of 8 places",
    ):  # fmt: skip
        assert words in text, words


def test_the_same_words_are_the_same_bytes() -> None:
    assert timetable_pdf(timetable()) == timetable_pdf(timetable())


def test_a_held_order_carries_its_hold() -> None:
    hold = Hold("hazelnut lot L-008 may contain wheat.", "A valid test.")
    text = text_of(PdfReader(io.BytesIO(timetable_pdf(timetable(hold=hold)))))
    assert "HELD: hazelnut lot L-008" in text and "A valid test." in text
    assert "HELD:" in timetable_html(timetable(hold=hold))


def test_another_paper_is_refused() -> None:
    with pytest.raises(InputError):
        timetable_pdf(timetable(), "a5")


def test_nothing_typed_is_markup() -> None:
    made = replace(timetable(title="<b>#panic() & co</b>"), days=(DAY,))
    assert "<b>#panic" not in timetable_html(made)
    assert "#panic() & co" in text_of(PdfReader(io.BytesIO(timetable_pdf(made))))
    hostile = replace(DAY.tasks[0], words="</svg><script>")
    drawn = day_drawing(replace(DAY, tasks=(hostile, *DAY.tasks[1:])), ident="d")
    ET.fromstring(drawn)  # noqa: S314
    assert "<script>" not in drawn


def test_a_sign_no_font_has_is_named() -> None:
    groups = timetable().groups
    row = ShopRow("1", "flour 🥜", "F1")
    (notice,) = missing_timetable_signs(
        replace(timetable(), groups=(replace(groups[0], rows=(row,)),))
    )
    assert "🥜" in notice.text
    assert missing_timetable_signs(timetable()) == ()


def rects(day_minutes: int) -> dict[str, list[tuple[float, float]]]:
    root = ET.fromstring(day_drawing(DAY, ident="d", high_mm=float(day_minutes)))  # noqa: S314
    found: dict[str, list[tuple[float, float]]] = {}
    for rect in root.iter(f"{SVG}rect"):
        kind = rect.get("class") or ""
        found.setdefault(kind, []).append((float(rect.get("y", 0)), float(rect.get("height", 0))))
    return found


def test_lengths_in_the_drawing_are_minutes() -> None:
    # 15-minute steps from 8:00 to 10:50 make 180 minutes; 21 mm are head and foot.
    solid = rects(201)["d-ink d-gap"]
    assert solid[0] == pytest.approx((8 + 20, 16))
    assert solid[1] == pytest.approx((8 + 36, 2))


def test_solid_hatched_and_open_are_told_apart_without_colour() -> None:
    drawn = day_drawing(DAY, ident="d")
    assert 'fill="url(#d-h)"' in drawn and 'fill="none"' in drawn
    assert re.search(r'class="d-ink d-gap" fill="#1e1830" [^>]*x="15\.00"', drawn)


def test_places_that_are_not_there_are_crossed() -> None:
    drawn = day_drawing(DAY, ident="d")
    assert drawn.count('class="d-stop"') == 4


def test_the_drawing_has_a_sentence() -> None:
    sentence = day_sentence(DAY)
    assert sentence.startswith("Thursday 10 June in three lanes from 8:00 to 10:50: 5 pieces")
    assert "1 oven loads" in sentence


def test_tasks_of_one_kind_without_a_pause_are_one() -> None:
    wraps = [task for task in DAY.tasks if task.words.startswith("wrap")]
    (one,) = merged(wraps)
    assert one.words == "wrap: T1 1–2"
    assert (one.start, one.end) == (wraps[0].start, wraps[1].end)
    apart = [wraps[0], replace(wraps[1], start=wraps[1].start + timedelta(minutes=1))]
    assert len(merged(apart)) == 2


@given(st.lists(st.floats(0, 100), max_size=20).map(sorted))
def test_labels_never_overlap_and_stay_in_the_lane(middles: list[float]) -> None:
    spots = spread(middles, 4.0, low=0.0, high=100.0)
    row = min(4.0, 100.0 / max(1, len(middles) - 1))
    assert all(b - a >= row - 1e-6 for a, b in pairwise(spots))
    assert all(-1e-6 <= spot <= 100 + 1e-6 for spot in spots)


def test_the_json_holds_the_days() -> None:
    found = timetable_dict(timetable())
    days = found["days"]
    assert isinstance(days, list | tuple) and len(days) == 2
    assert isinstance(START, datetime)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1280])
def test_the_page_is_accessible_and_fits(
    browser: Browser, tmp_path: object, scheme: str, width: int
) -> None:
    from pathlib import Path

    path = Path(str(tmp_path)) / "day.html"
    path.write_text(timetable_html(timetable()), encoding="utf-8")
    context = browser.new_context(
        viewport={"width": width, "height": 800},
        color_scheme=scheme,  # type: ignore[arg-type]
    )
    page = context.new_page()
    page.goto(path.as_uri())
    found = Axe().run(page)
    assert found.violations_count == 0, found.generate_report()
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    context.close()
