"""The bake from its paper alone: exact series, properties, golden bakes, orderings, nonsense."""

import math
from dataclasses import replace
from itertools import pairwise
from random import Random
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.special import j0, j1, jn_zeros

from krume import calc
from krume.bake import Batter, Oven, draw, nominal, simulate, simulate_many
from krume.base import KrumeError
from krume.size import Tin, read_tin

F1 = Batter(540, 0.48, 0.395, 0.084, 0.094, 0.399, 0.017, 0.011, 0.257, core_c=95.0)
F3 = Batter(400, 0.48, 0.440, 0.074, 0.077, 0.395, 0.005, 0.009, 0.255, colour="pale")
F4 = Batter(520, 0.50, 0.379, 0.094, 0.188, 0.312, 0.016, 0.011, 0.238, core_c=96.0)
F5 = Batter(550, 0.50, 0.460, 0.062, 0.118, 0.345, 0.004, 0.011, 0.209, 0.28, core_c=97.0)
F6 = Batter(640, 0.85, 0.297, 0.045, 0.216, 0.423, 0.007, 0.012, 0.237, 1.0, core_c=97.0)

# The batter, its tin, the oven, minutes done, with T_b - 5, the last rule, and percent lost.
GOLDEN: dict[str, tuple[Batter, str, float, float, float, str, float]] = {
    "sponge20": (F1, "round 20 x 7 cm", 170, 33.4, 34.1, "core", 4.2),
    "nut22": (F4, "round 22 x 5 cm", 170, 30.1, 30.1, "core", 4.9),
    "roulade": (F3, "sheet 33x22.9x2.5 cm", 190, 11.8, 11.8, "colour", 6.9),
    "sheet": (replace(F6, mass_g=1000), "sheet 33x22.9x5 cm", 175, 28.2, 27.6, "core", 4.9),
    "butter18": (F6, "round 18 x 7 cm", 165, 51.6, 50.4, "core", 4.6),
    "cupcake": (replace(F6, mass_g=55), "round 6.3 x 4 cm", 175, 20.5, 20.5, "colour", 4.2),
    "loaf": (replace(F6, mass_g=930), "loaf 21.5x11.5x7 cm", 165, 66.3, 64.8, "core", 4.1),
    "chiffon": (F5, "tube 20 x 10 cm, hole 6 cm", 165, 32.5, 31.5, "core", 3.4),
}
RULES = {
    "sponge20": (33.45, 33.05, 26.7), "nut22": (30.09, 28.65, 25.8),
    "roulade": (11.40, 10.96, 11.81), "sheet": (28.17, 25.58, 26.1),
    "butter18": (51.64, 47.28, 34.6), "cupcake": (18.70, 18.43, 20.54),
    "loaf": (66.29, 61.06, 36.3), "chiffon": (32.50, 29.84, 29.5),
}  # fmt: skip
# F1 500 g, 165 °C, round 22 cm: what is changed, and minutes.
BASE_TIN = "round 22 x 6 cm"
CHANGED: dict[str, tuple[str, dict[str, Any], float, float, str]] = {
    "base": (BASE_TIN, {}, 500, 29.9, "core"),
    "fan": (BASE_TIN, {"fan": True}, 500, 22.4, "core"),
    "dark": ("dark " + BASE_TIN, {}, 500, 23.3, "colour"),
    "hotter": (BASE_TIN, {"temp_c": 185}, 500, 23.7, "core"),
    "silicone": ("silicone " + BASE_TIN, {}, 500, 24.6, "colour"),
    "wide": ("round 26 x 6 cm", {}, 500, 24.9, "colour"),
    "glass": ("glass " + BASE_TIN, {}, 500, 25.6, "colour"),
    "tube": ("tube 24 x 9 cm, hole 6 cm", {}, 500, 25.8, "colour"),
    "more": (BASE_TIN, {}, 550, 32.3, "core"),
    "narrow": ("round 18 x 8 cm", {}, 500, 37.1, "core"),
    "cooler": (BASE_TIN, {"temp_c": 150}, 500, 37.1, "core"),
}
# butter18 on 24 x 28: minute, coldest °C, top °C, ΔE, percent lost.
TRACE = [
    (6, 24.6, 53.0, 0.03, 0.44), (12, 34.3, 77.4, 0.14, 0.93), (18, 45.3, 94.4, 0.56, 1.32),
    (24, 55.9, 107.5, 1.48, 1.68), (30, 65.5, 118.0, 3.14, 2.03), (36, 74.5, 126.3, 5.64, 2.47),
    (42, 84.6, 132.1, 8.90, 3.18), (48, 94.4, 136.2, 12.63, 4.11),
]  # fmt: skip


def _tin(text: str) -> Tin:
    tin = read_tin(text).value
    assert tin is not None
    return tin


def _sum(name: str, key: str, **inputs: object) -> float:
    value = calc.run(name, **inputs)[key]
    assert isinstance(value, int | float)
    return float(value)


def _slab(biot: float, fourier: float, terms: int = 200) -> float:
    total = 0.0
    for n in range(terms):
        low, high = n * math.pi + 1e-13, (n + 0.5) * math.pi - 1e-13
        b = brentq(lambda x: x * math.sin(x) - biot * math.cos(x), low, high, xtol=1e-15)
        share = 4 * math.sin(b) / (2 * b + math.sin(2 * b))
        total += share * math.exp(-b * b * fourier)
    return total


def _cylinder(biot: float, fourier: float, terms: int = 200) -> float:
    walls = [0.0, *jn_zeros(1, terms)]
    total = 0.0
    for low, high in pairwise(walls):
        b = brentq(lambda x: x * j1(x) - biot * j0(x), low + 1e-13, high, xtol=1e-15)
        total += 2 * j1(b) / (b * (j0(b) ** 2 + j1(b) ** 2)) * math.exp(-b * b * fourier)
    return total


@pytest.mark.parametrize("biot", [1e-4, 0.03, 1.0, 5.0, 80.0, 5000.0])
@pytest.mark.parametrize("fourier", [0.02, 0.2, 0.5, 1.0, 4.0, 60.0])
def test_slab_and_cylinder_are_their_series(biot: float, fourier: float) -> None:
    for shape, series in (("slab", _slab), ("cylinder", _cylinder)):
        theta = _sum("heating-series", "theta", shape=shape, biot=biot, fourier=fourier)
        assert theta == pytest.approx(series(biot, fourier), abs=2e-9), shape


@pytest.mark.parametrize(("radius", "height"), [(2, 20), (5, 10), (10, 5), (12, 1.5), (0.5, 0.5)])
@pytest.mark.parametrize("minutes", [1, 12, 40, 300])
def test_a_short_cylinder_is_the_product_of_both(
    radius: float, height: float, minutes: float
) -> None:
    h, k, rho, c, start, oven = 18.0, 0.3, 500.0, 2800.0, 20.0, 175.0
    alpha_t = k / rho / c * minutes * 60
    r, half = radius / 100, height / 200
    theta = _cylinder(h * r / k, alpha_t / r**2) * _slab(h * half / k, alpha_t / half**2)
    got = calc.run(
        "heating-series", shape="short-cylinder", h=h, k=k, density=rho, heat_capacity=c,
        radius=radius, height_cm=height, start=start, oven_c=oven, time=minutes,
    )  # fmt: skip
    assert got["theta"] == pytest.approx(theta, abs=1e-8)
    assert got["temp_c"] == pytest.approx(oven + theta * (start - oven), abs=1e-6)


def test_a_short_cylinder_of_the_paper_is_its_figure() -> None:
    temp_c = _sum(
        "heating-series", "temp_c", shape="short-cylinder", h=18, k=0.3, density=500,
        heat_capacity=2800, radius=10, height=5, start=20, oven="347F", time="2400s",
    )  # fmt: skip
    assert temp_c == pytest.approx(95.38159, abs=5e-5)


def test_a_body_without_time_is_as_it_was_and_after_ages_as_the_oven() -> None:
    for shape in ("slab", "cylinder"):
        assert _sum("heating-series", "theta", shape=shape, biot=3, fourier=0) == 1
        assert _sum("heating-series", "theta", shape=shape, biot=3, fourier=500) == 0
        with pytest.raises(KrumeError):
            calc.run("heating-series", shape=shape, biot=3, fourier=-1)


def test_steam_and_boiling_points_are_the_papers() -> None:
    assert _sum("vapour-pressure", "pressure_pa", temp=26.85) == pytest.approx(3536.58941, rel=1e-8)
    two = _sum("vapour-pressure", "pressure_pa", temp="440.33F")
    assert two == pytest.approx(2.63889776e6, rel=1e-7)
    for altitude, sugar, boils in (
        (0, 0, 99.9743), (0, 50, 101.7977), (1600, 0, 94.6496), (1600, 50, 96.4191),
    ):  # fmt: skip
        temp_c = _sum("boiling-point", "temp_c", altitude=altitude, sugar_pct=sugar)
        assert temp_c == pytest.approx(boils, abs=0.001)
    low = _sum("boiling-point", "temp_c", pressure=83_523.5)
    assert low == pytest.approx(94.6496, abs=0.001)
    assert _sum("boiling-point", "pressure_pa", altitude=1600) == pytest.approx(83_523.5, abs=0.1)


def test_sugar_and_depth_of_air_raise_the_boiling_point() -> None:
    sweet = [_sum("boiling-point", "temp_c", altitude=0, sugar_pct=s) for s in range(0, 90, 10)]
    high = [_sum("boiling-point", "temp_c", altitude=m) for m in range(0, 5000, 500)]
    assert sweet == sorted(set(sweet))
    assert high == sorted(set(high), reverse=True)


def test_properties_of_a_food_are_choi_and_okos() -> None:
    got = calc.run(
        "food-properties", water=0.4, protein=0.06, fat=0.1, carbohydrate=0.42, fibre=0.01,
        ash=0.01, temp=20,
    )  # fmt: skip
    assert got["conductivity_w_mk"] == pytest.approx(0.4013377, rel=1e-6)
    assert got["density_kg_m3"] == pytest.approx(1202.3864, rel=1e-7)
    assert got["heat_capacity_j_kgk"] == pytest.approx(2689.7933, rel=1e-7)
    fat = _sum("food-properties", "conductivity_w_mk", water=0, fat=1, temp=100)
    assert fat == pytest.approx(0.18071 - 2.7604e-2 - 1.7749e-3, rel=1e-9)
    foam = _sum("porous-conductivity", "conductivity_w_mk", solid=0.42, gas=0.03, porosity=0.65)
    assert foam == pytest.approx(0.135700935, rel=1e-8)


@pytest.mark.parametrize(("minutes", "temp_c"), [(15, 150), (3, 220), (60, 120), (0, 180)])
def test_a_crust_browns_by_its_one_rate(minutes: float, temp_c: float) -> None:
    rate = 42000 * math.exp(-64151 / 8.314462618 / (temp_c + 273.15))
    expected = 52 * (1 - math.exp(-rate * minutes * 60))
    assert _sum("browning", "delta_e", time=minutes, temp=temp_c) == pytest.approx(
        expected, abs=1e-9
    )


@pytest.mark.parametrize(("want", "offset"), [(157, -12), (170, 8), (190, 0), (100, -35)])
def test_the_dial_takes_the_offset_away(want: float, offset: float) -> None:
    got = calc.run("dial", want_c=want, offset_c=offset)
    assert got["set_c"] == pytest.approx(want - offset)
    assert got["set_f"] == pytest.approx((want - offset) * 1.8 + 32)


@pytest.mark.parametrize("name", GOLDEN)
def test_a_golden_bake_is_done_as_the_paper_says(name: str) -> None:
    batter, tin, oven_c, done, done_free, last, loss = GOLDEN[name]
    bake = simulate(batter, _tin(tin), Oven(oven_c))
    assert bake.minutes == pytest.approx(done, rel=0.025)
    assert bake.done_by == last
    assert bake.minutes == max(bake.rule_minutes)
    for got, rule in zip(bake.rule_minutes, RULES[name], strict=True):
        assert got == pytest.approx(rule, rel=0.04)
    assert bake.loss_pct == pytest.approx(loss, rel=0.12)
    if batter.core_c is not None:
        free = simulate(replace(batter, core_c=None), _tin(tin), Oven(oven_c))
        assert free.minutes == pytest.approx(done_free, rel=0.025)
        assert free.core_c == pytest.approx(free.boiling_c - 5)
        assert bake.core_c == batter.core_c


@pytest.mark.parametrize("name", CHANGED)
def test_a_changed_bake_is_done_as_the_paper_says(name: str) -> None:
    tin, oven, mass_g, done, last = CHANGED[name]
    bake = simulate(replace(F1, mass_g=mass_g), _tin(tin), Oven(**{"temp_c": 165, **oven}))
    assert bake.minutes == pytest.approx(done, rel=0.025)
    assert bake.done_by == last


def test_height_above_the_sea_moves_core_and_minutes() -> None:
    for batter, tin, oven_c, sea in (
        (F6, "round 18 x 7 cm", 165, (51.3, 47.5, 45.6, 45.1)),
        (F1, "round 20 x 7 cm", 170, (33.5, 32.1, 31.4, 30.9)),
    ):
        stated = batter.core_c or 0.0
        for altitude, done in zip((0, 850, 1600, 2500), sea, strict=True):
            bake = simulate(batter, _tin(tin), Oven(oven_c, altitude_m=altitude))
            level = simulate(batter, _tin(tin), Oven(oven_c)).boiling_c
            assert bake.minutes == pytest.approx(done, rel=0.025)
            assert bake.core_c == pytest.approx(stated - level + bake.boiling_c, abs=1e-6)


def test_a_core_near_boiling_is_taken_two_below() -> None:
    bake = simulate(replace(F6, core_c=101.0), _tin("round 18 x 7 cm"), Oven(165))
    assert bake.core_c == pytest.approx(bake.boiling_c - 2)
    assert bake.boiling_c == pytest.approx(101.38, abs=0.05)


def test_a_tube_is_sooner_than_a_round_of_its_width() -> None:
    batter = replace(F6, mass_g=1200)
    tube = simulate(batter, _tin("tube 24 x 10 cm, hole 6 cm"), Oven(165)).minutes
    whole = simulate(batter, _tin("round 24 x 10 cm"), Oven(165)).minutes
    assert (tube, whole) == pytest.approx((51.3, 60.9), rel=0.025)


def test_the_butter_cake_runs_along_its_trace() -> None:
    curve = simulate(F6, _tin("round 18 x 7 cm"), Oven(165), cells=(24, 28)).curve
    for minute, coldest, top, colour, loss in TRACE:
        at = [
            float(np.interp(minute, curve.time_min, line)) for line in (curve.core_c, curve.top_c)
        ]
        assert at == pytest.approx([coldest, top], abs=1.5), minute
        assert float(np.interp(minute, curve.time_min, curve.colour)) == pytest.approx(
            colour, abs=0.4
        )
        lost = 100 * float(np.interp(minute, curve.time_min, curve.loss))
        assert lost == pytest.approx(loss, abs=0.3)


def test_finer_cells_settle() -> None:
    tin, oven = _tin("round 18 x 7 cm"), Oven(165)
    done = [
        simulate(F6, tin, oven, cells=c).minutes for c in ((6, 8), (12, 14), (24, 28), (48, 56))
    ]
    assert max(done[1:]) / min(done[1:]) < 1.006
    assert done[0] == pytest.approx(done[-1], rel=0.02)
    assert done[-1] == pytest.approx(51.6, rel=0.006)
    assert len(set(done)) == 4


def test_many_draws_are_the_bakes_one_by_one() -> None:
    tin, oven = _tin("round 18 x 7 cm"), Oven(165)
    draws = draw(F6, oven, count=64, discrepancy=0.12)
    bakes, again = (simulate_many(F6, tin, oven, draws) for _ in range(2))
    assert np.array_equal(bakes.minutes, again.minutes)
    assert np.all(bakes.minutes > 0)
    one = simulate(F6, tin, oven)
    alone = simulate_many(F6, tin, oven, nominal(F6, oven))
    assert alone.minutes[0] == pytest.approx(one.minutes, rel=1e-9)
    assert tuple(alone.rule_minutes[0]) == pytest.approx(one.rule_minutes, rel=1e-9)
    low, high = np.quantile(bakes.minutes, (0.1, 0.9))
    assert 0.6 < low / one.minutes < 0.85
    assert 1.2 < high / one.minutes < 1.6


def _kitchen(seed: int) -> tuple[Batter, float, float, Oven]:
    dice = Random(seed)  # noqa: S311
    batter = dice.choice((F1, F4, F6))
    diameter = dice.uniform(16, 26)
    depth = dice.uniform(2.0, 4.5)
    mass_g = batter.density_g_ml * depth * math.pi / 4 * diameter**2
    oven = Oven(dice.uniform(155, 195), heat=dice.uniform(0.75, 1.25))
    return replace(batter, mass_g=mass_g), round(diameter, 1), depth, oven


@pytest.mark.parametrize("seed", range(60))
def test_hotter_wider_darker_less_and_a_fan_are_sooner(seed: int) -> None:
    batter, diameter, _, oven = _kitchen(seed)
    tin = _tin(f"round {diameter} x 9 cm")

    def done(batter: Batter = batter, tin: Tin = tin, oven: Oven = oven) -> float:
        return simulate(batter, tin, oven).minutes

    base = done()
    assert 10 < base < 150
    assert done(oven=replace(oven, temp_c=oven.temp_c + 10)) < base
    assert done(oven=replace(oven, fan=True)) < base
    assert done(oven=replace(oven, heat=oven.heat * 1.1)) < base
    assert done(tin=_tin(f"dark round {diameter} x 9 cm")) < base
    assert done(tin=_tin(f"round {diameter * 1.08:.1f} x 9 cm")) < base
    assert done(batter=replace(batter, mass_g=batter.mass_g * 1.1)) > base
    assert done(batter=replace(batter, temp_c=5)) > base


@pytest.mark.parametrize(
    "change",
    [
        {"mass_g": math.nan}, {"mass_g": 0.0}, {"mass_g": -5.0}, {"mass_g": 10_000.0},
        {"mass_g": 1.0}, {"density_g_ml": 0.0}, {"density_g_ml": math.nan}, {"water": -0.1},
        {"water": math.inf}, {"temp_c": -18.0}, {"temp_c": 150.0}, {"core_c": 200.0},
        {"core_c": math.nan}, {"sugar": 0.9}, {"gas_ratio": -1.0}, {"carbohydrate": 2.0},
        {"colour": "blue"},
    ],
)  # fmt: skip
def test_a_batter_that_cannot_be_ends_in_words(change: dict[str, Any]) -> None:
    with pytest.raises(KrumeError) as said:
        simulate(replace(F1, **change), _tin("round 20 x 7 cm"), Oven(170))
    assert len(str(said.value).split()) > 4


@pytest.mark.parametrize(
    "change",
    [
        {"temp_c": math.nan}, {"temp_c": -50.0}, {"temp_c": 1000.0}, {"heat": 0.0}, {"heat": -1.0},
        {"heat": math.nan}, {"altitude_m": 6000.0}, {"altitude_m": math.nan},
    ],
)  # fmt: skip
def test_an_oven_that_cannot_be_ends_in_words(change: dict[str, Any]) -> None:
    with pytest.raises(KrumeError) as said:
        simulate(F1, _tin("round 20 x 7 cm"), replace(Oven(170), **change))
    assert len(str(said.value).split()) > 4


def test_an_oven_too_cool_never_bakes_and_says_infinity() -> None:
    tin = _tin("round 20 x 7 cm")
    done = {c: simulate(F1, tin, Oven(c)).minutes for c in (95, 100, 110, 120)}
    assert done[95] == done[100] == math.inf
    assert done[110] == pytest.approx(162, rel=0.05)
    assert done[120] == pytest.approx(86, rel=0.025)
