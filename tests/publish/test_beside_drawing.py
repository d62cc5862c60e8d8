"""Two tins on one line of minutes: rings for the second, both ends of each interval."""

from dataclasses import replace

import pytest

from krume.base import Interval
from krume.publish import NamedCourse, beside_drawing
from tests.build.studio import tree
from tests.publish.test_bake_drawing import COURSE, SPAN

OTHER = replace(COURSE, likely_min=22.0, last="colour")
SAID = "The dark tin is ready 3 to 12 min sooner."


def _drawn(minutes: Interval | None, *, narrow: bool = False) -> str:
    own = NamedCourse("round 20 x 7 cm", replace(COURSE, minutes=minutes))
    span = None if minutes is None else Interval(18.0, 22.0, 29.0)
    other = NamedCourse("dark round 20 cm", replace(OTHER, minutes=span), is_pearled=True)
    return beside_drawing(own, other, SAID, ident="b", narrow=narrow)


@pytest.mark.parametrize("narrow", [False, True])
def test_the_difference_is_in_its_name_and_both_bakes_in_its_words(narrow: bool) -> None:
    drawing = _drawn(SPAN, narrow=narrow)
    assert tree(drawing).tag.endswith("svg")
    assert SAID in drawing
    assert "dark round 20 cm: 18 to 29 minutes, most likely 22 minutes, colour last." in drawing


def test_the_second_tins_curves_carry_rings_and_the_firsts_none() -> None:
    # Four on core and top each, every five minutes, and one before its name.
    assert _drawn(None).count("<circle") == 2 * 4 + 1


def test_intervals_stand_one_above_the_other_and_single_minutes_on_the_line() -> None:
    assert _drawn(SPAN).count('class="d-ink"') == 4
    assert _drawn(None).count('class="d-ink"') == 2


def test_a_long_name_is_cut_on_a_phone() -> None:
    own = NamedCourse("round 20 x 7 cm", COURSE)
    other = NamedCourse("silicone loaf 21.5 x 11.5 x 7 cm", OTHER, is_pearled=True)
    assert "22 min, silicone loaf" in beside_drawing(own, other, "", ident="b", narrow=True)
    assert "…</text>" in beside_drawing(own, other, "", ident="b", narrow=True)
