"""Whether the program and its book are there."""

from krume import __version__
from krume.usecases import Asked, health_of


def test_a_book_is_counted_and_a_missing_one_is_said(demo: Asked, bare: Asked) -> None:
    assert health_of(demo).counts["formulas"] == 13
    found = health_of(bare)
    assert (found.book, found.counts, found.krume) == (False, {}, __version__)
