"""How a cake stands while it cools, and what is not known of it."""

from dataclasses import fields

import numpy as np
import pytest

from krume.bake import Oven, likeliest
from krume.bake.cooling.at_door import AtDoor, at_door
from krume.bake.cooling.spread import cooling_draws
from krume.bake.cooling.ways import (
    as_roll,
    cooling_ways,
    in_tin,
    on_cloth,
    on_rack,
    rolled_up,
)
from krume.bake.grid import Cells
from krume.bake.parameters import value
from krume.bake.prediction import Bake
from krume.bake.section import sections
from krume.design import families
from tests.bake.cases import batter, tin

COVERS = ("at_door", "spread")

DRAWS = cooling_draws(21.0, room_doubt_k=1.5, humidity_pct=None, count=16, seed=7)


def _cake(name: str, mass: float, where: str) -> AtDoor:
    dough, form, oven = batter(name, mass), tin(where), Oven(170)
    bake = likeliest(dough, form, oven)
    assert isinstance(bake, Bake)
    (cut,) = sections(dough, form, oven, at_min=[bake.minutes])
    return at_door(
        dough, form, oven, cut, DRAWS, loss_pct=bake.loss_pct, height_cm=5.0, cells=Cells()
    )


def test_every_family_of_batters_baked_by_the_model_has_its_way() -> None:
    batters = {each.key for each in families() if each.kind == "batter"}
    assert batters - set(cooling_ways()) == {"tart"}
    assert cooling_ways()["chiffon"].way == "hung"
    assert cooling_ways()["roulade"].way == "rolled"


def test_a_cake_weighs_at_the_door_what_the_bake_left_of_it() -> None:
    cake = _cake("hazel", 540, "round 20 x 7 cm")
    whole_g = float(cake.body.cell_mass[0].sum()) * cake.whole_g_per_kg
    assert 0.9 * 540 < whole_g < 540


def test_a_rectangle_counts_its_whole_mass_though_its_cylinder_is_smaller() -> None:
    cake = _cake("butter", 1000, "sheet 33x22.9x2.5 cm")
    assert cake.whole_g_per_kg > 1000
    whole_g = float(cake.body.cell_mass[0].sum()) * cake.whole_g_per_kg
    assert 900 < whole_g < 1000


def test_only_the_top_is_bare_in_the_tin_and_all_is_bare_on_the_rack() -> None:
    cake = _cake("hazel", 540, "round 20 x 7 cm").cake
    tinned, bare = in_tin(cake, 600), on_rack(cake, 3600)
    assert tinned.top.breath is not None
    assert tinned.bottom.breath is None
    assert tinned.side is not None
    assert tinned.side.store > 0
    assert bare.bottom.breath is not None
    assert bare.bottom.store == 0.0


def test_hung_upside_down_the_floor_of_the_tin_looks_up() -> None:
    cake = _cake("chiffon", 550, "tube 20 x 10 cm hole 6 cm").cake
    hung, upright = in_tin(cake, 600, hung=True), in_tin(cake, 600)
    assert hung.bottom.film.slope == upright.top.film.slope
    assert hung.top.film.slope == upright.bottom.film.slope
    assert hung.inner is not None


def test_foil_lets_no_water_pass() -> None:
    cake = _cake("hazel", 540, "round 20 x 7 cm").cake
    wrapped = on_rack(cake, 3600, wrapped=True)
    assert wrapped.top.breath is None
    assert wrapped.top.layer == pytest.approx(0.01)


def test_a_sheet_on_its_cloth_breathes_upwards_only_and_a_roll_through_one_layer() -> None:
    cake = _cake("roulade", 400, "sheet 33x22.9x2.5 cm").cake
    flat, roll = on_cloth(cake, 600), as_roll(cake, 0.07, 3600)
    assert flat.bottom.breath is None
    assert flat.top.breath is not None
    assert roll.side is not None
    assert np.asarray(roll.side.breath).tolist() == [[300.0]] * len(cake.draws)
    assert roll.side.layer == pytest.approx(1 / 60, rel=1e-6)


def test_a_thicker_sheet_makes_a_thicker_roll_of_the_same_length() -> None:
    thin, thick = rolled_up(0.33, 0.229, 0.010), rolled_up(0.33, 0.229, 0.014)
    assert thin[0] < thick[0]
    assert thin[1] == thick[1] == 0.33


def test_the_first_draw_is_the_nominal_one_and_equal_seeds_are_equal() -> None:
    again = cooling_draws(21.0, room_doubt_k=1.5, humidity_pct=None, count=16, seed=7)
    assert DRAWS.film[0] == DRAWS.crust[0] == DRAWS.factor[0] == 1.0
    assert DRAWS.room_k[0] == pytest.approx(294.15)
    assert np.array_equal(DRAWS.film, again.film)
    assert len(DRAWS) == 17
    assert ((DRAWS.humidity >= 0.05) & (DRAWS.humidity <= 0.95)).all()


def test_a_humidity_that_is_said_is_doubted_less() -> None:
    said = cooling_draws(21.0, room_doubt_k=1.5, humidity_pct=50, count=64, seed=7)
    guessed = cooling_draws(21.0, room_doubt_k=1.5, humidity_pct=None, count=64, seed=7)
    assert said.humidity[1:].std() < guessed.humidity[1:].std() / 2


def test_every_doubt_of_a_cooling_is_drawn_and_the_pores_as_in_the_oven() -> None:
    for each in fields(DRAWS):
        assert np.ptp(getattr(DRAWS, each.name)[1:]) > 0, each.name
    low, high = value("vapour-conduction-low"), value("vapour-conduction-high")
    shares = np.sort(DRAWS.pore_share[1:])
    assert DRAWS.pore_share[0] == value("vapour-conduction")
    assert shares == pytest.approx(low + (high - low) * (np.arange(16) + 0.5) / 16)
