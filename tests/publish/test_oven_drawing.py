"""The oven's loads drawn: solid is in, hatched may come out, open is out, now is one wedge."""

import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from krume.publish import OvenBar, oven_drawing, oven_sentence
from tests.build.studio import tree

NOW = datetime(2027, 6, 10, 10, 23, tzinfo=UTC)


def _at(minutes: float) -> datetime:
    return NOW + timedelta(minutes=minutes)


IN = OvenBar(2, "F1", _at(-27), None, _at(7), _at(13))
OUT = OvenBar(1, "F1", _at(-70), _at(-36), _at(-40), _at(-30), "core 95")


def _number(drawing: str, pattern: str) -> float:
    found = re.search(pattern, drawing)
    assert found is not None
    return float(found[1])


def test_it_is_one_drawing_with_its_sentence_and_no_colour() -> None:
    drawing = oven_drawing((OUT, IN), NOW, ident="o")
    assert tree(drawing).get("aria-label") == oven_sentence((OUT, IN), NOW)
    assert not re.search(r"#[0-9a-fA-F]{3,6}\b|style=", drawing.replace("url(#o-hatch)", ""))


def test_the_sentence_tells_every_load() -> None:
    said = oven_sentence((OUT, IN), NOW)
    assert said.startswith("It is 10:23. Load 1, F1, came out at 9:47, core 95.")
    assert "Load 2, F1, is in since 9:56; first check 10:30, latest out 10:36." in said
    assert oven_sentence((), NOW).endswith("No load is in the oven.")
    bare = replace(IN, check_at=None, latest_at=None)
    assert "its minutes are not known" in oven_sentence((bare,), NOW)


def test_time_runs_down_and_lengths_are_minutes() -> None:
    drawing = oven_drawing((IN,), NOW, ident="o")
    step = _number(drawing, r'data-step="([\d.]+)"')
    top = _number(drawing, r'class="d-ink" x="[\d.]+" y="([\d.]+)"')
    solid = _number(
        drawing, r'class="d-ink" x="[\d.]+" y="[\d.]+" width="[\d.]+" height="([\d.]+)"'
    )
    hatched = _number(
        drawing, r'url\(#o-hatch\)" x="[\d.]+" y="[\d.]+" width="[\d.]+" height="([\d.]+)"'
    )
    now = _number(drawing, r'data-y="([\d.]+)"')
    assert solid == pytest.approx(34 * step, abs=0.2)
    assert hatched == pytest.approx(6 * step, abs=0.2)
    assert now - top == pytest.approx(27 * step, abs=0.2)


def test_a_load_without_minutes_is_solid_up_to_now_and_has_no_hatch() -> None:
    bare = replace(IN, check_at=None, latest_at=None)
    drawing = oven_drawing((bare,), NOW, ident="o")
    assert 'fill="url(#o-hatch)"' not in drawing
    assert "first check" not in drawing


def test_loads_that_are_in_together_stand_side_by_side_under_their_numbers() -> None:
    other = replace(IN, number=3, in_at=_at(-10), check_at=_at(30), latest_at=_at(45))
    drawing = oven_drawing((IN, other), NOW, ident="o")
    places = re.findall(r'<rect class="d-ink" x="([\d.]+)"', drawing)
    assert len(set(places)) == 2
    assert "check 2" in drawing
    assert "latest 3" in drawing


def test_a_load_after_another_takes_its_column() -> None:
    drawing = oven_drawing((OUT, IN), NOW, ident="o")
    assert _number(drawing, r'class="d-hair" stroke-width="2" d="M([\d.]+) ') == 71.0
    assert "out 9:47, core 95" in drawing


def test_what_was_typed_is_never_markup() -> None:
    drawing = oven_drawing((replace(IN, words="<b>F1"),), NOW, ident="o")
    assert "<b>" not in drawing
    tree(drawing)


def test_a_latest_out_far_ahead_still_stands_on_the_line() -> None:
    drawing = oven_drawing((replace(IN, latest_at=_at(90)),), NOW, ident="o")
    step = _number(drawing, r'data-step="([\d.]+)"')
    hatched = _number(drawing, r'url\(#o-hatch\)" [^>]*height="([\d.]+)"')
    assert hatched == pytest.approx(83 * step, abs=0.2)
