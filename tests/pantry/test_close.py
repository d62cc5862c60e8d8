"""Names that look alike: one slip in a short word, two in a long one."""

import os
import subprocess
import sys

import pytest

from krume.pantry.close import _LATIN_OF, closest, latin_lookalike


@pytest.mark.parametrize(
    ("tokens", "first"),
    [
        (("buckweat", "flour"), "buckwheat flour"),
        (("buter",), "butter"),
        (("cinamon",), "cinnamon"),
    ],
)
def test_misspelled_words_are_mended_one_by_one(tokens: tuple[str, ...], first: str) -> None:
    names = closest(tokens)
    assert names[:1] == (first,)


def test_a_word_of_two_letters_is_not_mended_and_one_of_three_keeps_its_first() -> None:
    assert closest(("eg",)) == ()
    assert closest(("egs",)) == ("egg",)
    assert closest(("slt",)) == ("salt",)
    assert closest(("yalt",)) == ()


def test_many_misspelled_words_are_left_alone() -> None:
    assert closest(("buter",) * 7) == ()


def test_the_same_names_come_in_every_run() -> None:
    code = "from krume.pantry.close import closest; print(closest(('banan', 'powdr')))"
    seen = {
        subprocess.run(
            [sys.executable, "-c", code],
            check=True,
            capture_output=True,
            env={**os.environ, "PYTHONHASHSEED": seed},
        ).stdout
        for seed in ("1", "2", "3")
    }
    assert len(seen) == 1


def test_a_known_ending_counts_where_the_rest_is_a_place_or_a_brand() -> None:
    assert closest(("madagascar", "vanilla", "extract")) == ("vanilla extract",)


def test_a_generic_ending_is_never_offered() -> None:
    assert closest(("fonio", "flour")) == ()


@pytest.mark.parametrize(("typed", "latin"), [("ѕugar", "sugar"), ("buttеr", "butter")])
def test_look_alike_letters_are_turned_into_latin_ones(typed: str, latin: str) -> None:
    assert latin_lookalike(typed) == latin


@pytest.mark.parametrize("typed", ["sugar", "Käse", "сахарный песок", "砂糖"])
def test_words_that_are_not_disguised_are_left_alone(typed: str) -> None:
    assert latin_lookalike(typed) is None


def test_every_look_alike_letter_turns_into_one_latin_letter() -> None:
    assert all(chr(latin).isascii() for latin in _LATIN_OF.values() if isinstance(latin, int))
