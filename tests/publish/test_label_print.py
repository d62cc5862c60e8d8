"""A label on paper: tagged, whole, the same bytes for the same words; too much is named."""

import io
import unicodedata
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from krume.base import Infeasible
from krume.properties import constants
from krume.publish import (
    NetWords,
    label_html,
    label_layout,
    label_pdf,
    label_text,
    least_letter_mm,
)
from tests.publish.drawn import drawn
from tests.publish.labels import label, us_label, with_panel

HOSTILE = '#panic("x") $ * _ @ref <b>bold</b> `raw` \\ [ ] { } #import "/etc/passwd": *'
ROOMY = label_layout("a4-1")
SMALL = label_layout("single-62x100")


def text_of(data: bytes | Infeasible) -> str:
    """Words of a label's PDF."""
    assert isinstance(data, bytes)
    pages = PdfReader(io.BytesIO(data)).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def test_every_word_of_the_label_is_on_the_paper() -> None:
    words = text_of(label_pdf(with_panel(), ROOMY))
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


@pytest.mark.parametrize("key", ["roll-102x152", "roll-62", "roll-102", "single-62x100"])
def test_a_label_of_a_roll_is_printed_at_its_true_size(key: str) -> None:
    layout = label_layout(key)
    page = drawn(label_pdf(label(), layout))
    assert page.width_mm == pytest.approx(layout.page_width_mm, abs=0.01)
    if layout.page_height_mm is None:
        assert 20 < page.height_mm < 60
    else:
        assert page.height_mm == pytest.approx(layout.page_height_mm, abs=0.01)


def test_an_endless_roll_is_cut_after_the_words() -> None:
    few = drawn(label_pdf(label(), label_layout("roll-62")))
    many = drawn(label_pdf(label(ingredients="sugar, " * 300), label_layout("roll-62")))
    assert many.height_mm > 2 * few.height_mm


@pytest.mark.parametrize("market", ["eu", "us", "ca"])
@pytest.mark.parametrize("count", [3, 60, 90])
def test_no_letter_on_the_paper_is_lower_than_the_law_lets_it_be(market: str, count: int) -> None:
    made = label(market=market, ingredients=", ".join(["sugar"] * count))
    page = drawn(label_pdf(made, label_layout("single-62x100")))
    share = constants("label_print.csv")["font-x-height"]
    own = ("balanced", "krume")
    smallest = min(words.size_pt for words in page.words if not words.text.startswith(own))
    assert smallest * share * 25.4 / 72 >= least_letter_mm(market) - 1e-6


def test_a_small_package_may_have_smaller_letters_where_its_area_is_said() -> None:
    much = label(ingredients=", ".join(["sugar"] * 330))
    assert isinstance(label_pdf(much, SMALL), Infeasible)
    page = drawn(label_pdf(replace(much, area_cm2=60.0), SMALL))
    assert page.word("sugar").size_pt < 6.9


@pytest.mark.parametrize(("least_mm", "market"), [(3.0, "eu"), (6.0, "eu"), (6.35, "us")])
def test_figures_of_the_net_quantity_are_as_high_as_their_rule(
    least_mm: float, market: str
) -> None:
    net = NetWords(("Net", "1194 g"), least_mm)
    page = drawn(label_pdf(replace(label(market=market), net=net), ROOMY))
    share = constants("label_print.csv")["font-figure-height"]
    assert page.word("1194").size_pt * share * 25.4 / 72 >= least_mm


def test_allergens_in_capitals_are_bold_in_the_eu() -> None:
    page = drawn(label_pdf(label(), ROOMY))
    assert page.word("EGG").is_bold
    assert not page.word("sugar").is_bold


def test_the_page_of_a_us_label_has_the_box_with_its_rows() -> None:
    page = label_html(us_label())
    assert page.count("<h2>Nutrition Facts</h2>") == 1
    assert "Includes 10g Added Sugars" in page
    assert page.count('scope="row"') == 15
    assert "Per container" in label_html(us_label(columns=2))


def test_every_text_of_a_label_is_harmless_on_its_page() -> None:
    evil = "<img src=x onerror=alert(1)>"
    made = replace(
        label(name=evil, ingredients=evil, maker=evil, durability=evil),
        sentences=(evil,), net=NetWords((evil,)), code=evil, says=evil,
    )  # fmt: skip
    page = label_html(made)
    assert "<img" not in page
    assert page.count("&lt;img") == 8


@given(st.text(max_size=40), st.text(max_size=40))
@settings(max_examples=10, deadline=None)
def test_whatever_is_typed_is_printed_as_words(name: str, maker: str) -> None:
    made = label(name=f"A{name}", ingredients=f"B{maker}", maker=f"C{maker}")
    assert isinstance(label_pdf(made, ROOMY), bytes)
    page = label_html(made)
    assert page.count("<script") == page.count("<img") == 0
    assert page.count("<h1") == 1
    assert all(sign == "\n" or sign >= " " for sign in page)
    signs = set(label_text(made)) - {"\n"}
    assert not any(unicodedata.category(sign) in ("Cc", "Cf", "Cs") for sign in signs)


def test_allergens_in_capitals_are_bold_on_the_page_too() -> None:
    page = label_html(label(ingredients="whole-MILK, sugar"))
    assert "whole-<b>MILK</b>, sugar." in page


@pytest.mark.parametrize("field", ["name", "ingredients", "maker", "durability"])
def test_a_word_too_long_for_the_label_is_broken_and_never_cut_off(field: str) -> None:
    layout = label_layout("roll-62")
    page = drawn(label_pdf(label(**{field: "x" * 300}), layout))
    right = (layout.label_width_mm - 3.5) * 72 / 25.4
    assert sum(words.text.count("x") for words in page.words) >= 300
    assert max(words.right for words in page.words) <= right + 0.5
