"""Which ways to look for gluten give a figure that counts."""

import pytest

from krume.pantry import gluten_methods, method_of


@pytest.mark.parametrize(
    ("typed", "name", "counts"),
    [
        ("R5 ELISA", "R5 sandwich ELISA", True),
        ("AOAC 2012.01", "R5 sandwich ELISA", True),
        ("R5 competitive", "competitive R5 ELISA", True),
        ("G12", "G12 ELISA", True),
        ("LC-MS/MS", "mass spectrometry", True),
        ("test strip, R5", "a test strip", False),
        ("PCR", "a DNA test", False),
    ],
)
def test_a_papers_words_name_its_method(typed: str, name: str, counts: bool) -> None:
    found = method_of(typed)
    assert found is not None
    assert (found.name, found.counts) == (name, counts)


def test_what_no_row_knows_is_no_method() -> None:
    assert method_of("by eye") is None
    assert method_of("lab test of the stripped hulls") is None


def test_each_method_says_what_it_does_not_see() -> None:
    assert all(each.reads and each.not_reads for each in gluten_methods())
