"""A quick sum on print: how high the letters of a label must be."""

import math

from krume.base import OutOfRangeError
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.label import net_height_mm
from krume.publish import least_letter_mm, least_type_pt

_MARKETS = ("eu", "uk", "us", "ca", "au-nz")


def _label_letters(given: Given) -> Values:
    market = given.text("market")
    area_cm2 = _area_cm2(given)
    figure_mm = None
    if given.has("net"):
        figure_mm = net_height_mm(given.number("net"), market, area_cm2)
    if area_cm2 is None:
        text = "The face was not said: letters are those of a large package. Type width and height."
        given.note("face-not-said", text)
    return {
        "letter_mm": least_letter_mm(market, area_cm2),
        "type_pt": least_type_pt(market, area_cm2),
        "figure_mm": figure_mm,
    }


def _area_cm2(given: Given) -> float | None:
    """Area of the face; half a face is a question."""
    if given.has("width") != given.has("height"):
        raise given.missing("height" if given.has("width") else "width")
    if not given.has("width"):
        return None
    area_cm2 = given.number("width") * given.number("height")
    if not 0 < area_cm2 < math.inf:
        raise OutOfRangeError(
            f"A face of {area_cm2:g} cm² is none. Type width and height above 0.",
            field="width", got=f"{area_cm2:g} cm2", want="more than 0 cm2",
        )  # fmt: skip
    return area_cm2


PRINT_SUMS = (
    Sum(
        "label-letters",
        "How high small letters and the figures of the net weight must be on a label.",
        (
            Input("market", "whose rules", kind="choice", choices=_MARKETS),
            Input("width", "width of the package's largest face", "cm", required=False),
            Input("height", "height of that face", "cm", required=False),
            Input("net", "net weight", "g", required=False),
        ),
        (
            Output("letter_mm", "least height of a small letter"),
            Output("type_pt", "smallest type of the packed font"),
            Output("figure_mm", "least height of the figures of the net weight; null without it"),
        ),
        _label_letters,
        ("eu-1169-2011", "us-21-cfr-101-2", "us-21-cfr-101-7", "eu-76-211"),
        (("market", "eu"), ("width", "8"), ("height", "9"), ("net", "150")),
        "Small letters by the x of the EU and the o of the US; figures by the grams in the EU.",
    ),
)
