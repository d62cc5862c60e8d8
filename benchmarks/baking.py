"""A bake beside general packages on the same heat problem, a batch beside single bakes, memory.

The packages get our cells, our steps and our coefficients, renewed in every step; the bake does
more in each: tin, water, crust, rise, setting, colour. Where scikit-fem and FiPy are not installed
the model is held against itself only.
"""

import warnings
from collections.abc import Callable
from functools import cache, partial
from importlib.util import find_spec
from statistics import fmean

import numpy as np

from benchmarks.heat_peers import Coefficients, Task, centre_of, elements_centre_c, volumes_centre_c
from benchmarks.measure import Row, call_s, memory_mb
from krume.bake import (
    Bake,
    Bakes,
    Batter,
    Cells,
    Draws,
    Oven,
    draw,
    nominal,
    simulate,
    simulate_many,
)
from krume.bake.conduction import Plain, conduction_only
from krume.bake.engine import run
from krume.bake.grid import Array
from krume.bake.material import material_of, nearest
from krume.bake.parameters import value
from krume.bake.prediction import case_of
from krume.bake.state import Outcome, Setup
from krume.bake.surfaces import STEFAN_BOLTZMANN
from krume.size import Tin, read_tin

MOST_OF_A_BAKE_MS, MOST_OF_A_BATCH_S, MOST_MEMORY_MB = 10.0, 0.25, 200.0
FIVE, TWENTY = 1 / 5, 1 / 20
BODY = Plain(0.3, 2800, 500, 18, 0.1, 0.05, 20, 175)
GRIDS = ((6, 8), (24, 28))
PREDICTED = """
from krume.bake import Batter, Oven, predict
from krume.size import read_tin
batter = Batter(640, 0.85, 0.297, 0.045, 0.216, 0.423, 0.007, 0.012, 0.237, gas_ratio=1.0)
predict(batter, read_tin("round 18 x 7 cm").value, Oven(165))
"""
BUTTER = Batter(640, 0.85, 0.297, 0.045, 0.216, 0.423, 0.007, 0.012, 0.237, 1.0, core_c=97.0)
HAZEL = Batter(540, 0.48, 0.395, 0.084, 0.094, 0.399, 0.017, 0.011, 0.257, core_c=95.0)
BATTER_BODY = Plain(0.3, 2800, 850, 18, 0.09, 0.03, 21, 165)
CAKES = (
    ("sponge", HAZEL, "round 20 x 7 cm", Oven(170)),
    ("butter cake", BUTTER, "round 18 x 7 cm", Oven(165)),
)


def rows() -> list[Row]:
    """Plain heat, the whole model, a batch, and how much it holds."""
    warnings.simplefilter("ignore")
    peers = all(find_spec(name) for name in ("skfem", "fipy"))
    # The model by itself first: FiPy leaves so much behind that every later call is slower.
    own = [*own_rows(), memory_row()]
    return [*own, *plain_rows(), *whole_rows()] if peers else own


def plain_rows() -> list[Row]:
    """A body of constant properties, 24 x 28 cells and 240 steps, assembled once."""
    task = Task(BODY, 24, 28, 2400.0, 240)

    def ours(_: int) -> float:
        cells = Cells(24, 28, 0.0)
        return centre_of(conduction_only(BODY, time_s=2400.0, steps=240, cells=cells), BODY)

    own = 1e3 * call_s(ours, times=5)
    fem = 1e3 * call_s(partial(_peer, elements_centre_c, task), times=3)
    fvm = 1e3 * call_s(partial(_peer, volumes_centre_c, task), times=1)
    what = "plain body, 24 x 28 cells"
    return [
        Row(what, own, fem, "ms", "scikit-fem, factored once"),
        Row(what, own, fvm, "ms", "FiPy, same cells and steps", TWENTY),
    ]


def _peer(solve: Callable[[Task], float], task: Task, _: int) -> float:
    return solve(task)


def whole_rows() -> list[Row]:
    """A whole bake beside heat alone in the packages, coefficients renewed in every step."""
    found = []
    for rings, height in GRIDS:
        oven, tin = Oven(165), tin_of("round 18 x 7 cm")
        setup = case_of(BUTTER, tin, oven, nominal(BUTTER, oven), Cells(rings, height))
        steps = run(setup).steps
        own = 1e3 * call_s(partial(_whole, setup), times=5)
        task = Task(BATTER_BODY, rings, height, 3060.0, steps, coefficients())
        fem = 1e3 * call_s(partial(_peer, elements_centre_c, task), times=3)
        fvm = 1e3 * call_s(partial(_peer, volumes_centre_c, task), times=1)
        what = f"a bake, {rings} x {height} cells, {steps} steps"
        found += [
            Row(what, own, fem, "ms", "scikit-fem, assembled each step", FIVE),
            Row(what, own, fvm, "ms", "FiPy, renewed each step", TWENTY),
        ]
    return found


def _whole(setup: Setup, _: int) -> Outcome:
    return run(setup)


def coefficients() -> Coefficients:
    """Conductivity, heat and film of the butter batter before it rises, by temperature."""
    material = material_of(BUTTER, 101325.0)
    solid, air, pores, cap, heat = material.cell[:5]
    empty = 1 - 850 / material.solid_kg_m3
    ratio = empty * (3 / np.minimum(air + value("vapour-conduction") * pores, cap) - 1)
    conduction = (1 - 2 * ratio) / (solid * (1 + ratio))
    glow = value("emissivity-cake") * STEFAN_BOLTZMANN

    def film(kelvin: Array) -> Array:
        hot = 438.15
        both: Array = 5.5 + glow * (hot**2 + kelvin**2) * (hot + kelvin)
        return both

    return Coefficients(
        lambda kelvin: conduction.take(nearest(kelvin)),
        lambda kelvin: 850 * heat.take(nearest(kelvin)),
        film,
    )


def own_rows() -> list[Row]:
    """Single bakes of the eight reference cases, and batches, of the model itself."""
    from tests.bake.cases import CASES

    one = [call_s(partial(_one, c.batter, c.tin, c.oven, None), times=15) for c in CASES]
    fine = [call_s(partial(_one, c.batter, c.tin, c.oven, (24, 28)), times=3) for c in CASES]
    most = MOST_OF_A_BAKE_MS / (1e3 * fmean(fine))
    found = [
        Row("a bake, mean of eight", 1e3 * fmean(one), 1e3 * fmean(fine), "ms", "24 x 28 cells",
            most),
        Row("a bake, slowest of eight", 1e3 * max(one), 1e3 * max(fine), "ms", "24 x 28 cells"),
    ]  # fmt: skip
    for name, batter, text, oven in CAKES:
        tin = tin_of(text)
        draws = draw(batter, oven, count=256, discrepancy=0.12)
        single = call_s(partial(_one, batter, tin, oven, None), times=15)
        many = call_s(partial(_many, batter, tin, oven, draws), times=5)
        peer = 257 * single
        found.append(
            Row(f"256 draws and the {name}", many, peer, "s", "257 single ones",
                MOST_OF_A_BATCH_S / peer)
        )  # fmt: skip
    return found


def _one(batter: Batter, tin: Tin, oven: Oven, cells: tuple[int, int] | None, _: int) -> Bake:
    return simulate(batter, tin, oven, cells=cells)


def _many(batter: Batter, tin: Tin, oven: Oven, draws: Draws, _: int) -> Bakes:
    return simulate_many(batter, tin, oven, draws)


def memory_row() -> Row:
    """A prediction with 256 draws, in a fresh interpreter."""
    bare = memory_mb("import numpy, scipy.linalg.lapack, scipy.special, scipy.optimize")
    own = memory_mb(PREDICTED)
    return Row("a prediction's memory", own, bare, "MB", "numpy and scipy alone",
               MOST_MEMORY_MB / bare)  # fmt: skip


@cache
def tin_of(text: str) -> Tin:
    """A tin that reads without a question."""
    found = read_tin(text).value
    if found is None:
        raise LookupError(text)
    return found
