"""The lines to weigh twice, compared in half-widths of their bands."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval
from krume.design import Formula, Matters, matters, scaled, weigh_out
from krume.design.matters.twice import LineMatter
from tests.design.studio import C1, C2, F1, F3, F4, F5, S1, formula, item

MADE = (F1, F3, F4, F5, C1, C2, S1)


def judged(made: Formula, scale_g: float = 0.1) -> Matters:
    return matters(made, weigh_out(made, scale_g=scale_g))


def line(found: Matters, name: str) -> LineMatter:
    return next(each for each in found.lines if each.line.name == name)


def test_a_step_of_the_roulades_xanthan_is_far_out_of_its_band() -> None:
    first = judged(F3).twice[0]
    effect = first.effect
    assert (first.matter.line.name, first.mark, effect.band.quantity) == (
        "xanthan gum",
        "twice",
        "xanthan",
    )
    assert effect.band.high - effect.band.low == pytest.approx(0.2)
    assert effect.step_change == pytest.approx(0.142857, abs=1e-6)
    assert effect.step_effect == pytest.approx(1.42857, abs=1e-5)
    assert effect.leaves
    assert "One step of 0.1 g of xanthan gum" in first.text
    assert "xanthan by 0.14 points; usual is 0.3 to 0.5 %" in first.text


def test_counted_eggs_are_to_be_weighed() -> None:
    found = judged(F1)
    assert [(each.matter.line.name, each.mark) for each in found.twice] == [
        ("eggs", "weigh"),
        ("caster sugar", "twice"),
    ]
    assert found.text == "Weigh twice: caster sugar. Weigh the eggs (by count ± 20 g)."


def test_where_nothing_matters_that_is_said() -> None:
    found = judged(C2)
    assert found.twice == ()
    assert found.text.startswith("No line needs weighing twice")


def test_without_a_family_nothing_is_judged_and_that_is_said() -> None:
    found = judged(formula("What", (item(50, "white rice flour"),)))
    assert found.lines == ()
    assert "cannot be said" in found.text


def test_a_line_without_a_mass_is_named_as_not_judged() -> None:
    lines = (item(100, "white rice flour"), item(130, "caster sugar"), item(None, "xanthan gum"))
    found = judged(formula("Pinch", lines, family="separated"))
    assert "Not judged: xanthan gum, no mass is known." in found.text


def test_more_lines_than_anybody_weighs_are_not_worked_out_and_that_is_said() -> None:
    many = formula("Many", tuple(item(5, "white rice flour") for _ in range(101)))
    assert judged(many).lines == ()
    assert judged(many).text == "More than 100 lines: which weighing matters is not worked out."


def test_three_lines_at_most_are_named_and_the_largest_first() -> None:
    for made in MADE:
        scores = [each.score for each in judged(made).lines]
        assert scores == sorted(scores, reverse=True)
        assert len(judged(made).twice) <= 3


@given(scale_g=st.sampled_from([0.01, 0.05, 0.1, 0.2]))
def test_the_effect_of_a_step_grows_with_the_step(scale_g: float) -> None:
    fine, coarse = (line(judged(F3, g), "caster sugar") for g in (scale_g, 2 * scale_g))
    assert coarse.step_score == pytest.approx(2 * fine.step_score, rel=1e-6)


@pytest.mark.parametrize("made", MADE, ids=lambda made: str(made.name))
def test_a_formula_and_its_scale_ten_times_larger_rank_alike(made: Formula) -> None:
    # Without its tin: what lies on a square centimetre of sheet does grow. These steps are not
    # those of a fine scale, so that no bowl is too heavy for it.
    made = replace(made, tin=None)
    small, large = judged(made, 0.2), judged(scaled(made, 10.0), 2.0)
    assert [e.doubt.line for e in small.lines] == [e.doubt.line for e in large.lines]
    for one, other in zip(small.lines, large.lines, strict=True):
        assert one.score == pytest.approx(other.score, rel=1e-6, abs=1e-9)
        assert one.step_score == pytest.approx(other.step_score, rel=1e-6, abs=1e-9)


def test_no_more_can_be_missing_than_there_is() -> None:
    # Half a gram of starch with 2 g of rice, on a scale of 1 g: 20 %, then 43 % or none at all.
    lines = (item(2, "white rice flour"), item(0.5, "potato starch"))
    found = judged(formula("Crumb", lines, family="separated"), 1.0)
    effects = {each.band.quantity: each for each in line(found, "potato starch").effects}
    assert effects["starch"].step_change == pytest.approx(100 * (1.5 / 3.5 - 0.2))


def test_a_spread_that_is_not_settled_can_make_a_line_matter() -> None:
    lines = (item(100, "white rice flour"), item(250, "egg"), item(130, "caster sugar"))
    sure = judged(formula("Cup", lines, family="separated"))
    cup = replace(lines[0], mass_interval_g=Interval(70, 100, 130))
    unsure = judged(formula("Cup", (cup, *lines[1:]), family="separated"))
    assert line(unsure, "white rice flour").score > 2 * line(sure, "white rice flour").score
