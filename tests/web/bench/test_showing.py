"""Numbers at the bench are as wide as the screen lets them be."""

import pytest

from krume.web.bench.showing import grams_of, size_of


@pytest.mark.parametrize(
    ("display", "size"),
    [("9", ""), ("96", ""), ("105", "three"), ("136.5", "five"), ("1\u202f375.7", "seven")],
)
def test_a_longer_number_is_set_smaller(display: str, size: str) -> None:
    assert size_of(display) == size


def test_grams_have_the_digits_the_scale_shows() -> None:
    assert grams_of(None) == "not known"
    assert grams_of(136.54) == "136.5"
    assert grams_of(136.54, 1.0) == "137"
    assert grams_of(1195.0) == "1\u202f195"
