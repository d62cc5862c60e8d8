"""Before the first step: masses that add up, faces on their cells, films by the oven."""

from dataclasses import replace

import numpy as np
import pytest

from krume.bake import Around, Cells, Oven, nominal
from krume.bake.around import around_value
from krume.bake.parameters import value
from krume.bake.prediction import case_of
from krume.bake.setting_up import faces_of, start
from krume.bake.state import Setup
from krume.bake.surfaces import STEFAN_BOLTZMANN
from tests.bake.cases import BUTTER18, CASES, Case


def _setup(case: Case, around: Around | None = None, cells: Cells | None = None) -> Setup:
    oven = replace(case.oven, around=around or Around())
    return case_of(case.batter, case.tin, oven, nominal(case.batter, oven), cells or Cells())


def test_cells_hold_the_batter_of_a_round_tin() -> None:
    assert _setup(BUTTER18).own.cell_mass.sum() == pytest.approx(0.64, rel=1e-12)


@pytest.mark.parametrize("case", [BUTTER18, CASES[7]], ids=lambda c: c.name)
def test_every_face_lies_on_an_outer_cell(case: Case) -> None:
    setup = _setup(case)
    rings, rows = setup.grid.ring_area.size, setup.grid.z_share.size
    faces = setup.faces
    assert faces.cell[:rings].tolist() == list(range(rings))
    assert (faces.cell[rings : rings + rows] % rings == rings - 1).all()
    assert (faces.cell[rings + rows :] % rings == 0).all()
    assert (faces.row == faces.cell // rings).all()
    assert len(faces.cell) == rings + rows * (2 if case is CASES[7] else 1)


def test_areas_of_the_faces_are_those_of_the_body() -> None:
    setup = _setup(CASES[7])
    height = setup.own.row_height[0].take(setup.faces.row)
    area = setup.faces.area_flat + setup.faces.area_tall * height
    deep = setup.own.row_height.sum()
    floor = np.pi * (0.1**2 - 0.03**2)
    assert area.sum() == pytest.approx(floor + 2 * np.pi * 0.13 * deep, rel=1e-12)


def test_cells_at_two_faces_are_known() -> None:
    setup = _setup(CASES[7], cells=Cells(4, 5))
    for one, other in setup.faces.shared:
        assert setup.faces.cell[one] == setup.faces.cell[other]
    assert len(faces_of(setup.grid, has_hole=False).shared) == 1


def test_the_top_shines_as_cake_and_the_walls_as_the_tin() -> None:
    own = _setup(BUTTER18).own
    assert own.glow[0, :6] == pytest.approx(STEFAN_BOLTZMANN * value("emissivity-cake"))
    assert own.glow[0, 6:] == pytest.approx(STEFAN_BOLTZMANN * 0.25)
    assert own.film[0] == pytest.approx(5.5 * (0.2 / 0.18) ** 0.25)


def test_a_layer_shines_in_the_tins_place() -> None:
    own = _setup(BUTTER18, Around(under="stone")).own
    assert own.glow[0, 6:12] == pytest.approx(STEFAN_BOLTZMANN * around_value("stone-emissivity"))
    assert own.glow[0, 12:] == pytest.approx(STEFAN_BOLTZMANN * 0.25)


def test_a_rack_moves_heat_between_top_and_bottom_only() -> None:
    near, far = around_value("rack-near"), around_value("rack-far")
    middle, low = (_setup(BUTTER18, Around(rack=rack)).own for rack in ("middle", "low"))
    share = (low.film / middle.film)[0]
    assert share[:6] == pytest.approx(far) and share[6:12] == pytest.approx(near)
    assert share[12:] == pytest.approx(1.0)


def test_a_fan_has_its_own_film() -> None:
    fan = replace(BUTTER18, oven=Oven(165, fan=True))
    assert _setup(fan).own.film[0] == pytest.approx(value("heat-fan"))


def test_the_core_is_looked_for_in_the_lower_rows_and_in_a_jacket_in_the_middle() -> None:
    bare, wrapped = _setup(BUTTER18), _setup(BUTTER18, Around(jacket="wrapped"))
    rows = np.arange(48) // 6
    low = (bare.grid.z_centre <= 0.85)[rows]
    assert np.arange(48)[bare.core].tolist() == np.flatnonzero(low).tolist()
    assert not isinstance(wrapped.core, slice)
    assert (bare.grid.r_centre[wrapped.core % 6] <= 0.5 * 0.09).all()
    assert wrapped.core.tolist() == np.asarray(wrapped.set).tolist()


def test_at_the_door_nothing_has_happened() -> None:
    setup = _setup(BUTTER18, Around(jacket="water"))
    state = start(setup)
    assert (state.temp == 294.15).all() and (state.skin == 294.15).all()
    assert (state.layer == around_value("water-start") + 273.15).all()
    assert (state.layer_water == around_value("water-depth")).all()
    assert not np.isfinite(state.done).any() and state.lost[0] == 0
