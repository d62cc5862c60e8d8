"""What a way does to the figures."""

import pytest

from krume.design.slip.bowl import bowls_of
from krume.design.slip.judging import at_masses, figure_of, judge_of, shares_pct, worst_shift_pct
from tests.design.slip.demo import F2_SLIP, formula, slip_of


def _plan(name: str) -> list[float | None]:
    return [line.mass_g for line in formula(name).lines]


@pytest.mark.parametrize("name", ["F1", "F2", "F3", "F4", "F5", "F6", "F7"])
def test_the_plan_itself_is_in_band_and_moves_nothing(name: str) -> None:
    judge = judge_of(slip_of(name, {}))
    after = judge.after(_plan(name))
    assert judge.is_in_band(after)
    assert judge.shifts(after) == ()
    assert worst_shift_pct(judge.slip, None, None, _plan(name)) == 0


def test_a_figure_that_was_outside_may_stay_but_not_go_further() -> None:
    from dataclasses import replace

    found = formula("F2")
    lines = list(found.lines)
    lines[6] = replace(lines[6], mass_g=180.0, amount=180.0)
    judge = judge_of(slip_of(replace(found, lines=tuple(lines)), {}))
    assert judge.plan.findings
    card = [line.mass_g for line in lines]
    assert judge.is_in_band(judge.after(card))
    card[6] = 190.0
    assert not judge.is_in_band(judge.after(card))
    assert judge.new_findings(judge.after(card))


def test_so_much_nut_that_it_is_another_cake_is_judged_by_the_nut_sponges_ranges() -> None:
    judge = judge_of(slip_of("F1", {}))
    card = _plan("F1")
    card[4] = 62.0
    after = judge.after(card)
    assert (judge.plan.family, after.family) == ("separated", "nut")
    assert judge.is_in_band(after) is (not after.findings) is True
    card[4] = 62.0
    card[6] = 300.0
    assert not judge.is_in_band(judge.after(card))


def test_shares_are_of_flours_and_starches() -> None:
    slip = slip_of("F1", {"buckwheat": 60.0})
    bowl = bowls_of(slip).slip
    assert bowl is not None
    shares = shares_pct(bowl, tuple(item.plan_g for item in bowl.items))
    assert sum(shares[:4]) == pytest.approx(100)
    assert shares[4] == pytest.approx(38.46, abs=0.005)


def test_a_shift_outside_a_blend_is_in_percent_of_the_ratio_to_egg() -> None:
    slip = slip_of("F2", {"sugar": 140.0})
    card = _plan("F2")
    card[6] = 140.0
    assert worst_shift_pct(slip, None, None, card) == pytest.approx(100 * 10 / 130)


def test_without_eggs_a_shift_is_against_the_whole() -> None:
    card = _plan("C2")
    card[1] = 280.0
    slip = slip_of("C2", {"yoghurt": 280.0})
    assert worst_shift_pct(slip, None, None, card) == pytest.approx(
        (280 / 260 * 853 / 873 - 1) * 100
    )


def test_a_shift_in_a_blend_is_in_points() -> None:
    slip = slip_of("F2", F2_SLIP)
    bowl = bowls_of(slip).slip
    ends = (40.0, 26.0, 30.0, 9.0, 6.0)
    assert worst_shift_pct(slip, bowl, ends, _plan("F2")) == pytest.approx(26 / 1.11 - 20 / 1.05)


def test_eggs_are_counted_anew_at_other_masses() -> None:
    card = _plan("F2")
    card[5] = 306.0
    found = at_masses(formula("F2"), card)
    assert found.lines[5].amount == pytest.approx(6.0)
    assert found.lines[5].unit == "each"
    assert found.lines[0] is formula("F2").lines[0]


def test_figures_are_found_by_their_bands_key() -> None:
    plan = judge_of(slip_of("F3", {})).plan
    assert figure_of(plan, "sugar_per_egg") == pytest.approx(0.490, abs=5e-4)
    assert figure_of(plan, "batter_g_cm2") == pytest.approx(0.527, abs=5e-4)
    assert figure_of(plan, "starch") == pytest.approx(31.4, abs=0.05)
    assert figure_of(plan, "no such") is None
