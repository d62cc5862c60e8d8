"""A bake on a strip: its three minutes, its sentence, one ink."""

import re
from dataclasses import replace

import pytest

from krume.base import Interval
from krume.publish import ModelBake, bake_strip
from tests.build.studio import tree

BAKE = ModelBake(
    Interval(25.0, 33.0, 43.0),
    32.6,
    "core",
    95.0,
    (0.0, 10.0, 20.0, 40.0),
    (21.0, 33.0, 60.0, 99.0),
)


def test_the_sentence_says_the_three_minutes_the_rule_and_the_core() -> None:
    assert BAKE.text == (
        "By the bake model: check from 25, most likely 33, latest 43 min; core last, at 95 °C."
    )
    assert replace(BAKE, last="colour").text.endswith("colour last, core 95 °C.")


def test_it_is_one_drawing_in_one_ink_that_stands_by_itself() -> None:
    drawing = bake_strip(BAKE)
    assert tree(drawing).tag.endswith("svg")
    assert BAKE.text in drawing
    assert not re.search(r"#[0-9a-f]{3,6}\b|class=|style=", drawing)


def test_the_minutes_stand_under_their_places() -> None:
    drawing = bake_strip(BAKE)
    at = {
        words: float(x)
        for x, words in re.findall(r'<text x="([\d.]+)" y="84.0"[^>]*>([^<]+)</text>', drawing)
    }
    assert list(at) == ["check from 25", "33", "latest 43 min"]
    low, likely, high = at.values()
    assert (likely - 6) / (low - 6) == pytest.approx(32.6 / 25.0, rel=1e-3)
    assert (high - 6) / (low - 6) == pytest.approx(43.0 / 25.0, rel=1e-3)


def test_without_a_curve_there_is_no_strip() -> None:
    assert bake_strip(replace(BAKE, time_min=(), temp_c=())) == ""


def test_a_long_bake_keeps_its_ticks_apart() -> None:
    long = replace(BAKE, minutes=Interval(70.0, 90.0, 130.0), likely_min=90.0)
    ticks = re.findall(r"M[\d.]+ 62v\d", bake_strip(long))
    assert len(ticks) < 40
