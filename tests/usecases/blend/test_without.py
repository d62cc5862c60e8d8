"""What stays out of a blend: a word that names no flour stops, and its answer settles it."""

from dataclasses import replace

import pytest

from krume.usecases import Asked, BlendWish, choose_blend
from krume.usecases.blend.without import LeaveOut, words_left_out
from tests.usecases.blends import FLOURS

WISH = BlendWish(FLOURS, match="F2")


@pytest.mark.parametrize("word", ["buckweat", "fonio", "semolina", "gibberish"])
def test_a_word_that_names_no_flour_of_the_pantry_stops(demo: Asked, word: str) -> None:
    answer = choose_blend(replace(WISH, without=(word,)), demo)
    (problem,) = answer.problems
    assert answer.exit_code == 3
    assert not answer.result.parts
    assert (problem.code, problem.where, problem.read) == ("without-unknown", "--without 1", word)


def test_a_misspelt_flour_is_offered_and_the_answer_takes_its_place(demo: Asked) -> None:
    wish = replace(WISH, without=("millet", "buckweat"))
    (problem,) = choose_blend(wish, demo).problems
    assert problem.options[0].line == "buckwheat flour"
    settled = replace(demo, answers=(f"{problem.where}={problem.options[0].line}",))
    assert choose_blend(wish, settled).result.without == ("flour-buckwheat-whole", "flour-millet")


def test_the_last_answer_goes_on_without_the_word(demo: Asked) -> None:
    wish = replace(WISH, without=("fonio",))
    (problem,) = choose_blend(wish, demo).problems
    settled = replace(demo, answers=(f"{problem.where}={problem.options[-1].line}",))
    answer = choose_blend(wish, settled)
    assert answer.exit_code == 0
    assert answer.result.without == ()


def test_a_word_of_two_flours_is_settled_by_its_answer(demo: Asked) -> None:
    wish = BlendWish("white rice flour, brown rice flour, potato starch", match="F2")
    (problem,) = choose_blend(replace(wish, without=("rice",)), demo).problems
    assert problem.code == "without-which"
    settled = replace(demo, answers=(f"{problem.where}={problem.options[1].line}",))
    answer = choose_blend(replace(wish, without=("rice",)), settled)
    assert (answer.exit_code, len(answer.result.without)) == (0, 1)


def test_a_flour_that_is_known_and_not_at_hand_is_only_told(demo: Asked) -> None:
    answer = choose_blend(replace(WISH, without=("sorghum",)), demo)
    assert answer.exit_code == 0
    assert "nothing-to-leave-out" in [notice.code for notice in answer.notices]


def test_a_limit_on_a_flour_without_a_row_stops(demo: Asked) -> None:
    answer = choose_blend(replace(WISH, limits=("fonio <= 5",)), demo)
    assert answer.exit_code == 3
    assert [problem.code for problem in answer.problems] == ["limit-no-flour"]


def test_each_word_has_its_own_place(demo: Asked) -> None:
    asked = replace(demo, answers=("--without 2=maize starch", "--without=millet + fat"))
    assert words_left_out(("teff, rice",), asked) == (
        LeaveOut("teff", "--without 1"),
        LeaveOut("maize starch", "--without 2"),
        LeaveOut("millet", "--without"),
        LeaveOut("fat", "--without"),
    )
