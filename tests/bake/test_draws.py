"""Draws: the nominal bake first, equal seeds equal, doubt as wide as its row says."""

import numpy as np
import pytest

from krume.bake import Oven, draw, nominal, wall
from krume.bake.parameters import value
from tests.bake.cases import BUTTER18


def test_the_first_draw_is_the_nominal_bake() -> None:
    many = draw(BUTTER18.batter, BUTTER18.oven, count=32, discrepancy=0.12)
    base = nominal(BUTTER18.batter, BUTTER18.oven)
    for name in base.__dataclass_fields__:
        assert getattr(many, name)[0] == pytest.approx(getattr(base, name)[0]), name
        assert len(getattr(many, name)) == 33, name


def test_equal_seeds_give_equal_draws_and_others_do_not() -> None:
    one, same = (draw(BUTTER18.batter, Oven(165), count=16, discrepancy=0.1) for _ in range(2))
    other = draw(BUTTER18.batter, Oven(165), count=16, discrepancy=0.1, seed=8)
    assert (one.heat == same.heat).all()
    assert not (one.heat == other.heat).all()


def test_the_doubt_about_an_oven_is_as_wide_as_said() -> None:
    many = draw(BUTTER18.batter, Oven(165, ln_heat_sd=0.25), count=512, discrepancy=0.12)
    assert np.log(many.heat[1:]).std() == pytest.approx(0.25, rel=0.02)
    assert np.log(many.factor[1:]).std() == pytest.approx(0.12, rel=0.02)
    assert many.oven_k[1:].std() == pytest.approx(5.0, rel=0.02)
    assert many.crust_diffusion.max() <= 0.045


def test_a_tubes_doubt_is_wider_towards_later_alone() -> None:
    even, late = (
        draw(BUTTER18.batter, Oven(165), count=256, discrepancy=0.25, late_discrepancy=late)
        for late in (None, 0.50)
    )
    assert late.factor[1:] == pytest.approx(
        np.where(even.factor[1:] > 1, even.factor[1:] ** 2, even.factor[1:])
    )
    assert np.median(late.factor[1:]) == pytest.approx(1.0, abs=0.01)


def test_only_a_fan_oven_has_a_doubt_of_its_wind() -> None:
    still, fan = (
        draw(BUTTER18.batter, Oven(165, fan=fan), count=128, discrepancy=0.12)
        for fan in (False, True)
    )
    assert np.ptp(still.film) == 0
    assert np.log(fan.film[1:]).std() == pytest.approx(value("spread-fan"), rel=0.03)


@pytest.mark.parametrize("material", ["aluminium", "dark", "silicone"])
def test_a_tins_wall_is_doubted_as_far_as_its_material_says(material: str) -> None:
    many = draw(BUTTER18.batter, Oven(165), count=512, discrepancy=0.12, material=material)
    assert np.log(many.tin[1:]).std() == pytest.approx(wall(material).ln_spread, rel=0.02)


def test_what_is_drawn_stays_within_its_rows() -> None:
    many = draw(BUTTER18.batter, Oven(165), count=512, discrepancy=0.12)
    for name, key in (
        ("gas_retention", "gas-retention"), ("core_margin", "core-margin"),
        ("vapour_conduction", "vapour-conduction"),
    ):  # fmt: skip
        drawn = getattr(many, name)
        assert value(f"{key}-low") <= drawn.min() and drawn.max() <= value(f"{key}-high"), name
    assert ((many.set_share > 0.5) & (many.set_share < 1)).all()
    assert np.median(many.set_share) == pytest.approx(value("set-done"), abs=0.001)


def test_what_is_drawn_together_is_not_drawn_alike() -> None:
    many = draw(BUTTER18.batter, Oven(165, fan=True), count=512, discrepancy=0.12)
    columns = np.array([getattr(many, name)[1:] for name in many.__dataclass_fields__])
    alike = np.abs(np.corrcoef(columns)) - np.eye(len(columns))
    assert alike.max() < 0.2
