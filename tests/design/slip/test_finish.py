"""Drafts rounded to the scale and judged."""

import math

import pytest

from tests.design.slip.demo import F2_SLIP, rescued, way


@pytest.mark.parametrize("step_g", [0.1, 0.5, 1.0, 2.0])
def test_a_jar_is_what_is_over_on_this_scale(step_g: float) -> None:
    jar = way(rescued("F2", F2_SLIP, step_g=step_g), "jar")
    assert jar.jar is not None
    assert jar.jar.mass_g == pytest.approx(jar.total_g - 105)
    assert abs(jar.total_g - 136.5) <= step_g / 2 + 1e-6
    assert jar.worst_shift_pct == 0


def test_the_card_of_a_way_that_keeps_the_size_holds_the_planned_rest() -> None:
    found = rescued("F2", F2_SLIP)
    leave = way(found, "leave")
    assert leave.card_g == (40, 26, 30, 9, 6, 255, 130, 20, 1, 4, 4)


def test_a_line_in_two_bowls_grows_in_both_when_all_else_follows() -> None:
    found = rescued("F4", {"walnut": 125.0})
    follow = way(found, "follow")
    assert follow.factor == pytest.approx(155 / 145)
    assert follow.card_g[5] == pytest.approx(30 + 90 * 155 / 145, abs=0.05)


def test_total_is_the_sum_of_the_lines() -> None:
    for each in rescued("F2", F2_SLIP).ways:
        assert each.total_g == pytest.approx(math.fsum(row.mass_g for row in each.lines))


def test_figures_that_moved_stand_before_and_after() -> None:
    leave = way(rescued("F2", {"sugar": 140.0}), "leave")
    moved = {shift.figure: (shift.before, shift.after) for shift in leave.shifts}
    assert moved["sugar"][0] == pytest.approx(123.8, abs=0.05)
    assert moved["sugar"][1] == pytest.approx(133.3, abs=0.05)
    assert set(moved) == {"sugar", "sugar_per_egg"}


def test_a_larger_roulade_on_its_own_sheet_is_out_of_its_band() -> None:
    found = rescued("F3", {"sugar": 125.0}, density_g_ml=0.48)
    assert not way(found, "scale").in_band
    assert any(each.quantity == "batter_g_cm2" for each in way(found, "scale").findings)


def test_a_second_cake_is_judged_without_the_first_ones_tin() -> None:
    found = rescued("F3", {"white rice": 36.0}, density_g_ml=0.48)
    assert way(found, "second").in_band
