"""The engine against a fine grid's minutes, conservation, limits and orderings."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from krume.bake import Cells, Draws, Oven, nominal, simulate, wall
from krume.bake.engine import run
from krume.bake.footing import footprint_of
from krume.bake.prediction import core_target_k
from krume.bake.setting_up import prepare, start
from krume.bake.state import Setup, Track
from krume.bake.stepping import advance
from krume.properties import pressure_at_altitude_pa
from tests.bake.cases import BUTTER18, CASES, Case, batter, tin


@pytest.mark.parametrize("case", CASES, ids=lambda c: c.name)
def test_the_coarse_grid_bakes_within_two_and_a_half_percent_of_the_fine_one(case: Case) -> None:
    bake = simulate(case.batter, case.tin, case.oven)
    assert bake.minutes == pytest.approx(case.minutes, rel=0.025)
    assert bake.done_by == case.last


@pytest.mark.parametrize("case", CASES, ids=lambda c: c.name)
def test_a_finer_grid_agrees_with_the_coarse_one(case: Case) -> None:
    coarse = simulate(case.batter, case.tin, case.oven).minutes
    fine = simulate(case.batter, case.tin, case.oven, cells=(12, 14)).minutes
    assert fine == pytest.approx(coarse, rel=0.02)


@cache
def _fine_track() -> Track:
    draws = nominal(BUTTER18.batter, BUTTER18.oven)
    pressure = pressure_at_altitude_pa(0)
    setup = prepare(
        BUTTER18.batter, footprint_of(BUTTER18.tin), wall("aluminium"), BUTTER18.oven, draws,
        pressure_pa=pressure, core_k=core_target_k(BUTTER18.batter, pressure, draws),
        cells=Cells(24, 28),
    )  # fmt: skip
    return run(setup, warming_k=1.0).track


TRACE = [
    (6, 24.6, 53.0, 0.44), (12, 34.3, 77.4, 0.93), (18, 45.3, 94.4, 1.32), (24, 55.9, 107.5, 1.68),
    (30, 65.5, 118.0, 2.03), (36, 74.5, 126.3, 2.47), (42, 84.6, 132.1, 3.18),
    (48, 94.4, 136.2, 4.11),
]  # fmt: skip


@pytest.mark.parametrize(("minute", "core_c", "top_c", "loss_pct"), TRACE)
def test_the_course_of_a_butter_cake_follows_the_fine_grid(
    minute: float, core_c: float, top_c: float, loss_pct: float
) -> None:
    track = _fine_track()
    assert np.interp(minute, track.time_min, track.core_c) == pytest.approx(core_c, abs=1.5)
    assert np.interp(minute, track.time_min, track.top_c) == pytest.approx(top_c, abs=1.5)
    lost = 100 * np.interp(minute, track.time_min, track.loss)
    assert lost == pytest.approx(loss_pct, abs=0.3)


def _minutes(**changes: float) -> float:
    draws = nominal(BUTTER18.batter, BUTTER18.oven)
    changed = {name: np.ones(1) * value for name, value in changes.items()}
    return _done(replace(draws, **changed))


def _done(draws: Draws, liner: float = 0.0) -> float:
    return float(run(_butter(draws, liner)).minutes.max())


def _butter(draws: Draws, liner: float = 0.0) -> Setup:
    pressure = pressure_at_altitude_pa(0)
    return prepare(
        BUTTER18.batter, footprint_of(BUTTER18.tin), wall("aluminium"), BUTTER18.oven, draws,
        pressure_pa=pressure, core_k=core_target_k(BUTTER18.batter, pressure, draws),
        cells=Cells(12, 14), liner_m2k_w=liner,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("changes", "minutes"),
    [
        ({"oven_k": 155 + 273.15}, 58.8), ({"oven_k": 175 + 273.15}, 45.5),
        ({"heat": 0.8}, 60.7), ({"heat": 1.2}, 45.1), ({"mass": 0.54}, 44.4),
        ({"mass": 0.74}, 57.8), ({"wet_skin": 0.0}, 50.4), ({"wet_skin": 0.001}, 52.1),
        ({"density": 750.0}, 47.3), ({"density": 950.0}, 55.1),
    ],
)  # fmt: skip
def test_one_changed_input_moves_the_minutes_as_far_as_it_should(
    changes: dict[str, float], minutes: float
) -> None:
    assert _minutes(**changes) == pytest.approx(minutes, rel=0.025)


@pytest.mark.parametrize(("liner", "minutes"), [(0.0, 51.2), (0.01, 53.1), (0.02, 54.9)])
def test_paper_under_the_cake_makes_it_later(liner: float, minutes: float) -> None:
    draws = nominal(BUTTER18.batter, BUTTER18.oven)
    assert _done(draws, liner) == pytest.approx(minutes, rel=0.025)


def test_without_surface_heat_nothing_warms() -> None:
    draws = replace(nominal(BUTTER18.batter, BUTTER18.oven), heat=np.full(1, 1e-6))
    setup = prepare(
        BUTTER18.batter, footprint_of(BUTTER18.tin), wall("aluminium"), BUTTER18.oven, draws,
        pressure_pa=101325.0, core_k=np.full(1, 368.0), cells=Cells(),
    )  # fmt: skip
    state = start(setup)
    while state.time[0] < 1800:
        advance(setup, state)
        state.time = state.time + state.step
    assert np.abs(state.temp - 294.15).max() < 0.001


ORDER = (
    ("fan", "round 22 x 6 cm", Oven(165, fan=True)),
    ("hotter", "round 22 x 6 cm", Oven(185)),
    ("base", "round 22 x 6 cm", Oven(165)),
    ("narrower", "round 18 x 8 cm", Oven(165)),
    ("cooler", "round 22 x 6 cm", Oven(150)),
)


def test_the_orderings_every_baker_knows_hold() -> None:
    done = [
        simulate(batter("hazel", 500), tin(text), oven, cells=(12, 14)).minutes
        for _, text, oven in ORDER
    ]
    base = done[2]
    assert done[0] < base and done[1] < base < done[3] and base < done[4]
    dark = simulate(batter("hazel", 500), tin("dark round 22 x 6 cm"), Oven(165)).minutes
    wide = simulate(batter("hazel", 500), tin("round 26 x 6 cm"), Oven(165)).minutes
    more = simulate(batter("hazel", 550), tin("round 22 x 6 cm"), Oven(165)).minutes
    assert dark < base and wide < base < more


def test_a_tube_bakes_sooner_than_a_round_of_its_size() -> None:
    tube = simulate(batter("hazel", 500), tin("tube 24 x 9 cm hole 6 cm"), Oven(165)).minutes
    whole = simulate(batter("hazel", 500), tin("round 24 x 9 cm"), Oven(165), cells=(6, 8)).minutes
    assert tube < 29.9 and tube < whole * 1.2


def test_many_at_once_bake_as_each_alone() -> None:
    draws = nominal(BUTTER18.batter, BUTTER18.oven)
    three = replace(
        draws, **{
            name: np.repeat(getattr(draws, name), 3) for name in draws.__dataclass_fields__
        } | {"heat": np.array([0.8, 1.0, 1.2])}
    )  # fmt: skip
    together = run(_butter(three)).minutes.max(axis=1)
    for row, heat in enumerate((0.8, 1.0, 1.2)):
        assert together[row] == pytest.approx(_minutes(heat=heat), rel=1e-9)


def test_one_impossible_draw_does_not_stop_the_others() -> None:
    draws = nominal(BUTTER18.batter, BUTTER18.oven)
    names = draws.__dataclass_fields__
    two = replace(draws, **{name: np.repeat(getattr(draws, name), 2) for name in names})
    two.crust_conduction[1] = np.nan
    outcome = run(_butter(two))
    assert outcome.minutes[0].max() == pytest.approx(_done(draws), rel=1e-9)
    assert np.isinf(outcome.minutes[1]).all()


# Minutes of the foam in other tins and ovens on a fine grid, worked out apart from this engine.
FOAM = (
    ("fan", "round 22 x 6 cm", Oven(165, fan=True), 22.4, "core"),
    ("dark", "dark round 22 x 6 cm", Oven(165), 23.3, "colour"),
    ("hotter", "round 22 x 6 cm", Oven(185), 23.7, "core"),
    ("silicone", "silicone round 22 x 6 cm", Oven(165), 24.6, "colour"),
    ("wide", "round 26 x 6 cm", Oven(165), 24.9, "colour"),
    ("glass", "glass round 22 x 6 cm", Oven(165), 25.6, "colour"),
    ("tube", "tube 24 x 9 cm hole 6 cm", Oven(165), 25.8, "colour"),
    ("base", "round 22 x 6 cm", Oven(165), 29.9, "core"),
    ("narrow", "round 18 x 8 cm", Oven(165), 37.1, "core"),
    ("cooler", "round 22 x 6 cm", Oven(150), 37.1, "core"),
)


@pytest.mark.parametrize(("text", "oven", "minutes", "last"), [f[1:] for f in FOAM],
                         ids=[f[0] for f in FOAM])  # fmt: skip
def test_a_foam_in_another_tin_or_oven_takes_as_long_as_worked_out_apart(
    text: str, oven: Oven, minutes: float, last: str
) -> None:
    bake = simulate(batter("hazel", 500), tin(text), oven, cells=(12, 14))
    assert bake.minutes == pytest.approx(minutes, rel=0.015)
    assert bake.done_by == last


@pytest.mark.parametrize(
    ("altitude_m", "butter", "sponge"), [(850, 47.5, 32.1), (1600, 45.6, 31.4), (2500, 45.1, 30.9)]
)
def test_higher_up_a_cake_is_done_sooner_at_its_lower_core(
    altitude_m: float, butter: float, sponge: float
) -> None:
    for case, minutes in ((BUTTER18, butter), (CASES[0], sponge)):
        there = replace(case.oven, altitude_m=altitude_m)
        assert simulate(case.batter, case.tin, there).minutes == pytest.approx(minutes, rel=0.025)
