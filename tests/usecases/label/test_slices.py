"""What a slice holds, on the page and the sheet of a torte in the same words."""

from dataclasses import replace

import pytest

from krume.usecases import Asked, label_of, torte_shown
from krume.usecases.label.label import LabelWish
from krume.usecases.label.slices import slice_lines, slice_lines_of_all
from krume.usecases.sold.papers import papers_of
from tests.label.studio import product


@pytest.mark.parametrize(("market", "words"), [("us", "is counted in"), ("eu", "is not counted")])
def test_each_planned_number_of_slices_has_its_line_and_the_caution_is_last(
    demo: Asked, market: str, words: str
) -> None:
    lines = slice_lines(product("T1"), papers_of(demo), market)
    assert len(lines) == 3
    assert all(words in line for line in lines[:2])
    assert "insulin" in lines[2]


def test_label_and_page_say_the_same(demo: Asked) -> None:
    label = label_of("T1", LabelWish(market="eu"), demo).result.nutrition
    page = torte_shown("T1", demo).result.said
    assert label is not None
    assert label.carbohydrate is not None
    assert page is not None
    said = (*(each.text for each in label.carbohydrate.slices), label.carbohydrate.caution)
    assert page.eaten == said


def test_a_torte_whose_masses_are_not_known_says_so_and_gives_no_figure(demo: Asked) -> None:
    made = replace(product("T1"), finished_g=None)
    (only,) = slice_lines(made, papers_of(demo), "eu")
    assert "not known" in only
    assert not any(sign.isdigit() for sign in only)


def test_what_is_not_cut_has_no_line(demo: Asked) -> None:
    assert slice_lines(product("F1"), papers_of(demo), "eu") == ()


def test_an_order_has_the_lines_of_each_of_its_tortes(demo: Asked) -> None:
    found = slice_lines_of_all("102", demo, "eu")
    assert {"T2", "TART"} <= set(found)
    assert all("slices" in lines[0] for name, lines in found.items() if name in ("T2", "TART"))
