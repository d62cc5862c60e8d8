"""A case before its first step: cells, faces, films and tables for all draws."""

import numpy as np

from krume.bake.around import around_value
from krume.bake.batter import Around, Batter, Oven
from krume.bake.course import course_of
from krume.bake.draws import Draws
from krume.bake.grid import Array, Cells, Footprint, Grid, grid_of
from krume.bake.jacket import layers_of
from krume.bake.material import (
    GAS_FULL_K,
    Material,
    interpolated,
    material_of,
    pore_vapour_pa,
)
from krume.bake.parameters import Wall, value
from krume.bake.state import Faces, Own, Place, Setup, State
from krume.bake.surfaces import STEFAN_BOLTZMANN
from krume.properties import constant

_FIRST_STEP_S = 4.0
_FRONT_STANDS_K = 373.0
_METAL_M2K_W = 1e-3


def prepare(
    batter: Batter,
    footprint: Footprint,
    wall: Wall,
    oven: Oven,
    draws: Draws,
    *,
    pressure_pa: float,
    core_k: Array,
    cells: Cells,
    liner_m2k_w: float = 0.0,
) -> Setup:
    """Grid, tables and films of a case, for all draws."""
    grid, material = grid_of(footprint, cells), material_of(batter, pressure_pa)
    faces = faces_of(grid, has_hole=footprint.hole_radius_m > 0)
    air = _air_film(footprint, oven, draws)
    course = course_of(oven, draws.oven_k)
    layers = layers_of(
        oven.around, cells.rings, cells.rows, course=course, begin_k=draws.start_k,
        pressure_pa=pressure_pa, oven_vapour=_held(draws, pressure_pa),
        film=value("lewis") / value("air-heat") * air[:, None],
    )  # fmt: skip
    rings, shine = cells.rings, np.full(cells.rings + len(faces.cell), wall.emissivity)
    shine[:rings] = value("emissivity-cake")
    if layers is not None:
        shine[rings:][layers.at] = layers.emissivity
    taken = _taken(oven.around, draws, rings, len(shine))
    own = _inside(batter, footprint, draws, grid, faces, material) | _outside(
        batter, draws, faces, material, air
    )
    return Setup(
        grid=grid,
        faces=faces,
        material=material,
        draws=draws,
        course=course,
        layers=layers,
        wall_heat=_wall_heat(wall),
        wall_m2k_w=wall.resistance_m2k_w + liner_m2k_w,
        core=_core(grid) if layers is None else _middle(grid),
        set=slice(None) if layers is None else _middle(grid),
        has_leavening=batter.gas_ratio > 0,
        own=Own(
            **own,
            film=air[:, None] * taken,
            glow=STEFAN_BOLTZMANN * draws.heat[:, None] * shine * taken,
            target=np.stack([core_k, draws.set_share, draws.colour], axis=1),
        ),
    )


def faces_of(grid: Grid, *, has_hole: bool) -> Faces:
    """Bottom, side and, in a tube, the wall of its hole."""
    rings, rows = grid.ring_area.size, grid.z_share.size
    ring, row = np.arange(rings), np.arange(rows)
    cell, at_row = [ring, row * rings + rings - 1], [0 * ring, row]
    flat, tall = [grid.ring_area, 0.0 * row], [0.0 * ring, grid.ring_face[-1] + 0.0 * row]
    half_flat = [0.0 * ring, grid.radius - grid.r_centre[-1] + 0.0 * row]
    half_tall = [0.5 + 0.0 * ring, 0.0 * row]
    shared = [(rings - 1, rings)]
    if has_hole:
        cell, at_row = [*cell, row * rings], [*at_row, row]
        flat, tall = [*flat, 0.0 * row], [*tall, grid.ring_face[0] + 0.0 * row]
        half_flat = [*half_flat, grid.r_centre[0] - grid.hole + 0.0 * row]
        half_tall, shared = [*half_tall, 0.0 * row], [*shared, (0, rings + rows)]
    return Faces(
        cell=np.concatenate(cell),
        row=np.concatenate(at_row),
        skin_cell=np.concatenate([(rows - 1) * rings + ring, *cell]),
        skin_row=np.concatenate([0 * ring + rows - 1, *at_row]),
        area_flat=np.concatenate(flat)[None],
        area_tall=np.concatenate(tall)[None],
        half_flat=np.concatenate(half_flat)[None],
        half_tall=np.concatenate(half_tall)[None],
        shared=tuple(shared),
    )


def _wall_heat(wall: Wall) -> float:
    """Heat of a wall that takes part: a metal one is thinner than its row, others are not."""
    is_metal = wall.resistance_m2k_w < _METAL_M2K_W
    return (value("tin-heat-share") if is_metal else 1.0) * wall.heat_per_area_j_m2k


def _core(grid: Grid) -> slice:
    """All cells of the lower rows."""
    rows = max(1, int((grid.z_centre <= value("core-rows")).sum()))
    return slice(0, rows * grid.ring_area.size)


def _middle(grid: Grid) -> Place:
    """Cells where a skewer goes: away from an edge that is kept cool, of the lower rows."""
    reach = around_value("look-rings")
    if grid.hole > 0:
        off = np.abs(grid.r_centre - (grid.radius + grid.hole) / 2) * 2
        inside = off <= reach * (grid.radius - grid.hole)
    else:
        inside = grid.r_centre <= reach * grid.radius
    inside |= inside.size == 1
    above = grid.z_centre >= around_value("look-rows")
    low = above & (grid.z_centre <= value("core-rows"))
    low |= low.size < 3
    return np.flatnonzero(low[:, None] & inside)


def _air_film(footprint: Footprint, oven: Oven, draws: Draws) -> Array:
    """The air's own film of a face [W/m2K], (draws,)."""
    still = value("heat-static") * (value("heat-static-size") / footprint.width_m) ** 0.25
    film: Array = draws.heat * draws.film * (value("heat-fan") if oven.fan else still)
    return film


def _taken(around: Around, draws: Draws, rings: int, faces: int) -> Array:
    """What a face takes of the oven's heat: the tin's part, and the rack's of top and bottom."""
    taken = np.ones((len(draws), faces))
    taken[:, rings:] = draws.tin[:, None]
    if around.rack != "middle":
        near, far = around_value("rack-near"), around_value("rack-far")
        taken[:, :rings] *= near if around.rack == "high" else far
        taken[:, rings : 2 * rings] *= near if around.rack == "low" else far
    return taken


def _held(draws: Draws, pressure_pa: float) -> Array:
    """The oven's moisture as the Stefan flow takes it, ln P/(P - p), (draws, 1)."""
    held: Array = -np.log1p(-draws.oven_vapour / pressure_pa)[:, None]
    return held


def _inside(
    batter: Batter,
    footprint: Footprint,
    draws: Draws,
    grid: Grid,
    faces: Faces,
    material: Material,
) -> dict[str, Array]:
    """The batter itself: masses, foam and what makes it rise."""
    row_height = grid.z_share * (draws.mass / (draws.density * footprint.area_m2))[:, None]
    water = draws.density * batter.parts[0]
    empty = np.maximum(1 - draws.density / material.solid_kg_m3, value("least-air"))
    start = draws.start_k
    held, _ = interpolated(start)
    first = pore_vapour_pa(held, material.water_activity, material.pressure_pa)
    cell_mass = draws.density[:, None, None] * grid.ring_area * row_height[:, :, None]
    alike = {
        "empty": empty,
        "solid": 1 - empty,
        "retention": draws.gas_retention,
        "lift": (material.pressure_pa - first) / start,
        "start_k": start,
        "leaven": batter.gas_ratio / (GAS_FULL_K - start),
        "leaven_most": np.full(len(draws), batter.gas_ratio),
        "pores": draws.vapour_conduction,
    }
    return {name: _spread(each, cell_mass.shape) for name, each in alike.items()} | {
        "cell_mass": cell_mass,
        "row_height": row_height,
        "per_dry": 1 / (row_height[:, faces.skin_row] * water[:, None]),
    }


def _outside(
    batter: Batter, draws: Draws, faces: Faces, material: Material, air: Array
) -> dict[str, Array]:
    """The crust, and what vapour meets on its way out; of the faces, only the top is wet."""
    warm = (_FRONT_STANDS_K / 273.15) ** 1.8
    diffusion = value("diffusion-air") * warm * constant("standard-pressure") / material.pressure_pa
    top = (len(draws), len(faces.skin_cell) - len(faces.cell))
    skin = (len(draws), len(faces.skin_cell))
    wet = np.zeros(skin)
    wet[:, : top[1]] = (draws.wet_skin * draws.density * batter.parts[0])[:, None]
    return {
        "crust": _spread(1 / draws.crust_conduction, skin),
        "crust_vapour": _spread(1 / (draws.crust_diffusion * diffusion), top),
        "film_top": _spread(value("air-heat") / (value("lewis") * air), top),
        "oven_vapour": _spread(_held(draws, material.pressure_pa)[:, 0], top),
        "wet": wet,
    }


def _spread(each: Array, shape: tuple[int, ...]) -> Array:
    """One figure a draw on all its places: small arrays of one shape are the quickest."""
    return np.broadcast_to(each.reshape(-1, *[1] * (len(shape) - 1)), shape).copy()


def start(setup: Setup) -> State:
    """State at the door: everything at the batter's temperature."""
    draws, rows, rings = setup.own.cell_mass.shape
    begin, faces = setup.own.start_k[:, 0, :1], len(setup.faces.cell)
    before = np.concatenate([begin, np.zeros((draws, 2))], axis=1)
    skin = np.broadcast_to(begin, (draws, rings + faces)).copy()
    layered = 0 if setup.layers is None else len(setup.layers.wet)

    def none(*shape: int) -> Array:
        return np.zeros((draws, *shape))

    return State(
        temp=setup.own.start_k.copy(),
        rate=none(rows, rings),
        growth=1 + none(rows, rings),
        react=none(2, rows, rings),
        least=none(rows, rings),
        skin=skin,
        skin_rate=none(rings + faces),
        dry=none(rings + faces),
        flux=none(rings + faces),
        front=skin[:, :rings].copy(),
        front_rate=none(rings),
        last_front=skin[:, :rings].copy(),
        last_outer=skin[:, :rings].copy(),
        left=constant("browning-limit") + none(rings),
        layer=none(layered) if setup.layers is None else setup.layers.start_k.copy(),
        layer_water=none(layered) + (0.0 if setup.layers is None else setup.layers.water),
        time=none(),
        step=np.full(draws, _FIRST_STEP_S),
        lost=none(),
        before=before,
        done=np.where(before >= setup.own.target, 0.0, np.inf),
        loss=none() + np.nan,
        most=none(),
    )
