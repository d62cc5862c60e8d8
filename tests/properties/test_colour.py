"""Colours: the published numbers of the three lights, and what every colour must keep to."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.properties import Lab, light_of, screen_colour
from tests.agreement import agrees

# L*a*b* of the screen's own lights, as they circulate to four digits.
PRIMARIES = (
    ("53.2408", "80.0925", "67.2032", "#ff0000"),
    ("87.7347", "-86.1827", "83.1793", "#00ff00"),
    ("32.2970", "79.1875", "-107.8602", "#0000ff"),
    ("100", "0", "0", "#ffffff"),
    ("0", "0", "0", "#000000"),
)


@pytest.mark.parametrize(("lightness", "red", "yellow", "shown"), PRIMARIES)
def test_the_screens_own_lights_come_out_as_themselves(
    lightness: str, red: str, yellow: str, shown: str
) -> None:
    found = screen_colour(Lab(float(lightness), float(red), float(yellow)))
    assert (found.text, found.is_exact) == (shown, True)


@pytest.mark.source("iec-61966-2-1", "D65 white point, x and y")
def test_white_lies_where_the_standard_has_it() -> None:
    x, y, z = light_of(Lab(100.0, 0.0, 0.0))
    assert agrees(x / (x + y + z), "0.3127")
    assert agrees(y / (x + y + z), "0.3290")


@pytest.mark.source("iec-61966-2-1", "XYZ of full red, green and blue")
@pytest.mark.parametrize(
    ("lab", "printed"),
    [
        ((53.2408, 80.0925, 67.2032), ("0.4124", "0.2126", "0.0193")),
        ((87.7347, -86.1827, 83.1793), ("0.3576", "0.7152", "0.1192")),
        ((32.2970, 79.1875, -107.8602), ("0.1805", "0.0722", "0.9505")),
    ],
)
def test_the_lights_have_the_printed_x_y_and_z(
    lab: tuple[float, float, float], printed: tuple[str, str, str]
) -> None:
    for part, said in zip(light_of(Lab(*lab)), printed, strict=True):
        assert agrees(part, said, within="0.0003", why="L*a*b* of white by another rounding")


@given(lightness=st.floats(1.0, 99.0))
def test_a_grey_has_no_colour_and_gets_lighter(lightness: float) -> None:
    found = screen_colour(Lab(lightness, 0.0, 0.0))
    assert found.red == found.green == found.blue
    assert found.red <= screen_colour(Lab(min(lightness + 1, 100.0), 0.0, 0.0)).red


def test_what_a_screen_cannot_show_is_cut_off_and_said() -> None:
    found = screen_colour(Lab(60.0, 120.0, 100.0))
    assert not found.is_exact
    assert max(found.red, found.green, found.blue) == 255


@pytest.mark.parametrize("lightness", [-1.0, 100.1, float("nan")])
def test_a_lightness_that_cannot_be_is_refused(lightness: float) -> None:
    with pytest.raises(OutOfRangeError, match="lightness"):
        screen_colour(Lab(lightness, 0.0, 0.0))


@given(a=st.tuples(*[st.floats(0, 100)] * 3), b=st.tuples(*[st.floats(0, 100)] * 3))
def test_the_difference_of_two_colours_is_a_distance(
    a: tuple[float, float, float], b: tuple[float, float, float]
) -> None:
    one, other = Lab(*a), Lab(*b)
    assert one.distance(other) == pytest.approx(other.distance(one))
    assert one.distance(one) == 0.0
