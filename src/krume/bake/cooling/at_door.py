"""A cake at the oven's door: the cells of its bake, as warm as they are, and what is round it."""

import math
from dataclasses import dataclass

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.cooling.body import Body, Surroundings, body_of
from krume.bake.cooling.crumb import crumb_activity, crumb_of
from krume.bake.cooling.rows import cooling_value
from krume.bake.cooling.spread import CoolingDraws
from krume.bake.cooling.ways import Cake
from krume.bake.footing import footprint_of
from krume.bake.grid import Array, Cells, Footprint, grid_of
from krume.bake.parameters import wall
from krume.bake.section import Section
from krume.properties import boiling_point_c, constant, pressure_at_altitude_pa, vapour_pressure_pa
from krume.size import Tin


@dataclass(frozen=True, slots=True)
class AtDoor:
    """A baked cake: cells, their temperatures, how it stands; grams of the whole for a kilogram."""

    body: Body
    start_k: Array
    cake: Cake
    whole_g_per_kg: float


def at_door(
    batter: Batter,
    tin: Tin,
    oven: Oven,
    cut: Section,
    draws: CoolingDraws,
    *,
    loss_pct: float,
    height_cm: float,
    cells: Cells,
) -> AtDoor:
    """The bake's last cut as a body that cools; what left in the oven is out of its mass.

    The crumb keeps the batter's water, as in the oven: what was lost came out of the crust.
    """
    footprint = footprint_of(tin)
    mass = batter.mass_g / tin.count / 1000 * (1 - loss_pct / 100) * draws.mass
    height = height_cm / 100 * draws.height
    pressure = pressure_at_altitude_pa(oven.altitude_m)
    density = mass / (footprint.area_m2 * height)
    stuff = crumb_of(batter, density, draws.pore_share, pressure_pa=pressure)
    field = np.array(cut.temp_c) + constant("celsius-zero")
    # A rectangle's cylinder has less floor than the rectangle: mass goes with the floor.
    shown = math.pi * (footprint.radius_m**2 - footprint.hole_radius_m**2) / footprint.area_m2
    boiling = boiling_point_c(pressure, sugar_pct=100 * batter.sugar_share)
    body = body_of(
        grid_of(footprint, cells), stuff, mass_kg=mass * shown, height_m=height,
        boiling_k=boiling + constant("celsius-zero"),
    )  # fmt: skip
    cake = _cake(tin, oven, footprint, cut, draws, float(field[:, -1].mean()), height_cm,
                 density * batter.parts[0],
                 room_around(draws, pressure, crumb_activity(batter)))  # fmt: skip
    start = np.minimum(field[None] + draws.start_k[:, None, None], body.boiling_k)
    return AtDoor(body, start, cake, 1000 * tin.count / shown)


def _cake(
    tin: Tin, oven: Oven, footprint: Footprint, cut: Section, draws: CoolingDraws,
    at_wall_k: float, height_cm: float, water_kg_m3: Array, around: Surroundings,
) -> Cake:  # fmt: skip
    above = max(oven.temp_c + constant("celsius-zero") - at_wall_k, 0.0)
    tin_k = at_wall_k + cooling_value("tin-warmth") * above
    return Cake(
        area_m2=footprint.area_m2,
        rim_m=_rim_m(tin, footprint),
        height_m=height_cm / 100,
        has_hole=footprint.hole_radius_m > 0,
        crust_m=cut.crust_mm / 1000,
        water_kg_m3=water_kg_m3,
        wall=wall(tin.material),
        tin_start_k=np.full((len(draws), 1), tin_k),
        draws=draws,
        around=around,
    )


def _rim_m(tin: Tin, footprint: Footprint) -> float:
    if tin.length_cm is None:
        return math.pi * footprint.width_m
    return 2 * (tin.length_cm + (tin.width_cm or tin.length_cm)) / 100


def room_around(draws: CoolingDraws, pressure_pa: float, activity: float) -> Surroundings:
    """The room of all draws: its air, the water in it, and how brisk its films are."""
    zero = constant("celsius-zero")
    held = np.array([vapour_pressure_pa(float(each) - zero) for each in draws.room_k])
    return Surroundings(
        air_k=draws.room_k[:, None],
        vapour_pa=(draws.humidity * held)[:, None],
        brisk=draws.film[:, None],
        pressure_pa=pressure_pa,
        activity=activity,
    )
