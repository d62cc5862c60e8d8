"""From the oven's door to a cold cake."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from krume.bake import Cooling, Oven, cool
from krume.bake.cooling.at_door import AtDoor, at_door
from krume.bake.cooling.body import Course
from krume.bake.cooling.cooled import at_moment, joined, minutes_until
from krume.base import Infeasible, Interval, OutOfRangeError
from tests.bake.cases import CASES, Case, batter, tin

COVERS = ("cooled",)

BY_NAME = {case.name: case for case in CASES}
SPONGE, ROULADE, CHIFFON = (BY_NAME[name] for name in ("sponge20", "roulade", "chiffon"))


def _cool(case: Case, **changes: object) -> Cooling:
    given: dict[str, object] = {"count": 32, "height_cm": 5.0} | changes
    found = cool(case.batter, case.tin, case.oven, **given)  # type: ignore[arg-type]
    assert isinstance(found, Cooling)
    return found


@cache
def _sponge() -> Cooling:
    return _cool(SPONGE)


@cache
def _roulade() -> Cooling:
    return _cool(ROULADE, way="rolled", height_cm=1.3)


def _best(span: Interval | None) -> float:
    assert span is not None
    return span.best


def test_a_sponge_is_cut_before_it_is_filled_and_never_at_one_minute_alone() -> None:
    found = _sponge()
    assert found.split_min is not None
    assert found.fill_min is not None
    assert found.split_min.low < found.split_min.best < found.split_min.high
    assert found.split_min.best < found.fill_min.best
    assert found.roll_from_min is None
    assert found.notices[0].code == "cooling-is-a-range"


@pytest.mark.pin
def test_a_sponge_of_five_centimetres_is_cut_after_an_hour_and_forty_minutes() -> None:
    assert _best(_sponge().split_min) == pytest.approx(100, rel=0.05)


def test_a_sheet_is_rolled_within_minutes_and_the_window_lies_inside_its_ends() -> None:
    found = _roulade()
    window = found.roll_window_min
    assert window is not None
    assert _best(found.roll_from_min) <= window[0] < window[1] <= _best(found.roll_until_min)
    assert found.rolled_min is not None
    assert _best(found.roll_from_min) < found.rolled_min < _best(found.roll_until_min)
    assert found.split_min is None


def test_a_thicker_sheet_waits_longer_before_it_is_rolled() -> None:
    heavy = replace(ROULADE, batter=replace(ROULADE.batter, mass_g=600))
    thick = _cool(heavy, way="rolled", height_cm=2.0)
    assert _best(thick.roll_from_min) > _best(_roulade().roll_from_min)


def test_a_warmer_room_takes_longer_and_a_hot_one_never_gets_there() -> None:
    warm = _cool(SPONGE, room_c=25.0)
    assert _best(warm.split_min) > _best(_sponge().split_min)
    assert warm.fill_min is None
    texts = [n.text for n in warm.notices if n.code == "never-in-this-room"]
    assert len(texts) == 1
    assert "25 °C" in texts[0]
    assert "24 °C" in texts[0]


def test_a_cake_left_in_its_tin_cools_slower_than_one_turned_out() -> None:
    assert _best(_cool(SPONGE, way="tin").split_min) > _best(_sponge().split_min)


def test_a_cake_wrapped_warm_cools_slower_and_keeps_its_water() -> None:
    wrapped = _cool(SPONGE, turned_at_min=5.0, wrapped_at_min=10.0)
    assert _best(wrapped.split_min) > _best(_sponge().split_min)
    assert wrapped.water_g.best < _sponge().water_g.best


def test_a_heavier_cake_and_a_higher_one_cool_slower() -> None:
    heavy = replace(SPONGE, batter=replace(SPONGE.batter, mass_g=700))
    assert _best(_cool(heavy).split_min) > _best(_sponge().split_min)


def test_a_tube_hung_in_its_tin_is_slower_than_the_same_cake_on_a_rack() -> None:
    hung = _cool(CHIFFON, way="hung", height_cm=7.0)
    assert _best(hung.split_min) > _best(_cool(CHIFFON, height_cm=7.0).split_min)


def test_the_coarse_cells_agree_with_fine_ones() -> None:
    fine = _cool(SPONGE, cells=(14, 18))
    assert _best(fine.split_min) == pytest.approx(_best(_sponge().split_min), rel=0.015)


def test_one_even_start_at_the_core_moves_the_minutes_by_less_than_two_percent(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def even(*given: object, **named: object) -> AtDoor:
        cake = at_door(*given, **named)  # type: ignore[arg-type]
        return replace(cake, start_k=np.full_like(cake.start_k, 95.0 + 273.15))

    monkeypatch.setattr("krume.bake.cooling.after_oven.at_door", even)
    assert _best(_cool(SPONGE).split_min) == pytest.approx(_best(_sponge().split_min), rel=0.02)


def test_equal_questions_have_equal_answers() -> None:
    assert _cool(SPONGE) == _sponge()


def test_the_curve_falls_and_its_spread_holds_the_likeliest() -> None:
    curve = _sponge().curve
    # In the first minute a hot tin still warms the crumb at it.
    later = [at for time, at in zip(curve.time_min, curve.warmest_c, strict=True) if time > 1]
    assert (np.diff(later) < 0).all()
    assert curve.warmest_c[-1] < 25
    inside = [low <= at <= high for low, at, high in
              zip(curve.low_c, curve.warmest_c, curve.high_c, strict=True)]  # fmt: skip
    assert all(inside[1:])
    assert curve.time_min[0] == 0.0


def test_a_batter_that_the_oven_never_bakes_is_never_cooled() -> None:
    found = cool(SPONGE.batter, SPONGE.tin, Oven(95))
    assert isinstance(found, Infeasible)
    assert found.clashes[0].name == "oven"


@pytest.mark.parametrize(
    ("changes", "field", "words"),
    [
        ({"room_c": 60.0}, "room_c", "60 °C"),
        ({"room_c": -3.0}, "room_c", "5 to 35 °C"),
        ({"way": "swung"}, "way", "rack, hung, rolled, tin"),
        ({"humidity_pct": 120.0}, "humidity_pct", "between 5 and 95"),
        ({"height_cm": 0.0}, "height_cm", "0.3 to 20 cm"),
        ({"height_cm": 5.0, "way": "rolled"}, "height_cm", "A sheet to be rolled"),
        ({"turned_at_min": -1.0}, "turned_at_min", "0 to 720"),
        ({"turned_at_min": 20.0, "wrapped_at_min": 10.0}, "wrapped_at_min", "turned out later"),
    ],
)
def test_what_cannot_be_is_refused_in_words(
    changes: dict[str, object], field: str, words: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        _cool(SPONGE, **changes)
    assert refused.value.field == field
    assert words in refused.value.message


@pytest.mark.parametrize(
    ("where", "mass", "way"),
    [
        ("glass round 26 x 8 cm", 1200, "rack"),
        ("silicone loaf 21.5x11.5x7 cm", 700, "rack"),
        ("dark square 20 x 6 cm", 500, "tin"),
        ("tube 20 x 10 cm hole 6 cm", 500, "hung"),
        ("sheet 33x22.9x2.5 cm", 200, "rolled"),
        ("round 20 x 7 cm", 60, "rack"),
    ],
)
def test_every_tin_and_way_comes_down_in_order(where: str, mass: float, way: str) -> None:
    found = cool(batter("hazel", mass), tin(where), Oven(170), way=way, count=8)
    assert isinstance(found, Cooling)
    ends = [span for span in (found.wrap_min, found.fill_min) if span is not None]
    assert len(ends) == 2
    assert ends[0].best < ends[1].best
    assert all(span.low <= span.best <= span.high for span in ends)
    assert found.water_g.low >= 0


def test_a_sheet_that_lost_most_of_its_water_still_cools() -> None:
    thin = cool(batter("hazel", 60), tin("round 26 x 8 cm"), Oven(230), count=8)
    assert isinstance(thin, Cooling)
    assert 0 < _best(thin.split_min) < _best(thin.fill_min) < _best(_sponge().split_min)
    assert all(np.isfinite(thin.curve.warmest_c))


def test_a_window_without_a_whole_minute_is_none() -> None:
    tight = replace(_roulade(), roll_until_min=Interval(2, 2.4, 4))
    assert tight.roll_window_min is None
    assert replace(tight, roll_from_min=None).roll_window_min is None


def _course(temps: list[list[float]], start: float = 0.0) -> Course:
    rows = np.array(temps, dtype=np.float64)
    time = start + 60.0 * np.arange(len(rows), dtype=np.float64)
    none = np.zeros_like(rows)
    return Course(time, rows, rows, rows, none, none, none)


def test_draws_that_never_come_down_count_as_later_than_all_others() -> None:
    falling = [400.0, 300.0, 290.0]
    many = _course([[at] * 30 for at in falling])
    late = np.ones(30)
    found = minutes_until(many, 300.0 - 273.15, late)
    assert found is not None
    assert (found.low, found.high) == (1, 1)
    assert found.best == pytest.approx(1.0)
    stuck = _course([[at] * 26 + [400.0] * 4 for at in falling])
    assert minutes_until(stuck, 300.0 - 273.15, late) is None


def test_two_courses_joined_go_on_where_the_first_was_cut() -> None:
    first, second = _course([[400.0], [380.0], [360.0]]), _course([[370.0], [350.0]])
    both = joined(first, second, 90.0)
    assert both.time_s.tolist() == [0.0, 60.0, 90.0, 150.0]
    assert at_moment(first, "hottest_k", 90.0).tolist() == [370.0]


def test_a_cup_of_a_tray_cools_like_one_cup() -> None:
    one = cool(batter("butter", 55), tin("round 6.3 x 4 cm"), Oven(175), count=16)
    assert isinstance(one, Cooling)
    assert _best(one.split_min) < 60
