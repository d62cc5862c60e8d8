"""Judgements as people write them beside a bake."""

import pytest

from krume.learn.trial_words import is_good


@pytest.mark.parametrize("word", ["good", "Good", "good, dry edge", " very good ; high", "Gut."])
def test_a_judgement_that_begins_with_good_is_good(word: str) -> None:
    assert is_good(word)


@pytest.mark.parametrize("word", ["", "not good", "sunk, gummy", "low, good taste", "goodish"])
def test_any_other_judgement_is_not(word: str) -> None:
    assert not is_good(word)
