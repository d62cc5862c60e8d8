"""The blend card: percents of the flours, grams for 1, 2 and 10, and small parts met by equals."""

import io
from dataclasses import replace

import pypdf
import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.publish import (
    Blend,
    BlendLot,
    BlendPart,
    Hold,
    Imprint,
    Leaf,
    blend_leaf,
    leaf_html,
    leaf_pdf,
)
from krume.publish.blend_card import doublings, mixing

IMPRINT = Imprint(date="2027-06-10", program="1", data="2")
F3 = Blend(
    of="F3",
    title="Lemon roulade",
    family="roulade",
    parts=(
        BlendPart("white rice flour", 26.0, is_flour=True),
        BlendPart("millet flour", 16.0, is_flour=True),
        BlendPart("potato starch", 22.0, is_flour=True),
        BlendPart("sweet rice flour", 6.0, is_flour=True),
        BlendPart("xanthan gum", 0.25, is_flour=False, mark="one step of 0.1 g is 40 % of it"),
    ),
    contains=(),
    may_contain=(),
    unknown=(),
    gluten="No gluten sentence: L-004.",
    lots=(BlendLot("L-004", "millet flour", "ran out", "valid to 2027-05-31"),),
    not_for=("Guests with coeliac disease.",),
    cautions=("Local law decides.",),
    is_baked=False,
)


def words_of(leaf: Leaf) -> str:
    """Every word of a leaf in its order."""
    found = []
    for part in leaf.parts:
        rows = () if part.table is None else part.table.rows
        found += [part.heading, *part.lines, *(" | ".join(row) for row in rows)]
    return "\n".join(found)


@pytest.fixture
def leaf() -> Leaf:
    """The card of the roulade's blend."""
    return blend_leaf(F3, IMPRINT)


def test_allergens_and_gluten_stand_first(leaf: Leaf) -> None:
    first = leaf.parts[0]
    assert first.heading == "Allergens and gluten"
    assert first.boxed
    assert first.lines[-1] == "No gluten sentence: L-004."


def test_percents_are_of_flours_and_starches_alone(leaf: Leaf) -> None:
    rows = next(part.table for part in leaf.parts if part.heading == "Parts").rows  # type: ignore[union-attr]
    percents = [row[1] for row in rows]
    assert percents == ["37.14", "22.86", "31.43", "8.57", "+0.36", ""]
    assert sum(float(p) for p in percents[:4]) == pytest.approx(100.0, abs=0.02)


def test_grams_are_for_one_two_and_ten(leaf: Leaf) -> None:
    text = words_of(leaf)
    assert "xanthan gum | +0.36 | 0.25 | 0.5 | 2.5" in text
    assert "together |  | 70.25 | 140.5 | 702.5" in text


def test_a_part_the_scale_does_not_weigh_well_is_marked_for_one(leaf: Leaf) -> None:
    assert "For 1 roll, xanthan gum: one step of 0.1 g is 40 % of it." in words_of(leaf)


def test_a_jar_without_a_known_use_by_day_gets_a_blank_and_says_so(leaf: Leaf) -> None:
    jar = next(part for part in leaf.parts if part.heading == "The jar")
    assert "use by ____________" in jar.lines[0]
    assert "not known" in jar.lines[1]


def test_what_is_in_a_jar_already_stands_first_in_its_box() -> None:
    kept = replace(F3, jar=("In this jar: 31.5 g.", "It starts the next one: add 38.75 g."))
    leaf = blend_leaf(kept, IMPRINT)
    jar = next(part for part in leaf.parts if part.heading == "The jar")
    assert jar.lines[:2] == kept.jar
    assert "use by ____________" in jar.lines[2]
    text = "".join(
        page.extract_text() for page in pypdf.PdfReader(io.BytesIO(leaf_pdf(leaf, "a5"))).pages
    )
    assert "In this jar: 31.5 g." in " ".join(text.split())


def test_goods_nobody_answers_for_are_asked_and_no_blend_is_called_free_of_them() -> None:
    unknown = replace(F3, unknown=("baking powder",))
    first = blend_leaf(unknown, IMPRINT).parts[0].lines
    assert first[0] == "Ask the supplier about baking powder."
    assert not any("No declared allergen" in line for line in first)


def test_an_unbaked_balance_says_so_once() -> None:
    assert blend_leaf(F3, IMPRINT).cautions[-1] == "Balanced on paper, not baked."
    noted = blend_leaf(F3, replace(IMPRINT, notes=("balanced on paper, not baked",)))
    baked = blend_leaf(replace(F3, is_baked=True), IMPRINT)
    assert not any("not baked" in text for text in (*noted.cautions, *baked.cautions))


@pytest.mark.parametrize("paper", ["a5", "a4", "letter"])
def test_paper_and_page_carry_the_hold_and_every_part(paper: str) -> None:
    leaf = blend_leaf(F3, IMPRINT, Hold("Stopped.", "A record of L-004."))
    pages = pypdf.PdfReader(io.BytesIO(leaf_pdf(leaf, paper))).pages
    text = " ".join(page.extract_text() for page in pages)
    for words in ("HELD", "L-004", "xanthan gum", "702.5", "Not for"):
        assert words in text, words
        assert words in leaf_html(leaf), words


def test_mixing_begins_with_the_smallest_part_and_doubles_it() -> None:
    (said,) = mixing(F3)
    assert said.startswith("For 10 rolls: 2.5 g xanthan gum first.")
    assert "2.5, 5, 10, 20, 40, 80, 160, 320, 62.5 g" in said
    assert "sweet rice flour, millet flour, potato starch, white rice flour" in said


@given(st.lists(st.floats(min_value=0.1, max_value=5000.0), min_size=1, max_size=9))
def test_doublings_add_up_and_never_add_more_than_is_in_the_bowl(masses: list[float]) -> None:
    steps = doublings(tuple(masses))
    assert sum(steps) == pytest.approx(sum(masses), rel=1e-8)
    assert steps[0] == min(masses)
    for number in range(1, len(steps)):
        assert steps[number] <= sum(steps[:number]) * (1 + 1e-9)
