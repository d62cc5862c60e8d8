"""What is drawn of a bake: cuts on the way to the end, the second tin at the same minute."""

from dataclasses import replace

import pytest

from krume.bake import Bake, likeliest
from krume.usecases import Asked, BakeWish
from krume.usecases.bake.bake import BakeGround, bake_ground, with_bake
from krume.usecases.bake.beside import beside_of
from krume.usecases.bake.other import other_of
from krume.usecases.bake.pictures import BakePictures, minutes_of, pictures_of, told_stretch


def _pictures(name: str, wish: BakeWish, asked: Asked) -> tuple[BakePictures, BakeGround, Bake]:
    ground = bake_ground(name, wish, asked)
    assert ground.batter is not None and ground.tin is not None and ground.oven is not None
    bake = likeliest(ground.batter, ground.tin, ground.oven)
    assert isinstance(bake, Bake)
    second = beside_of(ground, other_of(ground, wish, asked))
    result = with_bake(ground.bare.result, ground.batter, bake)
    found = pictures_of(ground, replace(result, beside=second.result), second)
    assert found is not None
    return found, ground, bake


@pytest.mark.parametrize("likely", [1.4, 3.0, 11.8, 33.8, 120.0])
def test_the_minutes_of_the_cuts_rise_to_the_end(likely: float) -> None:
    minutes = minutes_of(likely)
    assert minutes[-1] == likely
    assert list(minutes) == sorted(set(minutes))


def test_the_last_cut_is_at_its_core_and_the_top_is_the_last_cuts(demo: Asked) -> None:
    pictures, _, bake = _pictures("F1", BakeWish(), demo)
    assert len(pictures.cuts) == 6
    last = pictures.cuts[-1]
    assert last.section.time_min == pytest.approx(bake.minutes, abs=0.06)
    assert last.core_c == pytest.approx(95.0, abs=0.6)
    (top,) = pictures.tops
    assert top.delta_e == last.section.delta_e
    assert pictures.pair == ()
    assert told_stretch(pictures.cuts) == ""


def test_both_tins_are_cut_at_the_minute_the_first_is_ready(demo: Asked) -> None:
    wish = BakeWish(beside="dark round 26 cm")
    pictures, _, bake = _pictures("F1", wish, demo)
    own, other = pictures.pair
    assert own.section.time_min == other.section.time_min < bake.minutes
    assert own.section.radius_cm[-1] < other.section.radius_cm[-1]
    assert other.core_c > own.core_c
    assert "carry" not in pictures.course_svg()
    assert pictures.course_svg().count("<circle") > 3


def test_a_roulade_is_drawn_higher_than_wide_and_that_is_said(demo: Asked) -> None:
    pictures, _, _ = _pictures("F3", BakeWish(), demo)
    assert told_stretch(pictures.cuts).startswith("Heights are drawn ")


def test_all_ids_on_one_page_are_different(demo: Asked) -> None:
    import re

    pictures, _, _ = _pictures("F1", BakeWish(beside="dark round 26 cm"), demo)
    svgs = (
        pictures.course_svg(), pictures.course_svg(narrow=True), *pictures.cut_svgs(),
        *pictures.pair_svgs(), pictures.top_svg(),
    )  # fmt: skip
    ids = [each for svg in svgs for each in re.findall(r' id="([^"]+)"', svg)]
    assert len(ids) == len(set(ids))
