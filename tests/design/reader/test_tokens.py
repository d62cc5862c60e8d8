"""Numbers and units of a line."""

import pytest

from krume.base import Unit
from krume.design.reader.tokens import Number, tokens


def numbers(text: str) -> list[float]:
    return [t.value.value for t in tokens(text, 0, len(text)) if isinstance(t.value, Number)]


def units(text: str) -> list[str]:
    return [t.value.name for t in tokens(text, 0, len(text)) if isinstance(t.value, Unit)]


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("1 1/2 cups", 1.5),
        ("1½ cups", 1.5),
        ("1 ½ cups", 1.5),
        ("1-1/2 cups", 1.5),
        ("1 1-2 cups", 1.5),
        ("one and one-half cups", 1.5),
        ("1 and 1/2 cups", 1.5),
        ("one cup and a half", 1.5),
        ("three quarters", 0.75),
        ("three-eighths", 0.375),
        ("half a dozen", 6.0),
        ("2 dozen", 24.0),
        ("0,25 g", 0.25),
        (".5 tsp", 0.5),
        ("1 500 g", 1500.0),
        ("1,500 g", 1500.0),
        ("1e3 g", 1000.0),
        ("a quarter of a pint", 0.25),
        ("zwei", 2.0),
        ("half-cup", 0.5),
    ],
)
def test_a_number_is_read_however_it_is_written(text: str, value: float) -> None:
    assert numbers(text)[0] == pytest.approx(value)


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("85g", "g"),
        ("2 fl. oz milk", "floz"),
        ("1 T butter", "tbsp"),
        ("1 t salt", "tsp"),
        ("1 EL Öl", "tbsp"),
        ("1 TL Salz", "tsp"),
        ("1 Pck. Backpulver", "packet"),
        ("14 dag", "dag"),
        ("8-ounce", "oz"),
        ("a pinch of salt", "pinch"),
        ("1 breakfast cup milk", "cup"),
        ("1 qt.", "quart"),
    ],
)
def test_a_unit_is_read_behind_its_number(text: str, unit: str) -> None:
    assert units(text) == [unit]


@pytest.mark.parametrize("text", ["pound cake", "cloves", "whole leaves", "in the tin", "g"])
def test_a_unit_word_without_a_number_is_a_word(text: str) -> None:
    kinds = [token.kind for token in tokens("with " + text, 0, len(text) + 5)]
    assert set(kinds) == {"W"}


def test_a_slash_between_large_numbers_is_no_fraction() -> None:
    assert numbers("350/180") == [350.0, 180.0]
