"""A round cake of no known formula on a rack: minutes until its middle is at a temperature."""

import math

import numpy as np

from krume.bake.batter import Batter
from krume.bake.cooling.at_door import room_around
from krume.bake.cooling.body import body_of
from krume.bake.cooling.cooled import minutes_until
from krume.bake.cooling.crumb import crumb_activity, crumb_of
from krume.bake.cooling.falling import cool_down
from krume.bake.cooling.rows import cooling_doubt, cooling_value
from krume.bake.cooling.spread import cooling_draws
from krume.bake.cooling.ways import Cake, on_rack
from krume.bake.grid import Cells, Footprint, grid_of
from krume.bake.parameters import wall
from krume.base import Interval, OutOfRangeError
from krume.properties import constant, pressure_at_altitude_pa

_ENOUGH = 0.94
_PARTS = ("water", "protein", "fat", "carbohydrate", "fibre", "ash", "sugar")
_LIGHTEST_G_ML, _HEAVIEST_G_ML = 0.08, 1.2


def plain_cake_minutes(
    diameter_cm: float,
    height_cm: float,
    mass_g: float,
    *,
    room_c: float | None = None,
    start_c: float | None = None,
    goal_c: float | None = None,
    count: int = 64,
    seed: int = 7,
) -> Interval:
    """Minutes on a rack until the warmest place of a round cake is at a goal, as an interval.

    Room, start and goal are those of the rows where they are not given: 21 °C, 95 °C, and the
    temperature at which a cake is cut.
    """
    room = cooling_value("room") if room_c is None else room_c
    start = cooling_value("plain-start") if start_c is None else start_c
    goal = cooling_value("split-most") if goal_c is None else goal_c
    _check(diameter_cm, height_cm, mass_g, room, start, goal)
    doubt = cooling_doubt("room") / (1 if room_c is None else 2)
    draws = cooling_draws(room, room_doubt_k=doubt, humidity_pct=None, count=count, seed=seed)
    radius, zero = diameter_cm / 200, constant("celsius-zero")
    area, pressure = math.pi * radius**2, pressure_at_altitude_pa(0.0)
    water, protein, fat, carbohydrate, fibre, ash, sugar = (
        cooling_value(f"plain-{part}") for part in _PARTS
    )
    dense = mass_g / (1e4 * area * height_cm)
    baked = Batter(mass_g, dense, water, protein, fat, carbohydrate, fibre, ash, sugar)
    mass, height = mass_g / 1000 * draws.mass, height_cm / 100 * draws.height
    stuff = crumb_of(baked, mass / (area * height), draws.pore_share, pressure_pa=pressure)
    body = body_of(grid_of(Footprint(area, radius), Cells()), stuff, mass_kg=mass, height_m=height)
    cake = Cake(
        area_m2=area, rim_m=2 * math.pi * radius, height_m=height_cm / 100, has_hole=False,
        crust_m=cooling_value("wall-crust") / 1000, water_kg_m3=mass / (area * height) * water,
        wall=wall("aluminium"),
        tin_start_k=np.zeros((len(draws), 1)), draws=draws,
        around=room_around(draws, pressure, crumb_activity(baked)),
    )  # fmt: skip
    begin = np.broadcast_to((start + zero + draws.start_k)[:, None, None], body.cell_mass.shape)
    stage = on_rack(cake, 60 * cooling_value("longest"))
    course = cool_down(body, begin, [stage], goal_k=goal + zero, enough=_ENOUGH)
    found = minutes_until(course, goal, draws.factor)
    if found is None:
        raise _never(room, goal)
    return found


def _check(
    diameter: float, height: float, mass: float, room: float, start: float, goal: float
) -> None:
    limits = (
        ("diameter", "cm", diameter, 4.0, 60.0),
        ("height", "cm", height, 0.5, 20.0),
        ("room", "°C", room, cooling_value("room-least"), cooling_value("room-most")),
        ("start", "°C", start, 30.0, 101.0),
    )
    for field, unit, amount, least, most in limits:
        if not least <= amount <= most:
            text = f"{field} is {amount:g} {unit}; it is asked about from {least:g} to {most:g}."
            raise OutOfRangeError(
                text, field=field, got=f"{amount:g}", want=f"{least:g} to {most:g}"
            )
    density = mass / (math.pi * diameter**2 / 4 * height)
    if not _LIGHTEST_G_ML <= density <= _HEAVIEST_G_ML:
        text = (
            f"{mass:g} g in a round of {diameter:g} × {height:g} cm are {density:.2g} g/ml: no "
            f"cake is. Type mass and sizes of one cake, {_LIGHTEST_G_ML:g} to "
            f"{_HEAVIEST_G_ML:g} g/ml."
        )
        raise OutOfRangeError(text, field="mass", got=f"{mass:g}", want="a cake's density")
    if goal <= room or goal >= start:
        raise _never(room, goal) if goal <= room else OutOfRangeError(
            f"It is at {start:g} °C and wanted at {goal:g}: nothing has to cool.",
            field="goal", got=f"{goal:g}", want=f"below {start:g} °C",
        )  # fmt: skip


def _never(room: float, goal: float) -> OutOfRangeError:
    text = f"A room of {room:g} °C never brings it to {goal:g} °C. Let it stand colder."
    return OutOfRangeError(text, field="goal", got=f"{goal:g}", want=f"above {room:g} °C")
