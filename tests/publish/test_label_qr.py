"""The code of a label says the lot, read back by another program, and keeps its clear edge."""

from dataclasses import replace

import pytest
import zxingcpp
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from krume.base import InputError
from krume.properties import constants
from krume.publish import label_layout, label_pdf, qr_words
from krume.publish.label_qr import qr_drawing
from tests.agreement import agrees
from tests.publish.drawn import image_of
from tests.publish.labels import label

PLAIN = st.text(st.characters(min_codepoint=33, max_codepoint=126), min_size=1, max_size=60)


def page_image(says: str) -> Image.Image:
    """The first page of a label with a code, as a label printer draws it."""
    data = label_pdf(replace(label(), code="270610-1", says=says), label_layout("single-62x100"))
    assert isinstance(data, bytes)
    return image_of(data)


def read_back(image: Image.Image) -> list[str]:
    """What another program reads in an image."""
    return [each.text for each in zxingcpp.read_barcodes(image)]


@pytest.mark.parametrize("says", ["270610-1", "https://cakes.example/orl#270610-1", "x" * 250])
def test_a_printed_code_is_read_back_as_it_was_meant(says: str) -> None:
    assert read_back(page_image(says)) == [says]


@given(PLAIN)
@settings(max_examples=60, deadline=None)
def test_any_plain_words_come_back(says: str) -> None:
    drawn = qr_drawing(says)
    assert read_back(image_of(drawn.svg.encode(), "svg", dpi=72 * 6)) == [says]


@pytest.mark.source("iso-iec-18004", "clear edge, as the maker of the code restates it")
def test_the_clear_edge_is_four_modules_on_each_side() -> None:
    assert agrees(constants("label_print.csv")["qr-quiet-modules"], "4")
    drawn = qr_drawing("270610-1")
    assert drawn.modules == 21 + 2 * 4
    image = image_of(drawn.svg.encode(), "svg", dpi=72 * 10).convert("L")
    dark = image.point(lambda value: 255 if value < 128 else 0).getbbox()
    assert dark is not None
    edge = image.width * 4 / drawn.modules
    assert dark[0] == pytest.approx(edge, abs=1)
    assert image.width - dark[2] == pytest.approx(edge, abs=1)


def test_a_code_is_as_large_on_paper_as_its_modules_say() -> None:
    drawn = qr_drawing("270610-1")
    assert drawn.side_mm == drawn.modules * constants("label_print.csv")["qr-module-mm"]


def test_the_lot_stands_behind_the_address_as_its_fragment() -> None:
    assert qr_words("27/1 a", "https://cakes.example/orl?x=1") == (
        "https://cakes.example/orl?x=1#27/1%20a"
    )
    assert qr_words("", "https://cakes.example/") == "https://cakes.example/"
    assert qr_words("", "") == ""


@pytest.mark.parametrize(
    "address",
    ["cakes.example", "javascript:alert(1)", "https://", "https://a b", "https://a#b",
     "https://a/\x07", "https://ä.example", "https://a/" + "x" * 200, "file:///etc/passwd"],
)  # fmt: skip
def test_an_address_no_phone_should_open_is_refused(address: str) -> None:
    with pytest.raises(InputError, match="cannot stand in the code"):
        qr_words("270610-1", address)
