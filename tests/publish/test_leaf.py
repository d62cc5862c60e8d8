"""A leaf on paper and as a page: all its words are there, and nothing typed is code."""

import io

import pypdf
import pytest

from krume.base import InputError
from krume.publish import (
    Fact,
    Hold,
    Imprint,
    Leaf,
    LeafPart,
    LeafTable,
    leaf_dict,
    leaf_html,
    leaf_pdf,
    missing_leaf_signs,
)

HOSTILE = '#let x = 1 $a$ *b* _c_ @d <e> "f" \\ <script>alert(1)</script>'


def _leaf(name: str = "Order 7") -> Leaf:
    table = LeafTable(("lot", "what"), (("L-1", HOSTILE), ("L-2", "rice")), right=(0,), wide=1)
    return Leaf(
        "order sheet",
        name,
        (Fact("at", "14:00"),),
        (LeafPart("Diet", ("none stated",), boxed=True), LeafPart("Lots", table=table)),
        ("Local law decides.",),
        Hold("Stopped.", "A record."),
        Imprint(date="2027-06-10", program="1", data="2", notes=("not baked",)),
    )


@pytest.mark.parametrize("paper", ["a5", "a4", "letter"])
def test_paper_carries_every_word_and_the_hold(paper: str) -> None:
    pages = pypdf.PdfReader(io.BytesIO(leaf_pdf(_leaf(), paper))).pages
    text = " ".join(page.extract_text() for page in pages)
    for word in ("Order 7", "14:00", "none stated", "HELD", "Stopped.", "L-2", "#let x = 1 $a$"):
        assert word in text, word


def test_the_same_leaf_is_the_same_bytes() -> None:
    assert leaf_pdf(_leaf()) == leaf_pdf(_leaf())


def test_no_typed_word_runs_on_the_page() -> None:
    page = leaf_html(_leaf(HOSTILE))
    assert "<script>alert" not in page and "&lt;script&gt;alert" in page


def test_an_unknown_paper_is_named_with_those_there_are() -> None:
    with pytest.raises(InputError, match="a5, a4 or letter"):
        leaf_pdf(_leaf(), "a7")


def test_a_leaf_is_plain_data_and_names_the_signs_it_cannot_print() -> None:
    data = leaf_dict(_leaf())
    assert data["kind"] == "order sheet" and data["hold"]
    assert missing_leaf_signs(_leaf()) == ()
    assert missing_leaf_signs(_leaf("蛋糕"))
