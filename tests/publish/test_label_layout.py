"""Layouts of labels: sheets lie inside their page, a roll has one label a page."""

import pytest

from krume.base import InputError
from krume.publish import label_layout, label_layouts


def test_every_sheet_lies_on_its_page_and_its_labels_do_not_overlap() -> None:
    for one in label_layouts():
        right = one.left_mm + (one.columns - 1) * one.column_pitch_mm + one.label_width_mm
        assert right <= one.page_width_mm + 0.05, one.key
        assert one.columns == 1 or one.column_pitch_mm >= one.label_width_mm
        if one.label_height_mm is None or one.row_pitch_mm is None or one.page_height_mm is None:
            continue
        foot = one.top_mm + (one.rows - 1) * one.row_pitch_mm + one.label_height_mm
        assert foot <= one.page_height_mm + 0.05, one.key
        assert one.rows == 1 or one.row_pitch_mm >= one.label_height_mm


def test_a_roll_has_one_label_a_page_as_wide_as_the_roll() -> None:
    rolls = [one for one in label_layouts() if one.kind == "roll"]
    assert len(rolls) > 3
    for one in rolls:
        assert (one.columns, one.rows, one.left_mm, one.top_mm) == (1, 1, 0, 0)
        assert one.label_width_mm == one.page_width_mm
        assert one.label_height_mm == one.page_height_mm
    assert [one.key for one in rolls if one.is_endless] == ["roll-62", "roll-102"]


def test_a_layout_nobody_has_is_refused_with_those_there_are() -> None:
    with pytest.raises(InputError, match="a4-2x4"):
        label_layout("napkin")
