"""The setting of a blend: the solver's task says what was typed, and a second look agrees."""

import pytest

from krume.usecases import Asked, BlendWish
from krume.usecases.blend.request import read_request
from krume.usecases.blend.setting import (
    Setting,
    broken,
    distance,
    got,
    known,
    lines,
    task_of,
    told,
)
from tests.usecases.blends import FLOURS, WITHOUT_TEFF

PAPER = (46.0, 14.0, 4.0, 28.0, 4.0, 9.0)


@pytest.fixture
def setting(demo: Asked) -> Setting:
    """The setting of F2 without teff."""
    found = read_request(WITHOUT_TEFF, demo).setting
    assert found is not None
    return found


def test_grams_are_percent_of_the_total_for_the_solver(setting: Setting) -> None:
    by_name = {limit.name: limit for limit in task_of(setting).limits}
    assert by_name["sweet rice"].low_pct == pytest.approx(900 / 105)
    assert (by_name["starch"].low_pct, by_name["starch"].high_pct) == (30.0, 50.0)
    assert by_name["starch"].members == (3, 4)


def test_limits_follow_their_flours_when_one_is_left_out(setting: Setting) -> None:
    narrowed = setting.without(frozenset({"flour-buckwheat-whole"}))
    limits = task_of(narrowed).limits
    assert [limit.members for limit in limits if limit.name == "starch"] == [(2, 3)]
    assert "buckwheat" not in [limit.name for limit in limits]


def test_the_blend_worked_out_on_paper_breaks_nothing(setting: Setting) -> None:
    assert broken(setting, PAPER) == ()


def test_each_limit_that_a_blend_breaks_is_named_as_it_was_typed(setting: Setting) -> None:
    assert broken(setting, (40, 20, 0, 30, 6, 9)) == ("buckwheat <= 16 g",)
    assert broken(setting, (20, 14, 20, 28, 4, 19)) == ("sweet rice 9 g", "rice >= 25 g")


def test_what_it_holds_is_the_mean_by_mass(setting: Setting) -> None:
    held = got(setting, PAPER)
    assert held["fat"] == pytest.approx(
        (46 * 1.42 + 14 * 3.1 + 4 * 4.25 + 28 * 0.2 + 4 * 0.05 + 9 * 1.0) / 105
    )
    assert distance(setting, held) > 0
    assert distance(setting, dict(setting.target)) == 0


def test_only_what_goes_in_is_a_line_with_its_share(setting: Setting) -> None:
    rows = lines(setting, (60.0, 0.0, 0.0, 36.0, 0.0, 9.0))
    assert [row.mass_g for row in rows] == [60.0, 36.0, 9.0]
    assert sum(row.share_pct for row in rows) == pytest.approx(100)
    assert [row.was_g for row in rows] == [40.0, 30.0, 9.0]


def test_limits_are_told_in_the_unit_they_were_typed_in(setting: Setting) -> None:
    by_name = {limit.name: limit for limit in told(setting)}
    assert (by_name["starch"].low_pct, by_name["starch"].low_g) == (30.0, None)
    assert (by_name["rice"].low_pct, by_name["rice"].low_g) == (None, 25.0)
    assert by_name["starch"].members == ("starch-potato-ciqual", "starch-corn")


@pytest.mark.parametrize(
    ("wish", "said"),
    [
        (BlendWish(FLOURS, match="F2", most_flours=5), "at most 5 flours"),
        (BlendWish(FLOURS, match="F2", least_g=5.0), "at least 5 g of each"),
        (BlendWish(FLOURS, match="F2", most_price_per_kg=3.0), "at most 3 per kg"),
        (BlendWish(FLOURS, match="F2", limits=("protein >= 6",)), "protein >= 6"),
    ],
)
def test_the_second_look_sees_what_stands_in_no_limit(
    demo: Asked, wish: BlendWish, said: str
) -> None:
    found = read_request(wish, demo).setting
    assert found is not None
    assert broken(found, PAPER) == (said,)


def test_a_blank_that_was_not_asked_about_is_a_fault(demo: Asked) -> None:
    wish = BlendWish("white rice flour, green banana flour", match="F2")
    flours = read_request(wish, demo).flours
    with pytest.raises(TypeError, match="green banana flour has no protein"):
        known(flours[1], "protein")
