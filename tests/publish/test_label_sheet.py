"""Labels as values: least type by the law, layouts inside their page, words for paper."""

import pytest

from krume.base import InputError
from krume.properties import constants
from krume.publish import (
    label_layout,
    label_layouts,
    least_type_pt,
    missing_label_signs,
)
from tests.agreement import agrees
from tests.publish.labels import label


@pytest.mark.source("eu-1169-2011", "article 13(2): R93")
def test_the_eus_small_letters_are_1_2_mm_high() -> None:
    limits = constants("label_print.csv")
    assert agrees(limits["x-height-mm"], "1.2")
    assert agrees(limits["x-height-small-mm"], "0.9")


@pytest.mark.parametrize(("market", "limit"), [("eu", "x-height-mm"), ("us", "us-letter-mm")])
def test_the_least_type_is_just_high_enough(market: str, limit: str) -> None:
    limits = constants("label_print.csv")
    size = least_type_pt(market)
    height_mm = size * 25.4 / 72 * limits["font-x-height"]
    assert height_mm >= limits[limit]
    assert (size - 0.1) * 25.4 / 72 * limits["font-x-height"] < limits[limit]


def test_every_layout_lies_on_its_page_and_its_labels_do_not_overlap() -> None:
    for one in label_layouts():
        right = one.left_mm + (one.columns - 1) * one.column_pitch_mm + one.label_width_mm
        foot = one.top_mm + (one.rows - 1) * one.row_pitch_mm + one.label_height_mm
        assert right <= one.page_width_mm + 0.05, one.key
        assert foot <= one.page_height_mm + 0.05, one.key
        assert one.columns == 1 or one.column_pitch_mm >= one.label_width_mm
        assert one.rows == 1 or one.row_pitch_mm >= one.label_height_mm


def test_a_layout_nobody_has_is_refused_with_those_there_are() -> None:
    with pytest.raises(InputError, match="a4-2x4"):
        label_layout("napkin")


def test_signs_no_font_has_are_named() -> None:
    assert missing_label_signs(label()) == ()
    assert "🥜" in missing_label_signs(label(name="Cake 🥜"))[0].text
