"""Counts and lengths as they are typed."""

import pytest

from krume.build.torte_figures import cm_of, count_of, mm_of, number_of


@pytest.mark.parametrize(("words", "count"), [("three", 3), ("14", 14), (None, 1), ("A", 1)])
def test_a_count_is_read_in_figures_and_in_words(words: str | None, count: int) -> None:
    assert count_of(words) == count


def test_lengths_are_turned_once() -> None:
    assert (mm_of("1.5", "cm"), cm_of("15", "mm"), cm_of("8", "in")) == (15.0, 1.5, 20.32)
    assert number_of("2,5") == 2.5
