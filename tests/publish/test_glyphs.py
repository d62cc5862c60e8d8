"""The signs of a sheet are one drawing for paper and page."""

import xml.etree.ElementTree as Xml

import pytest

from krume.publish import card_html, plan_html
from krume.publish.glyphs import GLYPHS, svg
from tests.design.studio import F1
from tests.publish.bench import HOLD, card
from tests.publish.plans import sheet


@pytest.mark.parametrize("name", GLYPHS)
def test_a_sign_is_a_drawing_of_its_own_in_black(name: str) -> None:
    drawing = Xml.fromstring(svg(name))  # noqa: S314
    assert drawing.tag.endswith("svg")
    assert drawing.get("stroke") == "#000"
    assert len(list(drawing)) >= 1


def test_the_pages_show_the_same_drawings() -> None:
    pages = card_html(card(F1, hold=HOLD)) + plan_html(sheet("T3"))
    assert all(drawing in pages for drawing in GLYPHS.values())
