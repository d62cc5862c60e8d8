"""A bake drawn: curves, doubt as hatch, the rule that came last, in classes and no colours."""

import re
from dataclasses import replace

import pytest

from krume.base import Interval
from krume.publish import BakeCourse, bake_drawing, bake_sentence
from tests.build.studio import tree

COURSE = BakeCourse(
    (0.0, 10.0, 20.0, 30.0, 40.0),
    (21.0, 40.0, 70.0, 95.0, 99.0),
    (30.0, 90.0, 120.0, 140.0, 150.0),
    likely_min=30.0,
    core_wanted_c=95.0,
    last="core",
)
SPAN = Interval(24.0, 30.0, 42.0)


@pytest.mark.parametrize("narrow", [False, True])
@pytest.mark.parametrize("minutes", [None, SPAN])
def test_it_is_one_drawing_with_a_name_and_no_colour(
    narrow: bool, minutes: Interval | None
) -> None:
    drawing = bake_drawing(replace(COURSE, minutes=minutes), ident="a", narrow=narrow)
    assert tree(drawing).tag.endswith("svg")
    assert 'role="img" aria-labelledby="a-name a-what"' in drawing
    assert not re.search(r"#[0-9a-fA-F]{3,6}\b|style=", drawing.replace("url(#a-hatch)", ""))


def test_the_doubt_is_hatch_between_two_hairlines_and_two_wedges_joined() -> None:
    plain = bake_drawing(COURSE, ident="a")
    wide = bake_drawing(replace(COURSE, minutes=SPAN), ident="a")
    assert "url(#a-hatch)" not in plain
    assert plain.count('class="d-ink"') == 1
    assert wide.count("url(#a-hatch)") == 1
    assert wide.count('class="d-ink"') == 2


def test_the_fast_curve_is_at_the_core_at_the_low_end() -> None:
    drawing = bake_drawing(replace(COURSE, minutes=SPAN), ident="a")
    hatch = re.search(r'url\(#a-hatch\)" d="M([\d. -]+)z"', drawing)
    assert hatch is not None
    numbers = [float(n) for n in hatch[1].split()]
    points = list(zip(numbers[::2], numbers[1::2], strict=True))
    low, high = points[3], points[4]
    assert low[1] == high[1]
    assert (high[0] - 44.0) / (low[0] - 44.0) == pytest.approx(42.0 / 24.0, rel=1e-3)


def test_the_sentence_says_minutes_and_rule() -> None:
    said = bake_sentence(replace(COURSE, minutes=SPAN))
    assert "done in 24 to 42 minutes, most likely 30" in said
    assert said.endswith("core came last.")


RULES = (("core", 30.0), ("set", 28.0), ("golden", 22.0))


def test_each_rule_is_marked_where_it_is_met_and_named_but_for_the_last() -> None:
    drawing = bake_drawing(replace(COURSE, rules=RULES), ident="a")
    assert drawing.count('class="d-mark"') == 3
    assert "set at 28</text>" in drawing
    assert "golden at 22</text>" in drawing
    assert "core at 30</text>" not in drawing
    assert "set met at 28 min." in drawing


def test_a_curve_that_runs_on_ends_at_the_edge_of_the_drawing() -> None:
    long = replace(COURSE, time_min=(0.0, 10.0, 20.0, 30.0, 400.0))
    drawing = bake_drawing(long, ident="a")
    numbers = [float(x) for x in re.findall(r"[ML]([\d.]+) ", drawing)]
    assert max(numbers) <= 860.0
