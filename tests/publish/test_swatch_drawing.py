"""The colour of a top: its squares, its place on the path, and that a screen is no print."""

import re

from krume.bake import crust_steps
from krume.publish import SCREEN_NOTE, TopAt, swatch_drawing, swatch_sentence, top_colour
from tests.build.studio import tree

TOPS = (
    TopAt(25.0, 4.5, "check from"),
    TopAt(33.0, 10.0, "most likely"),
    TopAt(42.0, 18.0, "latest"),
)


def test_each_minute_has_a_square_in_its_colour() -> None:
    drawing = swatch_drawing(TOPS, wanted="golden", ident="t")
    assert tree(drawing).tag.endswith("svg")
    for top in TOPS:
        assert f'fill="{top_colour(top.delta_e)}" x=' in drawing


def test_what_is_baked_for_is_heavy_and_every_word_is_there() -> None:
    drawing = swatch_drawing(TOPS, wanted="golden", ident="t")
    assert 'class="d-text d-bold">golden</text>' in drawing
    assert 'class="d-text-2">pale</text>' in drawing


def test_it_says_that_a_screen_is_no_print() -> None:
    assert SCREEN_NOTE in swatch_drawing(TOPS, wanted="golden", ident="t")


def test_the_sentence_names_the_word_at_each_minute() -> None:
    said = swatch_sentence(TOPS, wanted="golden")
    assert "golden at 25 minutes, brown at 33 minutes, dark brown at 42 minutes" in said


def test_a_later_top_points_further_along_the_path() -> None:
    drawing = swatch_drawing(TOPS, wanted="golden", ident="t")
    at = [float(x) for x in re.findall(r'class="d-ink" d="M([\d.]+) ', drawing)]
    assert at == sorted(at)
    assert len(at) == 3


def test_beyond_the_path_a_top_is_its_end() -> None:
    last = crust_steps()[-1]
    assert top_colour(last.delta_e + 10) == top_colour(last.delta_e)
