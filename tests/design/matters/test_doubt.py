"""How far off a line may be: step, usual share, spread of eggs by count."""

from dataclasses import replace

import pytest

from krume.base import Interval
from krume.design import Formula, weigh_out
from krume.design.matters.doubt import Doubt, doubts, figure
from tests.design.studio import F1, F3, formula, item


def of(made: Formula, name: str, scale_g: float = 0.1) -> Doubt:
    found = doubts(made, weigh_out(made, scale_g=scale_g))
    return next(each for each in found if made.lines[each.line].name == name)


def test_many_grams_are_off_by_a_share_and_a_quarter_gram_by_a_step() -> None:
    assert of(F3, "caster sugar").slip_g == pytest.approx(100 * figure("slip-share") / 100)
    assert of(F3, "caster sugar").slip_from == "share"
    xanthan = of(F3, "xanthan gum")
    assert (xanthan.slip_g, xanthan.slip_from, xanthan.step_g) == (0.1, "step", 0.1)


def test_counted_eggs_are_off_by_their_spread_and_have_no_step() -> None:
    eggs = of(F1, "eggs")
    assert (eggs.slip_g, eggs.slip_from, eggs.step_g) == (20, "eggs", None)


def test_eggs_that_are_weighed_are_a_line_like_any_other() -> None:
    weighed = replace(item(255, "egg"), basis="weighed")
    found = of(formula("Weighed", (item(100, "white rice flour"), weighed)), "egg")
    assert (found.slip_from, found.step_g) == ("share", 0.1)


def test_a_mass_that_is_not_settled_is_off_by_its_half_width() -> None:
    cup = replace(item(140, "white rice flour"), mass_interval_g=Interval(120, 140, 160))
    found = of(formula("Cup", (cup, item(20, "potato starch"))), "white rice flour")
    assert (found.slip_g, found.slip_from) == (20, "spread")


def test_a_heavy_bowl_is_weighed_on_the_coarse_scale() -> None:
    heavy = formula("Heavy", (item(600, "white rice flour"), item(2, "fine salt")))
    assert of(heavy, "fine salt").step_g == 1


def test_a_line_without_a_mass_has_no_doubt_to_judge() -> None:
    made = formula("Pinch", (item(40, "white rice flour"), item(None, "xanthan gum")))
    assert [each.line for each in doubts(made, weigh_out(made))] == [0]
