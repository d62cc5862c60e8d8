"""A label on paper: tagged, whole, the same bytes for the same words; too much is named."""

import io
from dataclasses import replace

import pytest
from pypdf import PdfReader

from krume.base import Infeasible
from krume.publish import PanelLine, label_html, label_layout, label_pdf
from tests.publish.labels import label

HOSTILE = '#panic("x") $ * _ @ref <b>bold</b> `raw` \\ [ ] { } #import "/etc/passwd": *'
ROOMY = label_layout("a4-1")
SMALL = label_layout("single-62x100")


def text_of(data: bytes | Infeasible) -> str:
    """Words of a label's PDF."""
    assert isinstance(data, bytes)
    pages = PdfReader(io.BytesIO(data)).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def test_every_word_of_the_label_is_on_the_paper() -> None:
    made = replace(label(), panel=(PanelLine("Fat", "10 g", ""),), panel_basis="per 100 g")
    words = text_of(label_pdf(made, ROOMY))
    for said in (
        "Cake",
        "EGG, sugar",
        "May contain: nuts",
        "Fat",
        "10 g",
        "Keep cold.",
        "not baked",
    ):
        assert said in words


def test_the_same_words_are_the_same_bytes() -> None:
    assert label_pdf(label(), ROOMY) == label_pdf(label(), ROOMY)


def test_nothing_typed_is_ever_code() -> None:
    words = text_of(label_pdf(label(name=HOSTILE, ingredients=HOSTILE), ROOMY))
    assert '#panic("x")' in words
    page = label_html(label(name=HOSTILE, ingredients="<script>x</script>"))
    assert "<script>x" not in page
    assert "&lt;script&gt;" in page


@pytest.mark.parametrize("count", [200, 400])
def test_what_does_not_fit_is_named_by_its_overflow(count: int) -> None:
    made = label_pdf(label(ingredients=", ".join(["sugar"] * count)), SMALL)
    assert isinstance(made, Infeasible)
    clash = made.clashes[0]
    assert clash.has == "93.0 mm"
    assert float(clash.needs.split()[0]) > 93.0
    assert "one label of 62 x 100 mm" in clash.limit


def test_more_words_need_more_height() -> None:
    less = label_pdf(label(ingredients="sugar, " * 200), SMALL)
    more = label_pdf(label(ingredients="sugar, " * 300), SMALL)
    assert isinstance(less, Infeasible)
    assert isinstance(more, Infeasible)
    heights = [float(m.clashes[0].needs.split()[0]) for m in (less, more)]
    assert heights[0] < heights[1]


def test_a_page_lets_nothing_else_in() -> None:
    page = label_html(label())
    assert "default-src &#39;none&#39;" in page
    assert page.count("<h1") == 1
