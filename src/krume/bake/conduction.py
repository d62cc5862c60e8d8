"""The same cells and sweeps with constant properties: what the solver is verified with."""

from dataclasses import dataclass

import numpy as np

from krume.bake.grid import Array, Cells, Footprint, grid_of
from krume.bake.sweeps import added, passed, ring_links, row_links, solved, turn


@dataclass(frozen=True, slots=True)
class Plain:
    """A body of constant properties in air of constant temperature, film `h` on heated faces."""

    conduction_w_mk: float
    heat_j_kgk: float
    density_kg_m3: float
    film_w_m2k: float
    radius_m: float
    height_m: float
    start_c: float
    air_c: float
    side_heated: bool = True
    ends_heated: bool = True


def conduction_only(body: Plain, *, time_s: float, steps: int, cells: Cells) -> Array:
    r"""Temperatures of a plain body after a time, (rows, rings) [degC].

    rho c dT/dt = div(k grad T), k dT/dn = h (Ta - T)

    Parameters
    ----------
    body : properties, size and temperatures
    time_s : time in the air [s]
    steps : equal steps, central in time
    cells : rings and rows

    Returns
    -------
    (rows, rings) temperature [degC]

    Valid for
    ---------
    Verification only: no tin, no water, no rise.

    Source
    ------
    `carslaw-jaeger-1959`

    Examples
    --------
    >>> body = Plain(0.3, 2800, 500, 18, 0.1, 0.05, 20, 175)
    >>> field = conduction_only(body, time_s=2400, steps=400, cells=Cells(12, 14, 0.0))
    >>> field.shape
    (14, 12)
    """
    grid = grid_of(Footprint(np.pi * body.radius_m**2, body.radius_m), cells)
    height = (grid.z_share * body.height_m)[None]
    resistivity = np.full((1, cells.rows, cells.rings), 1 / body.conduction_w_mk)
    beside = ring_links(grid, height, resistivity)
    above = row_links(grid, height[:, :, None] / 2 * resistivity)
    rings, rows = np.zeros((2, *resistivity.shape))
    added(rings, beside, 1)
    added(rows, above.reshape(-1)[: -cells.rings], cells.rings)
    face = _faces(body, grid.ring_area, height, float(grid.r_centre[-1]), grid.radius)
    source = np.zeros_like(rings)
    for part, total in ((face[0], rings), (face[1], rows)):
        total += part
        source += part * body.air_c
    store = body.density_kg_m3 * body.heat_j_kgk * grid.ring_area * height[:, :, None]
    plain = _Plain(beside, above, rings, rows, face[0] + face[1], source, store * steps / time_s)
    temp = np.full_like(rings, body.start_c)
    for _ in range(steps):
        temp = temp + plain.change(temp)
    inner: Array = temp[0]
    return inner


@dataclass(frozen=True, slots=True)
class _Plain:
    """The sums of a step that never change: links, their sums, faces, source, store."""

    beside: Array
    above: Array
    rings: Array
    rows: Array
    faces: Array
    source: Array
    store: Array

    def change(self, temp: Array) -> Array:
        """Change of temperature over a step, by splitting into rings and rows."""
        rings = temp.shape[2]
        flow = self.source - self.faces * temp
        passed(flow, self.beside, temp, 1)
        passed(flow, self.above.reshape(-1)[:-rings], temp, rings)
        first = solved(self.store + 0.5 * self.rings, self.beside, flow, implicit=0.5)
        right, up = turn(self.store * first), turn(self.above).reshape(-1)[:-1]
        return turn(solved(turn(self.store + 0.5 * self.rows), up, right, implicit=0.5))


def _faces(
    body: Plain, ring_area: Array, height: Array, last_centre: float, radius: float
) -> tuple[Array, Array]:
    half = height[0] / 2
    side = np.zeros((1, height.shape[1], len(ring_area)))
    ends = np.zeros_like(side)
    if body.side_heated:
        resist = 1 / body.film_w_m2k + (radius - last_centre) / body.conduction_w_mk
        side[0, :, -1] = 2 * np.pi * radius * height[0] / resist
    if body.ends_heated:
        for row in (0, -1):
            resist = 1 / body.film_w_m2k + float(half[row]) / body.conduction_w_mk
            ends[0, row] = ring_area / resist
    return side, ends
