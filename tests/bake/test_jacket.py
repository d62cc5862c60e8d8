"""What stands round the tin: slower edges, hotter bottoms, water that never boils over."""

from dataclasses import replace
from functools import cache
from itertools import pairwise

import numpy as np
import pytest

from krume.bake import Around, Bake, Cells, nominal, sections, simulate
from krume.bake.around import around_value
from krume.bake.engine import follow
from krume.bake.jacket import layer_step
from krume.bake.prediction import case_of
from krume.bake.state import Setup, State
from tests.bake.cases import BUTTER18, CASES


@cache
def _bake(around: Around) -> Bake:
    return simulate(BUTTER18.batter, BUTTER18.tin, replace(BUTTER18.oven, around=around))


def _edge_c(around: Around, minute: float) -> tuple[float, float]:
    """Temperature of the side half way up, and of the middle of the bottom."""
    oven = replace(BUTTER18.oven, around=around)
    (cut,) = sections(BUTTER18.batter, BUTTER18.tin, oven, at_min=[minute])
    return cut.temp_c[3][-1], cut.temp_c[0][0]


def _end(around: Around, until_min: float = 60.0) -> tuple[Setup, State]:
    oven = replace(BUTTER18.oven, around=around)
    setup = case_of(BUTTER18.batter, BUTTER18.tin, oven, nominal(BUTTER18.batter, oven), Cells())
    state = None
    for each in follow(setup, until_s=60 * until_min):
        state = each
    if state is None:
        raise LookupError("no step")
    return setup, state


def test_a_wet_strip_keeps_the_edge_cool_and_the_bake_longer() -> None:
    bare, wrapped = _edge_c(Around(), 45), _edge_c(Around(jacket="wrapped"), 45)
    assert bare[0] > 100 and 70 < wrapped[0] < 85
    assert 1.1 < _bake(Around(jacket="wrapped")).minutes / _bake(Around()).minutes < 1.5


def test_a_strip_dries_and_then_lets_the_edge_grow_hot() -> None:
    setup, early = _end(Around(jacket="wrapped"), 20)
    assert setup.layers is not None
    assert 0 < early.layer_water.min() < around_value("wrapped-water")
    _, late = _end(Around(jacket="wrapped"), 190)
    assert late.layer_water.max() < 0.01
    assert late.layer.min() > setup.layers.boiling_k


def test_a_tin_in_water_never_gets_hotter_than_the_water_boils() -> None:
    setup, state = _end(Around(jacket="water"), 60)
    assert setup.layers is not None
    side, bottom = _edge_c(Around(jacket="water"), 60)
    assert side < 100 and bottom < 100
    assert (state.layer <= setup.layers.boiling_k + 1e-9).all()
    assert state.layer.mean() - 273.15 == pytest.approx(84, abs=4)


def test_water_boils_away_no_faster_than_there_is_of_it() -> None:
    oven = replace(BUTTER18.oven, temp_c=300.0, around=Around(jacket="wrapped"))
    setup = case_of(BUTTER18.batter, BUTTER18.tin, oven, nominal(BUTTER18.batter, oven), Cells())
    held = [each.layer_water.min() for each in follow(setup, until_s=7200)]
    assert held[-1] > -0.02
    assert all(late <= early for early, late in pairwise(held))


def test_a_hot_stone_is_sooner_and_a_cold_one_later() -> None:
    stone = _bake(Around(under="stone")).minutes
    cold = Around(under="stone", warming_from_c=20.0)
    assert stone < _bake(Around()).minutes
    assert _bake(cold).minutes > _bake(Around(warming_from_c=20.0)).minutes


def test_two_trays_keep_the_bottom_cool() -> None:
    bare, insulated = _edge_c(Around(), 40), _edge_c(Around(under="insulated"), 40)
    assert insulated[1] < bare[1] - 5
    assert _bake(Around(under="insulated")).minutes > 1.1 * _bake(Around()).minutes


def test_a_tray_alone_hardly_matters() -> None:
    assert _bake(Around(under="tray")).minutes == pytest.approx(_bake(Around()).minutes, rel=0.08)


@pytest.mark.parametrize(("rack", "sign"), [("low", -1), ("high", 1)])
def test_a_high_rack_browns_more_and_a_low_one_less(rack: str, sign: int) -> None:
    off = _bake(Around(rack=rack)).rule_minutes[2] - _bake(Around()).rule_minutes[2]
    assert off * sign < 0


def test_a_tin_free_on_a_rack_has_no_layer_at_all() -> None:
    setup, _ = _end(Around(), 1)
    assert setup.layers is None


def test_layers_lie_over_the_faces_they_are_named_for() -> None:
    rings, rows = 6, 8
    for around, low, high in (
        (Around(under="stone"), 0, rings), (Around(jacket="wrapped"), rings, rings + rows),
        (Around(jacket="water", under="stone"), 0, rings + rows),
    ):  # fmt: skip
        setup, _ = _end(around, 0.1)
        assert setup.layers is not None and setup.layers.at == slice(low, high)


def test_a_dry_layer_between_equal_temperatures_stays_as_it_is() -> None:
    setup, state = _end(Around(under="tray"), 0.1)
    assert setup.layers is not None
    even = np.full_like(state.layer, 330.0)
    step = layer_step(
        setup.layers, even, 0 * even, outside=9 + 0 * even, air_k=even[:, :1],
        step=np.full((1, 1), 10.0),
    )  # fmt: skip
    moved, lost = step.settle(even, setup.layers.boiling_k + 100, np.full((1, 1), 10.0))
    assert moved == pytest.approx(even, rel=1e-12)
    assert (lost == 0).all()


def test_the_hole_of_a_tube_stays_bare_in_a_wrapped_tin() -> None:
    tube = CASES[7]
    oven = replace(tube.oven, around=Around(jacket="wrapped"))
    (cut,) = sections(tube.batter, tube.tin, oven, at_min=[25])
    assert cut.temp_c[3][0] > cut.temp_c[3][-1] + 10
