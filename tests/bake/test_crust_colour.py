"""The path of browning: through its rows, ever darker, and at the model's own words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.bake import crust_colour, crust_steps, crust_word, figures
from krume.base import OutOfRangeError
from krume.properties import screen_colour


def test_the_path_goes_through_its_rows() -> None:
    for step in crust_steps():
        assert crust_colour(step.delta_e).distance(step.colour) < 1e-9


@given(delta_e=st.floats(0, 51), more=st.floats(0.01, 1))
def test_a_top_only_gets_darker(delta_e: float, more: float) -> None:
    assert crust_colour(delta_e + more).lightness < crust_colour(delta_e).lightness


@pytest.mark.parametrize("word", ["pale", "golden", "brown"])
def test_the_words_lie_where_the_model_waits_for_them(word: str) -> None:
    (step,) = (each for each in crust_steps() if each.key == word)
    assert step.delta_e == figures()[f"colour-{word}"].value
    assert crust_word(step.delta_e) == word


def test_every_step_can_be_shown_on_a_screen() -> None:
    assert all(screen_colour(step.colour).is_exact for step in crust_steps())


@pytest.mark.parametrize("delta_e", [-0.1, 52.1])
def test_beyond_the_path_there_is_no_colour(delta_e: float) -> None:
    with pytest.raises(OutOfRangeError):
        crust_colour(delta_e)
