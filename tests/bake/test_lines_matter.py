"""What a usual slip of each line does to a bake, against bakes run one by one."""

from dataclasses import replace
from functools import cache

import pytest

from krume.bake import LineBake, LinesBake, Oven, batter_of, depth_cm, lines_bake, simulate
from krume.design import Doubt, Formula, doubts, weigh_out, with_masses
from krume.size import Tin, read_tin
from tests.design.studio import formula, item

LINES = (item(100, "white rice flour"), item(250, "egg"), item(130, "caster sugar"))
MADE = formula("Three", (*LINES, item(1, "fine salt")), family="separated")
HELD = doubts(MADE, weigh_out(MADE))
GIVEN = {"family": "separated", "density_g_ml": 0.48, "density_measured": False}


def tin() -> Tin:
    found = read_tin("round 20 x 7 cm").value
    assert found is not None
    return found


def bake_of(made: Formula) -> tuple[float, float, float]:
    batter = batter_of(made, **GIVEN).value  # type: ignore[arg-type]
    assert batter is not None
    bake = simulate(batter, tin(), Oven(170))
    return bake.minutes, depth_cm(batter, tin()), bake.loss_pct


@cache
def found(temp_c: float = 170.0, held: tuple[Doubt, ...] = HELD) -> LinesBake:
    answer = lines_bake(MADE, held, tin(), Oven(temp_c), seed=7, **GIVEN)  # type: ignore[arg-type]
    assert answer is not None
    return answer


def line(of: LinesBake, index: int) -> LineBake:
    return next(each for each in of.lines if each.line == index)


@pytest.mark.parametrize("index", [0, 1, 2])
def test_a_slip_is_half_the_difference_of_two_bakes(index: int) -> None:
    doubt = HELD[index]
    up, down = (
        bake_of(with_masses(MADE, {index: doubt.mass_g + sign * doubt.slip_g})) for sign in (1, -1)
    )
    each = line(found(), index)
    assert each.slip_min == pytest.approx((up[0] - down[0]) / 2, abs=1e-9)
    assert each.slip_depth_mm == pytest.approx((up[1] - down[1]) * 5, abs=1e-9)
    assert each.slip_loss_pct == pytest.approx((up[2] - down[2]) / 2, abs=1e-9)


def test_depth_grows_by_grams_over_floor_and_density() -> None:
    for each in found().lines:
        area_cm2 = 314.159265
        assert each.slip_depth_mm == pytest.approx(10 * each.slip_g / 0.48 / area_cm2, rel=1e-6)


def test_more_egg_bakes_longer_and_a_pinch_of_salt_is_lost_in_the_models_steps() -> None:
    assert line(found(), 1).slip_min > 0.3
    assert line(found(), 1).shows
    assert not line(found(), 3).shows
    assert 0 < found().noise_min < 0.1


def test_a_step_is_the_slope_over_one_step_of_the_scale() -> None:
    egg = line(found(), 1)
    assert egg.step_min == pytest.approx(egg.slip_min * 0.1 / egg.slip_g)


def test_counted_eggs_have_no_step() -> None:
    counted = replace(HELD[1], step_g=None, wide_g=20.0, slip_g=20.0, slip_from="eggs")
    answer = found(170.0, (HELD[0], counted))
    assert line(answer, 1).step_min is None
    assert answer.lines[0].line == 1


def test_shares_add_up_to_one_and_the_sum_of_single_effects_nearly_holds() -> None:
    answer = found()
    assert sum(each.share for each in answer.lines) == pytest.approx(1)
    assert answer.miss_min < 0.2 * answer.sd_min


def test_a_hotter_oven_bakes_sooner_and_a_denser_batter_later() -> None:
    rivals = {each.key: each for each in found().rivals}
    assert rivals["oven"].minutes > 0
    assert rivals["oven"].half_width == 5
    assert rivals["density"].half_width == 15
    assert rivals["density"].minutes > 0


def test_an_oven_doubted_less_moves_the_minutes_less() -> None:
    narrow = replace(Oven(170), temp_half_width_c=1.0)
    answer = lines_bake(MADE, HELD[:1], tin(), narrow, seed=7, **GIVEN)  # type: ignore[arg-type]
    assert answer is not None
    wide = found().rivals[0]
    assert answer.rivals[0].minutes == pytest.approx(wide.minutes / 5, rel=0.1)


def test_where_the_bake_never_ends_there_is_nothing_to_compare() -> None:
    answer = lines_bake(MADE, HELD, tin(), Oven(101), seed=7, **GIVEN)  # type: ignore[arg-type]
    assert answer is None


def test_a_slip_larger_than_its_line_leaves_some_of_it() -> None:
    pinch = Doubt(3, 1.0, 5.0, 0.05, 5.0, "step")
    answer = found(170.0, (pinch,))
    assert line(answer, 3).slip_depth_mm == pytest.approx(10 * 5 / 0.48 / 314.159265, rel=1e-6)


def test_equal_seeds_give_equal_answers() -> None:
    again = lines_bake(MADE, HELD, tin(), Oven(170), seed=7, **GIVEN)  # type: ignore[arg-type]
    assert again == found()
