"""What a size is aimed at: the wished depth, the own tin's, or nothing at all."""

import pytest

from krume.size import SizeLine, SizeRequest, Tin
from krume.size.aim import aim_of, depth_at, lowest_rim_cm, problems_of

BATTER = (SizeLine("batter", 480.0),)
SMALL = Tin("", "round", diameter_cm=20.0, height_cm=7.0)
FLAT = Tin("", "sheet", length_cm=33.0, width_cm=23.0)


def test_the_aim_keeps_the_depth_of_the_own_tin() -> None:
    aim = aim_of(SizeRequest(BATTER, (FLAT,), SMALL, 0.48))
    assert aim.batter_ml == pytest.approx(1000.0)
    assert aim.depth_cm == aim.own_depth_cm == pytest.approx(1000 / 314.159265)
    assert aim.factor == pytest.approx(33 * 23 / 314.159265)


def test_a_wished_depth_stands_before_the_own_one() -> None:
    aim = aim_of(SizeRequest(BATTER, (FLAT,), SMALL, 0.48, depth_cm=1.0))
    assert aim.depth_cm == 1.0
    assert aim.factor == pytest.approx(0.759)


def test_depth_at_a_factor_is_the_batter_over_the_area() -> None:
    request = SizeRequest(BATTER, (FLAT,), SMALL, 0.48)
    assert depth_at(request, aim_of(request), 2.0) == pytest.approx(2000 / 759)
    unknown = SizeRequest(BATTER, (FLAT,), SMALL)
    assert depth_at(unknown, aim_of(unknown), 2.0) is None


def test_the_lowest_known_rim_counts() -> None:
    assert lowest_rim_cm(SizeRequest(BATTER, (SMALL, FLAT))) == 7.0
    assert lowest_rim_cm(SizeRequest(BATTER, (FLAT,))) is None


def test_nothing_is_asked_while_a_factor_is_known() -> None:
    request = SizeRequest(BATTER, (FLAT,), SMALL)
    assert problems_of(request, aim_of(request)) == ()
