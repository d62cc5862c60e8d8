"""How strong an oven is, as a picture that also reads as words."""

import math
import re
import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest

from krume.base import Interval
from krume.publish import HeatCurves, heat_drawing, heat_sentence

AT = tuple(-0.9 + 0.03 * k for k in range(61))


def _hill(mean: float, sd: float) -> tuple[float, ...]:
    return tuple(math.exp(-0.5 * ((u - mean) / sd) ** 2) / sd for u in AT)


CURVES = HeatCurves(AT, _hill(0, 0.25), _hill(-0.15, 0.125), Interval(0.73, 0.86, 1.01), 3)


def test_it_is_a_picture_with_a_name_and_a_description() -> None:
    svg = heat_drawing(CURVES, ident="heat-0")
    root = ET.fromstring(svg)  # noqa: S314
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "heat-0-name heat-0-what"
    ids = {each.get("id") for each in root.iter() if each.get("id")}
    assert ids == {"heat-0-name", "heat-0-what"}


def test_the_sentence_says_heat_its_span_and_from_how_many_bakes() -> None:
    assert heat_sentence(CURVES) == (
        "How strong the oven is over the usual one: 86 %, four fifths between 73 and 101 % after "
        "3 bakes."
    )
    assert heat_sentence(replace(CURVES, bakes=1)).endswith("after 1 bake.")


def test_the_description_compares_the_widths() -> None:
    found = re.search(r"is (\d+) % as wide", heat_drawing(CURVES, ident="h"))
    assert found is not None
    assert int(found[1]) == pytest.approx(200, abs=2)


def test_the_wedges_stand_at_the_ends_of_the_middle() -> None:
    svg = heat_drawing(CURVES, ident="h")
    wedges = [float(x) for x in re.findall(r'class="d-ink" d="M([\d.]+) ', svg)]
    low, high = (10 + 308 * (math.log(end) + 0.62) / 1.24 for end in (0.73, 1.01))
    assert wedges == pytest.approx([low - 5.5, high - 5.5], abs=0.1)


def test_the_higher_hill_is_this_ovens_and_nothing_leaves_the_picture() -> None:
    svg = heat_drawing(CURVES, ident="h")
    before, after = (
        [float(y) for y in re.findall(r"[ML][\d.]+ ([\d.]+)", d)]
        for d in re.findall(r'd="(M[\d. ]+L[^"]+)"', svg)
    )
    assert min(after) < min(before)
    assert min(after) >= 32
    assert max(*before, *after) <= 154


def test_it_holds_no_colour_of_its_own() -> None:
    assert (
        re.search(r"#[0-9a-f]{3}|style=|fill=\"(?!none)", heat_drawing(CURVES, ident="h")) is None
    )
