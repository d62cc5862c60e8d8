"""`krume.publish.moisture_drawing`: water over the hours, as a picture that also reads as words."""

import re
import xml.etree.ElementTree as ET
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval
from krume.publish import WaterCourse, WaterLine, moisture_drawing
from krume.publish.moisture_drawing import apart, moisture_sentence, tick_g

HOURS = (0.0, 12.0, 24.0, 48.0, 72.0)
COURSE = WaterCourse(
    HOURS,
    (
        WaterLine("sponge", (0.0, 20.0, 30.0, 45.0, 60.0), Interval(20.0, 60.0, 110.0)),
        WaterLine("set cream", (0.0, -20.0, -30.0, -45.0, -60.0), Interval(-110.0, -60.0, -20.0)),
        WaterLine("coat", (0.0, 0.1, 0.1, 0.2, 0.3), Interval(0.1, 0.3, 0.9)),
    ),
    Interval(9.0, 18.0, 22.0),
)


@pytest.mark.parametrize("narrow", [False, True])
def test_it_is_a_picture_with_a_name_and_a_description(narrow: bool) -> None:
    root = ET.fromstring(moisture_drawing(COURSE, ident="water-0", narrow=narrow))  # noqa: S314
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "water-0-name water-0-what"
    ids = {each.get("id") for each in root.iter() if each.get("id")}
    assert ids == {"water-0-name", "water-0-what"}


def test_the_sentence_says_who_takes_who_gives_and_who_stays() -> None:
    assert moisture_sentence(COURSE) == (
        "Water between the layers over 72 hours: sponge takes 60 g; set cream gives 60 g; "
        "coat stays as it is."
    )


def test_the_description_reads_each_line_by_days_with_its_doubt() -> None:
    text = moisture_drawing(COURSE, ident="w")
    described = re.search(r"<desc[^>]*>(.*?)</desc>", text)
    assert described is not None
    assert "sponge: 0 g after 0 h, 30 g after 24 h, 45 g after 48 h, 60 g after 72 h" in text
    assert "between 20 and 110 at the end" in described[1]


def _paths(narrow: bool) -> list[list[float]]:
    text = moisture_drawing(COURSE, ident="w", narrow=narrow)
    drawn = re.findall(r'stroke-width="2\.0"[^>]* d="M([\d. L]+)"', text)
    return [[float(n) for n in re.findall(r"[\d.]+", each)] for each in drawn if "L" in each]


@pytest.mark.parametrize("narrow", [False, True])
def test_what_is_taken_lies_above_what_is_given(narrow: bool) -> None:
    sponge, cream, coat = _paths(narrow)
    assert sponge[-1] < coat[-1] < cream[-1]
    assert sponge[1] == cream[1] == coat[1]


@pytest.mark.parametrize("narrow", [False, True])
def test_nothing_is_drawn_outside_the_picture(narrow: bool) -> None:
    text = moisture_drawing(COURSE, ident="w", narrow=narrow)
    box = re.search(r'viewBox="0 0 (\d+) (\d+)"', text)
    assert box is not None
    wide, high = float(box[1]), float(box[2])
    for x, y in re.findall(r'<text x="([\d.-]+)" y="([\d.-]+)"', text):
        assert 0 <= float(x) <= wide
        assert 0 < float(y) <= high


def test_where_it_is_best_at_once_no_bar_stands_on_the_hours() -> None:
    at_once = WaterCourse(COURSE.hours, COURSE.lines)
    assert "best from" in moisture_drawing(COURSE, ident="w")
    assert "best from" not in moisture_drawing(at_once, ident="w")


def test_a_word_with_signs_of_a_page_stays_a_word() -> None:
    lines = (WaterLine("<b>&", COURSE.lines[0].change_g, COURSE.lines[0].end_g),)
    text = moisture_drawing(WaterCourse(HOURS, lines), ident="w")
    ET.fromstring(text)  # noqa: S314
    assert "<b>" not in text


def test_lines_without_any_change_are_drawn_too() -> None:
    still = (WaterLine("sponge", (0.0,) * 5, Interval(0.0, 0.0, 0.0)),)
    assert "nan" not in moisture_drawing(WaterCourse(HOURS, still), ident="w")


@given(st.lists(st.floats(0.0, 300.0), min_size=1, max_size=6))
def test_words_stand_a_row_apart_and_above_the_last_line(wanted: list[float]) -> None:
    found = sorted(apart(wanted, 18.0, 300.0))
    assert all(after - before >= 18.0 - 1e-9 for before, after in pairwise(found))
    assert found[-1] <= 300.0


@given(st.floats(0.01, 1e5))
def test_a_span_is_parted_into_a_few_round_steps(span: float) -> None:
    assert 2 <= span / tick_g(span) <= 5.001


@pytest.mark.parametrize("narrow", [False, True])
def test_a_word_stands_within_two_rows_of_its_line(narrow: bool) -> None:
    text = moisture_drawing(COURSE, ident="w", narrow=narrow)
    for word, points in zip(("sponge", "set cream", "coat"), _paths(narrow), strict=True):
        place = re.search(rf'y="([\d.]+)"[^>]*class="d-text d-semi">{word}<', text)
        assert place is not None
        reached = [points[5]] if narrow else [points[-1]]
        assert min(abs(float(place[1]) - y) for y in reached) < 40


def test_on_a_phone_a_line_under_another_has_its_word_where_the_two_have_parted() -> None:
    lines = (
        WaterLine("sponge", (0.0, 20.0, 30.0, 60.0, 90.0), Interval(20.0, 90.0, 110.0)),
        WaterLine("jelly", (0.0, 10.0, 20.0, 25.0, 30.0), Interval(20.0, 30.0, 40.0)),
    )
    text = moisture_drawing(WaterCourse(HOURS, lines), ident="w", narrow=True)
    outer, inner = (
        float(re.search(rf'x="([\d.]+)"[^>]*class="d-text d-semi">{word}<', text)[1])  # type: ignore[index]
        for word in ("sponge", "jelly")
    )
    assert inner > outer


def test_hours_that_end_before_two_days_are_drawn_too() -> None:
    line = WaterLine("sponge", (0.0, 20.0, 30.0), Interval(20.0, 30.0, 50.0))
    jelly = WaterLine("jelly", (0.0, 10.0, 15.0), Interval(10.0, 15.0, 20.0))
    text = moisture_drawing(WaterCourse(HOURS[:3], (line, jelly)), ident="w", narrow=True)
    assert ">jelly<" in text
