"""Two general packages on our problems: finite elements and finite volumes, assembled as theirs.

Both get the same body, the same cells and the same steps. With `coefficients` they ask for
conductivity, heat and film anew in every step, as the oven model does; without, they assemble once.
"""

from collections.abc import Callable
from dataclasses import dataclass
from importlib import import_module
from typing import Any

import numpy as np

from krume.bake.conduction import Plain
from krume.bake.grid import Array


@dataclass(frozen=True, slots=True)
class Coefficients:
    """Conductivity [W/mK], heat of a volume [J/m3K] and film [W/m2K] by temperature [K]."""

    conduction: Callable[[Array], Array]
    heat: Callable[[Array], Array]
    film: Callable[[Array], Array]


@dataclass(frozen=True, slots=True)
class Task:
    """A body, its cells and steps, and its coefficients where they change on the way."""

    body: Plain
    rings: int
    rows: int
    time_s: float
    steps: int
    coefficients: Coefficients | None = None


def elements_centre_c(task: Task) -> float:
    """Centre of a body by scikit-fem: quadrilaterals in (r, z), equal backward-leaning steps."""
    from scipy.sparse.linalg import splu, spsolve

    fem = import_module("skfem")

    body, coefficients = task.body, task.coefficients
    rings, rows, steps = task.rings, task.rows, task.steps
    mesh = fem.MeshQuad.init_tensor(
        np.linspace(0, body.radius_m, rings + 1), np.linspace(0, body.height_m, rows + 1)
    )
    basis = fem.Basis(mesh, fem.ElementQuad1())
    high, wide = body.height_m, body.radius_m
    ends = mesh.facets_satisfying(lambda x: (x[1] < 1e-9) | (x[1] > high - 1e-9))
    sides = mesh.facets_satisfying(lambda x: x[0] > wide - 1e-9)
    skin = fem.FacetBasis(mesh, fem.ElementQuad1(), facets=np.concatenate([ends, sides]))

    def stiffness(u: Any, v: Any, w: Any) -> Any:
        return w.x[0] * w.k * (u.grad[0] * v.grad[0] + u.grad[1] * v.grad[1])

    def mass(u: Any, v: Any, w: Any) -> Any:
        return w.x[0] * w.c * u * v

    def given(u: Any, v: Any, w: Any) -> Any:
        return w.x[0] * w.h * u * v

    def taken(v: Any, w: Any) -> Any:
        return w.x[0] * w.h * w.air * v

    flows, holds, gives = (fem.BilinearForm(form) for form in (stiffness, mass, given))
    takes = fem.LinearForm(taken)
    step, part = task.time_s / steps, 0.55
    temp = np.full(basis.N, body.start_c)
    one, face = np.ones(basis.N), np.ones(skin.N)

    def assembled(now: Array) -> tuple[Any, Any, Array]:
        if coefficients is None:
            k, c, h = (
                body.conduction_w_mk * one,
                body.density_kg_m3 * body.heat_j_kgk * one,
                (body.film_w_m2k * face),
            )
        else:
            kelvin = now + 273.15
            k, c, h = (
                coefficients.conduction(kelvin),
                coefficients.heat(kelvin),
                (coefficients.film(kelvin)),
            )
        flow = flows.assemble(basis, k=basis.interpolate(k))
        held = holds.assemble(basis, c=basis.interpolate(c))
        film = skin.interpolate(h)
        return (
            flow + gives.assemble(skin, h=film),
            held,
            takes.assemble(skin, h=film, air=body.air_c),
        )

    if coefficients is None:
        flow, held, source = assembled(temp)
        solver = splu((held / step + part * flow).tocsc())
        for _ in range(steps):
            temp = solver.solve((held / step - (1 - part) * flow) @ temp + source)
    else:
        for _ in range(steps):
            flow, held, source = assembled(temp)
            right = (held / step - (1 - part) * flow) @ temp + source
            temp = spsolve((held / step + part * flow).tocsc(), right)
    centre = basis.probes(np.array([[1e-9], [high / 2]]))
    return float((centre @ temp)[0])


def volumes_centre_c(task: Task) -> float:
    """Centre of a body by FiPy: a cylindrical grid, equal implicit steps."""
    fipy, solvers = import_module("fipy"), import_module("fipy.solvers.scipy")
    body, coefficients = task.body, task.coefficients
    rings, rows, steps = task.rings, task.rows, task.steps
    wide, high = body.radius_m / rings, body.height_m / rows
    mesh = fipy.CylindricalGrid2D(dr=wide, dz=high, nr=rings, nz=rows)
    temp = fipy.CellVariable(mesh=mesh, value=float(body.start_c), hasOld=True)
    solver, step = solvers.LinearLUSolver(), task.time_s / steps
    outer = mesh.facesRight | mesh.facesTop | mesh.facesBottom
    half = fipy.FaceVariable(mesh=mesh, value=high / 2)
    half.setValue(wide / 2, where=mesh.facesRight)
    conduction = fipy.FaceVariable(mesh=mesh, value=float(body.conduction_w_mk))
    through = fipy.FaceVariable(mesh=mesh, value=0.0)
    heat = fipy.CellVariable(mesh=mesh, value=float(body.density_kg_m3 * body.heat_j_kgk))

    def renewed() -> None:
        if coefficients is None:
            k = np.full(mesh.numberOfFaces, body.conduction_w_mk)
            h = np.full(mesh.numberOfFaces, body.film_w_m2k)
        else:
            kelvin = np.asarray(temp.faceValue) + 273.15
            k, h = coefficients.conduction(kelvin), coefficients.film(kelvin)
            heat.setValue(coefficients.heat(np.asarray(temp.value) + 273.15))
        conduction.setValue(np.where(outer, 0.0, k))
        through.setValue(np.where(outer, 1 / (1 / h + np.asarray(half) / k), 0.0))

    renewed()
    normal = mesh.faceNormals
    robin = (through * normal).divergence
    equation = (
        fipy.TransientTerm(coeff=heat)
        == fipy.DiffusionTerm(coeff=conduction)
        - fipy.ImplicitSourceTerm(coeff=robin)
        + robin * body.air_c
    )
    for _ in range(steps):
        temp.updateOld()
        if coefficients is not None:
            renewed()
        equation.solve(var=temp, dt=step, solver=solver)
    field = np.asarray(temp.value).reshape(rows, rings)
    return centre_of(field, body)


def centre_of(field: Array, body: Plain) -> float:
    """Even quadratic through the two cells nearest the middle, in height and then in radius."""
    rows, rings = field.shape
    z = (np.arange(rows) + 0.5) / rows * body.height_m - body.height_m / 2
    r = (np.arange(rings) + 0.5) / rings * body.radius_m
    up, next_up = rows // 2, rows // 2 + 1
    middle = [_even(z[up], field[up, i], z[next_up], field[next_up, i]) for i in (0, 1)]
    return _even(r[0], middle[0], r[1], middle[1])


def _even(x0: float, y0: float, x1: float, y1: float) -> float:
    return float(y0 - (y1 - y0) * x0**2 / (x1**2 - x0**2))
