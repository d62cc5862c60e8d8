"""The bake model against closed forms, its own books and its own finer grids, as tables of text.

Every number is computed here; the page `docs/models/bake-numerics.md` is what they come to.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cache, partial

import numpy as np
from scipy.optimize import brentq
from scipy.special import j0, j1, jn_zeros

from krume.bake import (
    AirCourse,
    Around,
    Cells,
    Oven,
    browning_delta_e,
    equivalent_radius_m,
    heating_theta,
    nominal,
)
from krume.bake.conduction import Plain, conduction_only
from krume.bake.engine import run
from krume.bake.long_tin import bent_theta, body_of_rectangle
from krume.bake.parameters import value
from krume.bake.prediction import case_of
from krume.bake.setting_up import start
from krume.bake.stepping import IMPLICIT, middle_of, settle, sides_of, solve
from krume.properties import (
    boiling_point_c,
    food_properties,
    pressure_at_altitude_pa,
    vapour_pressure_pa,
)
from tests.bake.cases import CASES, Case

Table = list[list[str]]
BODY = Plain(0.3, 2800, 500, 18, 0.1, 0.05, 20, 175)
TIME_S = 2400.0
GRIDS = ((6, 8), (12, 14), (24, 28), (48, 56))
FINE = ((6, 8, 5.0), (6, 8, 1.0), (12, 14, 1.0), (24, 28, 0.75), (48, 56, 0.75))


def as_table(head: Sequence[str], rows: Table) -> str:
    """A table as its page has it."""
    lines = [list(head), ["---"] * len(head), *rows]
    return "\n".join("| " + " | ".join(cells) + " |" for cells in lines)


@cache
def _zeros() -> tuple[np.ndarray, np.ndarray]:
    return jn_zeros(0, 400), np.concatenate([[0.0], jn_zeros(1, 400)])


def series_by_roots(shape: str, biot: float, fourier: float) -> float:
    """The same series from roots found by another program's own functions."""
    total, n = 0.0, 0
    while True:
        if shape == "slab":
            low, high = n * math.pi, (n + 0.5) * math.pi
            b = brentq(lambda x: x * math.sin(x) - biot * math.cos(x), low, high, xtol=1e-15)
            part = 4 * math.sin(b) / (2 * b + math.sin(2 * b))
        else:
            b = brentq(lambda x: x * j1(x) - biot * j0(x), _zeros()[1][n], _zeros()[0][n],
                       xtol=1e-15)  # fmt: skip
            part = 2 * j1(b) / (b * (j0(b) ** 2 + j1(b) ** 2))
        total += float(part) * math.exp(-b * b * fourier)
        if b * b * fourier > 60:
            return total
        n += 1


BIOTS = (1e-3, 1e-2, 0.1, 1.0, 10.0, 100.0, 1e3, 1e4)
FOURIERS = (1e-4, 1e-3, 0.01, 0.03, 0.1, 0.3, 1.0, 3.0, 10.0)


def series_rows() -> Table:
    """Largest difference of the series over all Fourier numbers, by shape and Biot number."""
    found = []
    for biot in BIOTS:
        row = [f"{biot:g}"]
        for shape in ("slab", "cylinder"):
            off = [
                abs(heating_theta(shape, biot=biot, fourier=fo) - _exact(shape, biot, fo))
                for fo in FOURIERS
            ]
            row.append(f"{max(off):.0e}")
        found.append(row)
    return found


def _exact(shape: str, biot: float, fourier: float) -> float:
    # Before that nothing has reached the middle; the series would want hundreds of terms for it.
    return 1.0 if fourier < 5e-3 else series_by_roots(shape, biot, fourier)


def property_rows() -> Table:
    """Closed forms beside figures that stand in print."""
    parts = {"water": 0.40, "protein": 0.06, "fat": 0.10, "carbohydrate": 0.42, "fibre": 0.01,
             "ash": 0.01}  # fmt: skip
    food = food_properties(parts, temp_c=20.0)
    made = [
        ("p sat at 300 K, Pa", "3536.58941", vapour_pressure_pa(26.85)),
        ("p sat at 500 K, MPa", "2.63889776", vapour_pressure_pa(226.85) / 1e6),
        ("p sat at 600 K, MPa", "12.3443146", vapour_pressure_pa(326.85) / 1e6),
        ("boiling, water, 0 m, °C", "99.9743", boiling_point_c(101325.0)),
        ("boiling, half sugar, 0 m, °C", "101.7977", boiling_point_c(101325.0, sugar_pct=50.0)),
        ("boiling, half sugar, 1600 m, °C", "96.4191",
         boiling_point_c(pressure_at_altitude_pa(1600), sugar_pct=50.0)),
        ("pressure at 1600 m, Pa", "83523.5", pressure_at_altitude_pa(1600)),
        ("conductivity of a solid batter, W/mK", "0.4013377", food.conductivity_w_mk),
        ("its density, kg/m³", "1202.3864", food.density_kg_m3),
        ("its heat, J/kgK", "2689.7933", food.heat_capacity_j_kgk),
        ("browning, 15 min at 150 °C", "19.032", browning_delta_e(15.0, temp_c=150.0)),
        ("cylinder of 33 × 22.9 cm, m", "0.1454507", equivalent_radius_m(0.33, 0.229)),
    ]  # fmt: skip
    return [[what, known, f"{got:.10g}", f"{abs(got / float(known) - 1):.0e}"]
            for what, known, got in made]  # fmt: skip


def exact_centre_c(body: Plain, time_s: float) -> float:
    """Centre of a plain short cylinder by the product of both series."""
    alpha = body.conduction_w_mk / (body.heat_j_kgk * body.density_kg_m3)
    theta = 1.0
    for shape, reach in (("slab", body.height_m / 2), ("cylinder", body.radius_m)):
        biot = body.film_w_m2k * reach / body.conduction_w_mk
        theta *= series_by_roots(shape, biot, alpha * time_s / reach**2)
    return body.air_c + (body.start_c - body.air_c) * theta


def centre_c(body: Plain, rings: int, rows: int, steps: int) -> float:
    """Centre of the same body by the model's cells, through the cells beside it."""
    cells = Cells(rings, rows, 0.0)
    field = conduction_only(body, time_s=TIME_S, steps=steps, cells=cells)
    z = ((np.arange(rows) + 0.5) / rows - 0.5) * body.height_m
    r = (np.arange(rings) + 0.5) / rings * body.radius_m
    up = rows // 2
    beside = [_even(z[up], field[up, i], z[up + 1], field[up + 1, i]) for i in (0, 1)]
    return _even(r[0], beside[0], r[1], beside[1])


def _even(x0: float, y0: float, x1: float, y1: float) -> float:
    return float(y0 - (y1 - y0) * x0**2 / (x1**2 - x0**2))


def grid_rows() -> Table:
    """Error of the centre on finer and finer cells, and the order between them."""
    exact, found, before = exact_centre_c(BODY, TIME_S), [], 0.0
    for rings, rows in GRIDS:
        off = centre_c(BODY, rings, rows, 2000) - exact
        order = f"{math.log2(abs(before / off)):.2f}" if before else ""
        found.append([f"{rings} × {rows}", f"{off:+.4f}", order])
        before = off
    return found


def step_rows() -> Table:
    """Error of the centre with longer and longer steps, the cells' own error taken off."""
    still, found, before = centre_c(BODY, 24, 28, 8000), [], 0.0
    for steps in (15, 30, 60, 120, 240):
        off = centre_c(BODY, 24, 28, steps) - still
        order = f"{math.log2(abs(before / off)):.2f}" if before else ""
        found.append([f"{TIME_S / steps:g}", f"{off:+.6f}", order])
        before = off
    return found


def shape_rows() -> Table:
    """Error of the centre for flat and tall bodies and films weak and strong."""
    found = []
    for radius, height in ((0.15, 0.01), (0.1, 0.05), (0.05, 0.10), (0.03, 0.30)):
        row = [f"{100 * radius:g} × {100 * height:g}"]
        for film in (0.5, 18.0, 200.0):
            body = replace(BODY, radius_m=radius, height_m=height, film_w_m2k=film)
            off = centre_c(body, 24, 28, 2000) - exact_centre_c(body, TIME_S)
            row.append(f"{off:+.3f}")
        found.append(row)
    return found


AROUNDS = {
    "plain": Around(), "wet strip": Around(jacket="wrapped"), "in water": Around(jacket="water"),
    "tray": Around(under="tray"), "two trays": Around(under="insulated"),
    "hot stone, wet strip": Around(jacket="wrapped", under="stone"),
    "cold start": Around(warming_from_c=20.0), "door": Around(door_min=(5.0, 15.0)),
    "given air": Around(course=AirCourse((0.0, 20.0), (120.0, 170.0))),
}  # fmt: skip


def closure_rows() -> Table:
    """Largest part of heat and of water that is not accounted for in any step, over all cases."""
    return [
        [name, *(f"{worst:.0e}" for worst in _worst(around))] for name, around in AROUNDS.items()
    ]


def _worst(around: Around) -> tuple[float, float, float]:
    each = np.array([closure(case, around) for case in (CASES[0], CASES[4], CASES[7])])
    cells, tin, water = (float(worst) for worst in each.max(axis=0))
    return cells, tin, water


def closure(case: Case, around: Around, *, steps: int = 60) -> tuple[float, float, float]:
    """Worst step of a bake: heat of the cells, heat of tin and layers, water, each relative."""
    oven = replace(case.oven, around=around)
    setup = case_of(case.batter, case.tin, oven, nominal(case.batter, oven), Cells())
    state, worst = start(setup), np.zeros(3)
    rings, area = setup.grid.ring_area.size, setup.grid.ring_area
    for _ in range(steps):
        step, lost, temp = float(state.step[0]), float(state.lost[0]), state.temp.copy()
        dry = state.dry[0, :rings].copy()
        middle = middle_of(setup, state)
        sides = sides_of(setup, state, middle)
        change = solve(setup, state, middle, sides)
        meets = temp[:, -1] + IMPLICIT * change.whole[:, -1]
        top = float(((sides.top.source - sides.top.diagonal * meets) * area).sum())
        settle(setup, state, middle, sides, change)
        tin, walls = state.skin[:, rings:], sides.walls
        into = float((walls.inward * (tin - change.beside)).sum())
        taken = float((middle.store * change.whole).sum())
        left = walls.known + walls.inward * change.beside - walls.total * tin
        steam = float((middle.store * (temp + change.whole - state.temp)).sum()) * step
        vapour = float((state.dry[0, :rings] - dry) @ area) + steam / value("latent-heat")
        gone = float(state.lost[0]) - lost
        off = (
            abs(taken - into - top) / max(abs(into) + abs(top) + abs(taken), 1e-30),
            float(np.abs(left / walls.known).max()),
            abs(gone - vapour) / max(gone, 1e-30) if gone > 0 else 0.0,
        )
        worst = np.maximum(worst, off)
        state.time, state.step = state.time + state.step, np.minimum(state.step * 1.05, 60.0)
    cells, tins, water = (float(each) for each in worst)
    return cells, tins, water


def fine_minutes(case: Case, rings: int, rows: int, warming_k: float) -> float:
    """Minutes of a case on a grid with steps that warm no cell by more than so much."""
    draws = nominal(case.batter, case.oven)
    setup = case_of(case.batter, case.tin, case.oven, draws, Cells(rings, rows))
    return float(run(setup, warming_k=warming_k).minutes[0].max())


def case_rows() -> Table:
    """Minutes of the eight cases on finer grids, and how far the grid in use is off the finest."""
    found = []
    for case in CASES:
        minutes = [fine_minutes(case, *grid) for grid in FINE]
        off = 100 * (minutes[0] / minutes[-1] - 1)
        found.append([case.name, *(f"{m:.2f}" for m in minutes), f"{off:+.1f} %"])
    return found


LONG_TINS = ((20, 20, 5), (33, 22.9, 2.5), (21.5, 11.5, 6), (26, 13, 5), (25, 10, 6), (30, 11, 7),
             (35, 10, 6))  # fmt: skip
FILM, SOLID, ALPHA, LEFT = 12.0, 0.3, 1.6e-7, 0.47


def long_rows() -> Table:
    """Minutes until a plain rectangle's middle is baked: exact, as a cylinder, as the body used."""
    found = []
    for length, width, deep in LONG_TINS:
        sides = (length / 100, width / 100, deep / 100)
        exact = _minutes(partial(_block, sides))
        row = [f"{length:g} × {width:g} × {deep:g}", f"{exact:.1f}"]
        cylinder = (equivalent_radius_m(sides[0], sides[1]), 1.0)
        used = body_of_rectangle(sides[0], sides[1])
        got = [_minutes(partial(_bent, body, sides[2])) for body in (cylinder, used)]
        found.append([*row, *(f"{100 * (m / exact - 1):+.1f} %" for m in got), f"{used[1]:.2f}"])
    return found


def _block(sides: tuple[float, float, float], time_s: float) -> float:
    return math.prod(_slab(side, time_s) for side in sides)


def _minutes(left: Callable[[float], float]) -> float:
    return float(brentq(lambda t: left(t) - LEFT, 300.0, 4e4, xtol=1.0)) / 60


def _slab(side: float, time_s: float) -> float:
    half = side / 2
    return heating_theta("slab", biot=FILM * half / SOLID, fourier=ALPHA * time_s / half**2)


def _bent(body: tuple[float, float], deep: float, time_s: float) -> float:
    radius, bend = body
    fourier = ALPHA * time_s / radius**2
    return bent_theta(bend, biot=FILM * radius / SOLID, fourier=fourier) * _slab(deep, time_s)


def limit_rows() -> Table:
    """What must not happen: no heat, an oven as warm as its batter, and a vanishing hole."""
    butter = CASES[4]
    cold = fine_minutes(replace(butter, oven=Oven(165, heat=1e-6)), 6, 8, 5.0)
    tube = replace(butter.tin, shape="tube", hole_cm=0.1)
    hole = fine_minutes(replace(butter, tin=tube), 12, 14, 1.0)
    whole = fine_minutes(butter, 12, 14, 1.0)
    return [
        ["surface heat of a millionth", "never", f"{cold:g} min"],
        ["a hole of a millimetre", "within 3 % of none", f"{100 * (hole / whole - 1):+.1f} %"],
    ]
