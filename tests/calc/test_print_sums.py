"""The sum on the letters of a label as people and checks call it."""

import pytest

from krume.base import InputError, OutOfRangeError
from krume.calc import answer, run
from tests.agreement import agrees


def height_mm(name: str, **inputs: object) -> float:
    """One height of the sum's answer."""
    value = run("label-letters", **inputs)[name]
    assert isinstance(value, float)
    return value


@pytest.mark.source("eu-1169-2011", "article 13(2) and (3); eu-76-211 annex I 3.1 for the figures")
def test_the_eu_goes_by_the_face_and_by_the_grams() -> None:
    small = {"market": "eu", "width": 8, "height": 9, "net": 150}
    assert agrees(height_mm("letter_mm", **small), "0.9")
    assert agrees(height_mm("figure_mm", **small), "3")
    assert agrees(height_mm("letter_mm", market="eu", width=8, height=10), "1.2")


def test_the_us_goes_by_the_panel_for_the_net_weight() -> None:
    small = run("label-letters", market="us", width=5, height=5, net=150)
    large = run("label-letters", market="us", net=150)
    assert small["figure_mm"] == 1.5875
    assert large["figure_mm"] == 6.35
    assert small["letter_mm"] == large["letter_mm"] == 1.5875


def test_a_face_that_is_not_said_is_a_large_one_and_that_is_told() -> None:
    found = answer("label-letters", {"market": "eu"})
    assert found.values == {"letter_mm": 1.2, "type_pt": 6.9, "figure_mm": None}
    assert [notice.code for notice in found.notices] == ["face-not-said"]


def test_half_a_face_is_asked_and_none_is_refused() -> None:
    with pytest.raises(InputError, match="height"):
        run("label-letters", market="eu", width=8)
    for width in (0, -8):
        with pytest.raises(OutOfRangeError, match="above 0"):
            run("label-letters", market="eu", width=width, height=9)
    with pytest.raises(InputError, match="au-nz"):
        run("label-letters", market="moon")
    with pytest.raises(OutOfRangeError, match="outside the table"):
        run("label-letters", market="eu", net=20_000)
