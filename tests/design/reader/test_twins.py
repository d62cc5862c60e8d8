"""A twin stands for a line only where the figure cannot change what its words are taken for."""

import pytest

from krume.design.reader.linereading import read_ingredients
from krume.design.reader.settings import Settings
from krume.design.reader.twins import reading_as, twin_of

PLAIN = Settings()


@pytest.mark.parametrize(
    "line", ["135.5 g sugar", "butter: 90 g", "- 12 g white rice flour, sifted"]
)
def test_a_weighed_line_is_read_by_its_twin_with_its_own_grams(line: str) -> None:
    twin = twin_of(line, PLAIN)
    assert twin != line
    assert reading_as(read_ingredients(twin, PLAIN), line) == read_ingredients(line, PLAIN)


@pytest.mark.parametrize(
    "line",
    ["0 g sugar", "about 90 g sugar", "3 eggs", "100 g butter, one stick", "26000 g flour",
     "90 g of what grandmother used"],
)  # fmt: skip
def test_a_line_that_is_asked_or_noted_about_has_no_twin(line: str) -> None:
    assert twin_of(line, PLAIN) == line
