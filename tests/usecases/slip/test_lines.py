"""The lines of a formula in the order of weighing, each called so that a slip finds it again."""

from dataclasses import replace

import pytest

from krume.usecases import Asked, SlipWish, rescue_slip
from krume.usecases.slip.lines import slip_rows


def test_every_line_stands_once_in_the_order_of_the_bowls(demo: Asked) -> None:
    rows = slip_rows("F2", demo)
    assert [row.name for row in rows][:6] == [
        "white rice flour",
        "teff flour",
        "potato starch",
        "sweet rice flour",
        "maize starch",
        "butter",
    ]
    assert len(rows) == 11
    assert {row.bowl for row in rows[:5]} == {"Dry bowl"}
    assert sum(row.planned_g or 0 for row in rows) == pytest.approx(519)


@pytest.mark.parametrize("name", ["F1", "F2", "F3", "F4", "F5", "F6", "F7"])
def test_what_a_line_is_called_names_it_and_no_other(demo: Asked, name: str) -> None:
    for row in slip_rows(name, demo):
        found = rescue_slip(name, SlipWish(weighed=(f"{row.said}={row.planned_g}",)), demo)
        (held,) = found.result.in_bowl
        assert (held.name, held.part) == (row.name, row.part)
        assert held.over_g == 0


def test_lines_of_one_text_line_have_boxes_of_their_own(demo: Asked) -> None:
    text = b"Cake\nEggs: EU M\n\n60 g white rice flour\n40 g potato starch\n3 eggs\n80 g sugar\n"
    rows = slip_rows("-", replace(demo, typed=text))
    assert len({row.field for row in rows}) == len(rows) == 4
