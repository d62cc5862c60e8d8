"""A torte on the road: better boxes are colder, and nothing gets warmer than the air."""

from itertools import pairwise

import pytest

from krume.base import NotFoundError, OutOfRangeError
from krume.keep.frozen import ColdBody, Road, on_the_road
from tests.keep.frozen.test_times import TORTE


def test_a_better_box_keeps_it_colder() -> None:
    found = [on_the_road(TORTE, Road(60.0, 30.0, box)) for box in ("none", "card", "bag", "foam")]
    warmest = [each.warmest_c.best for each in found]
    assert warmest == sorted(warmest, reverse=True)
    assert all(each.warmest_c.high <= 32.0 for each in found)


def test_ice_keeps_it_colder_and_melts() -> None:
    found = [on_the_road(TORTE, Road(240.0, 30.0, "foam", packs)) for packs in (0.0, 400.0, 1500.0)]
    assert all(a.warmest_c.best > b.warmest_c.best for a, b in pairwise(found))
    assert found[0].ice_left_g.high == 0.0
    assert 0.0 <= found[1].ice_left_g.low <= found[1].ice_left_g.high < 400 * 0.9


def test_longer_is_warmer_and_a_cold_winters_day_stays_within() -> None:
    short, long = (on_the_road(TORTE, Road(minutes, 25.0)) for minutes in (20.0, 90.0))
    assert short.warmest_c.best < long.warmest_c.best
    assert on_the_road(TORTE, Road(40.0, 2.0, start_c=3.0)).verdict == "within"
    assert long.verdict == "over"
    assert long.until_warm_min is not None
    assert long.until_warm_min.low <= long.until_warm_min.high


def test_no_road_at_all_is_as_cold_as_the_fridge() -> None:
    found = on_the_road(TORTE, Road(0.0, 30.0, start_c=4.0))
    assert found.warmest_c.best == pytest.approx(4.0, abs=1e-6)
    assert found.verdict == "within"


@pytest.mark.parametrize(
    "wrong",
    [
        {"minutes": -1.0}, {"minutes": 9999.0}, {"outside_c": 90.0}, {"packs_g": -5.0},
        {"start_c": 20.0}, {"outside_c": float("nan")},
    ],
)  # fmt: skip
def test_a_road_that_is_none_is_refused(wrong: dict[str, float]) -> None:
    with pytest.raises(OutOfRangeError, match="asked about from"):
        Road(**{"minutes": 30.0, "outside_c": 20.0, **wrong})  # type: ignore[arg-type]


def test_an_unknown_box_is_asked_with_those_that_are_known() -> None:
    with pytest.raises(NotFoundError, match="none, card, bag, foam"):
        Road(30.0, 20.0, "basket")


def test_a_body_is_the_same_whatever_it_is_asked_before() -> None:
    assert isinstance(TORTE, ColdBody)
    road = Road(35.0, 21.0)
    assert on_the_road(TORTE, road) == on_the_road(TORTE, road)
