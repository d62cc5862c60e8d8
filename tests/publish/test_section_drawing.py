"""The cut cake drawn: one scale, described in words, told apart without its colours."""

import re
from dataclasses import replace

import pytest

from krume.bake import Around
from krume.publish import cuts_described, cuts_drawing, cuts_sentence, cuts_stretch
from krume.size import Tin
from tests.build.studio import tree
from tests.publish.cakes import CUT, HOLED, TUBE, cake_cut


def test_it_is_one_drawing_with_a_name_and_what_is_seen() -> None:
    drawing = cuts_drawing([cake_cut()], ident="a")
    assert tree(drawing).tag.endswith("svg")
    assert 'role="img" aria-labelledby="a-name a-what"' in drawing
    assert cuts_sentence([cake_cut()]) in drawing
    assert "coldest 45 °C, hottest 98 °C" in cuts_described([cake_cut()])


def test_the_isotherms_differ_by_their_strokes_and_the_core_by_its_weight() -> None:
    drawing = cuts_drawing([cake_cut()], ident="a")
    lines = re.findall(
        r'<path class="g-line" stroke-width="(\d)"( stroke-dasharray="[^"]+")?', drawing
    )
    assert ("1", ' stroke-dasharray="6 4"') in lines
    assert ("1", "") in lines
    assert ("2", "") in lines
    assert "url(#a-pores)" in drawing


@pytest.mark.parametrize("level", ["60", "80", "95"])
def test_each_isotherm_in_the_cake_is_named(level: str) -> None:
    assert f'class="g-solid">{level}</text>' in cuts_drawing([cake_cut()], ident="a")


def test_a_tube_has_two_floors_and_four_walls() -> None:
    plain = cuts_drawing([cake_cut()], ident="a")
    tube = cuts_drawing([cake_cut(HOLED, TUBE)], ident="a")
    assert plain.count('class="d-line" stroke-width="4"') == 4
    assert tube.count('class="d-line" stroke-width="4"') == 6


def test_all_cuts_of_one_drawing_have_one_scale() -> None:
    wide = replace(CUT, radius_cm=tuple(2 * r for r in CUT.radius_cm))
    small = cuts_drawing([cake_cut()], ident="a", like=[cake_cut(wide)])
    alone = cuts_drawing([cake_cut()], ident="a")
    width = re.compile(r'<rect x="[\d.]+" y="[\d.]+" width="([\d.]+)"')
    found = [float(width.search(each)[1]) for each in (small, alone)]  # type: ignore[index]
    assert found[1] == pytest.approx(2 * found[0], rel=0.01)


def test_a_thin_sheet_is_drawn_higher_and_that_is_known() -> None:
    thin = replace(CUT, height_cm=tuple(z / 5 for z in CUT.height_cm))
    sheet = Tin("sheet", "sheet", length_cm=33.0, width_cm=20.0, height_cm=2.0)
    assert cuts_stretch([cake_cut(thin, sheet)]) == 4
    assert cuts_stretch([cake_cut()]) == 1


@pytest.mark.parametrize(
    "around", [Around(jacket="wrapped"), Around(jacket="water"), Around(under="stone")]
)
def test_what_stands_round_the_tin_is_drawn(around: Around) -> None:
    plain = cuts_drawing([cake_cut()], ident="a")
    drawn = cuts_drawing([replace(cake_cut(), around=around)], ident="a")
    assert drawn.count("<path") == plain.count("<path") + 1


def test_the_share_at_the_core_weighs_the_rings_by_their_area() -> None:
    hot = replace(CUT, temp_c=tuple((20.0, 20.0, 20.0, 99.0) for _ in range(4)))
    assert "19 % of it at the core's 95 °C or more" in cuts_described([cake_cut(hot)])


def test_the_dry_top_has_its_colour_and_depth() -> None:
    drawing = cuts_drawing([cake_cut()], ident="a")
    scale = (328.0 - 2 * 22.0) / 20.0
    assert f'height="{0.2 * scale:.1f}" fill="#c89650"' in drawing


def test_columns_stand_beside_each_other() -> None:
    three = [replace(cake_cut(), section=replace(CUT, time_min=t)) for t in (5.0, 10.0, 15.0)]
    one = tree(cuts_drawing(three, ident="a", columns=1)).attrib["viewBox"].split()
    row = tree(cuts_drawing(three, ident="a", columns=3)).attrib["viewBox"].split()
    assert float(row[2]) == 3 * float(one[2]) + 2 * 20
    assert float(one[3]) > 3 * float(row[3])
