"""`krume.keep.moisture.spreading`: an exact series, its order, and water that is not lost."""

import math
from dataclasses import dataclass

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from krume.keep.moisture import Curve, Line, spread_water
from krume.keep.moisture.sorption import Array, State, Unit

LONG_M, RATE, HOURS_48 = 0.010, 2e-10, 172_800.0


@dataclass(frozen=True, slots=True)
class Straight:
    """A layer that holds water in proportion to its activity: its equation has a series."""

    starch: Array

    @property
    def sugars(self) -> Array:
        """None dissolves."""
        return np.zeros_like(self.starch)

    def unit(self, y: Array) -> Unit:
        """Activity is the variable itself."""
        return Unit(y, np.ones_like(y), y, np.ones_like(y), np.zeros_like(y))

    def state(self, y: Array) -> State:
        """Activity, water and their slopes."""
        return State(y, np.ones_like(y), y * self.starch, self.starch.copy())


def straight(count: int) -> tuple[Line, Array]:
    """A slab whose one half is damper, and the middles of its cells."""
    wide = np.full(count, LONG_M / count)
    middles = (np.arange(count) + 0.5) * LONG_M / count
    open_faces = np.ones(count - 1)
    line = Line(wide, np.full(count, RATE), Straight(wide), open_faces, np.zeros(count - 1))
    return line, middles


def series(x: Array, time_s: float) -> Array:
    """Crank's series of a closed slab that begins at 0.9 in one half and 0.5 in the other."""
    found = np.full_like(x, 0.7)
    for k in range(1, 400):
        waves = k * math.pi / LONG_M
        size = 2 * 0.4 / (k * math.pi) * math.sin(k * math.pi / 2)
        found += size * np.cos(waves * x) * math.exp(-RATE * waves**2 * time_s)
    return found


def miss(count: int, longest_s: float) -> float:
    line, x = straight(count)
    start = np.where(x < LONG_M / 2, 0.9, 0.5)
    found = spread_water(line, start, time_s=HOURS_48, longest_s=longest_s)
    return float(np.max(np.abs(found.activity[-1] - series(x, HOURS_48))))


def test_a_slab_follows_its_exact_series() -> None:
    assert miss(80, 1200.0) < 5e-6


def test_half_the_cells_miss_four_times_as_much() -> None:
    ratio = miss(20, 600.0) / miss(40, 600.0)
    assert 3.6 < ratio < 4.4


def test_half_the_steps_miss_four_times_as_much() -> None:
    ratio = miss(160, 20_000.0) / miss(160, 10_000.0)
    assert 3.2 < ratio < 4.8


def test_another_solver_comes_to_the_same_water() -> None:
    """Backward differences of scipy on eight times the cells, by the slopes of the cells alone."""
    layers = [(0.5, 0.6, 0.0, 2e-11), (0.2, 0.5, 0.8, 2e-10), (2.0, 0.4, -1.0, 5e-11)]
    line, y = crumbs(layers, cells=64)
    curve = line.holds
    assert isinstance(curve, Curve)

    def flows(_: float, place: Array) -> Array:
        at = curve.state(place)
        resists = line.wide_m**2 / (2 * line.diffusivity_m2_s) * at.activity_slope / at.water_slope
        flow = np.diff(at.activity) / (resists[:-1] + resists[1:])
        gained: Array = np.diff(np.concatenate([[0.0], flow, [0.0]])) / at.water_slope
        return gained

    near = np.eye(len(y)) + np.eye(len(y), k=1)
    peer = solve_ivp(
        flows, (0.0, HOURS_48), y, method="BDF", rtol=1e-6, atol=1e-8, jac_sparsity=near + near.T
    )
    own_line, own_y = crumbs(layers, cells=16)
    own = spread_water(own_line, own_y, time_s=HOURS_48, longest_s=3600.0)
    layer_g = own.water[-1].reshape(3, -1).sum(axis=1)
    peer_g = curve.water(peer.y[:, -1]).reshape(3, -1).sum(axis=1)
    began_g = own.water[0].reshape(3, -1).sum(axis=1)
    assert layer_g - began_g == pytest.approx(peer_g - began_g, rel=0.02, abs=0.002)


LAYERS = st.lists(
    st.tuples(st.floats(0.01, 3.0), st.floats(0.01, 3.0), st.floats(-2.5, 3.0),
              st.floats(1e-13, 1e-9)),
    min_size=2, max_size=6,
)  # fmt: skip


def crumbs(layers: list[tuple[float, float, float, float]], cells: int = 4) -> tuple[Line, Array]:
    """Layers of 4 mm, each of some cells: starch and sugars of a layer, state and rate."""
    whole = [each for each in layers for _ in range(cells)]
    starch, sugars, y, rate = (np.array(column) for column in zip(*whole, strict=True))
    starch, sugars = starch / cells, sugars / cells
    count = len(whole)
    wide = np.full(count, 4e-3 / cells)
    line = Line(wide, rate, Curve(starch, sugars), np.ones(count - 1), np.zeros(count - 1))
    return line, y


@settings(max_examples=25)
@given(LAYERS)
def test_no_water_is_lost_and_no_activity_leaves_what_it_began_between(
    layers: list[tuple[float, float, float, float]],
) -> None:
    line, y = crumbs(layers)
    found = spread_water(line, y, time_s=259_200.0)
    whole = found.water.sum(axis=1)
    assert np.max(np.abs(whole - whole[0])) <= 1e-12 * whole[0]
    assert np.isfinite(found.activity).all()
    low, high = found.activity[0].min(), found.activity[0].max()
    assert found.activity.min() >= low - 1e-3
    assert found.activity.max() <= high + 1e-3


@settings(max_examples=15)
@given(LAYERS)
def test_left_for_long_every_layer_comes_to_one_activity(
    layers: list[tuple[float, float, float, float]],
) -> None:
    fast = [(starch, sugars, y, 1e-9) for starch, sugars, y, _ in layers]
    line, y = crumbs(fast)
    found = spread_water(line, y, time_s=1e9)
    assert np.ptp(found.activity[-1]) < 1e-4


def test_a_wall_between_two_lines_lets_nothing_through() -> None:
    line, y = crumbs([(1.0, 1.0, -1.0, 1e-9), (1.0, 1.0, 2.0, 1e-9)])
    shut = line.open_share.copy()
    shut[3] = 0.0
    parted = Line(line.wide_m, line.diffusivity_m2_s, line.holds, shut, line.gives)
    found = spread_water(parted, y, time_s=259_200.0)
    assert found.water[-1] == pytest.approx(found.water[0], rel=1e-12)


def test_a_film_lets_less_through_the_tighter_it_is() -> None:
    line, y = crumbs([(1.0, 1.0, -1.0, 1e-9), (1.0, 1.0, 2.0, 1e-9)])
    gained = []
    for gives in (1e-9, 1e-8, 1e-7):
        open_share, film = line.open_share.copy(), line.gives.copy()
        open_share[3], film[3] = 0.0, gives
        closed = Line(line.wide_m, line.diffusivity_m2_s, line.holds, open_share, film)
        found = spread_water(closed, y, time_s=86_400.0)
        gained.append(float((found.water[-1] - found.water[0])[:4].sum()))
    assert 0 < gained[0] < gained[1] < gained[2]
    rise = float(np.diff(line.holds.state(y).activity)[3])
    assert gained[0] == pytest.approx(1e-9 * rise * 86_400, rel=0.02)


def test_a_film_that_lets_everything_through_is_no_film() -> None:
    line, y = crumbs([(1.0, 1.0, -1.0, 1e-9), (1.0, 1.0, 2.0, 1e-9)])
    share, gives = line.open_share.copy(), line.gives.copy()
    share[3], gives[3] = 0.0, 1e6
    through = Line(line.wide_m, line.diffusivity_m2_s, line.holds, share, gives)
    bare, behind = (spread_water(each, y, time_s=86_400.0) for each in (line, through))
    assert behind.water[-1] == pytest.approx(bare.water[-1], rel=1e-6)
