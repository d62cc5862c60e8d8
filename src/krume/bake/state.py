"""What a bake keeps from step to step, and what it hands out."""

from dataclasses import dataclass, fields, replace
from typing import Self

import numpy as np

from krume.bake.course import Course
from krume.bake.draws import Draws
from krume.bake.grid import Array, Grid
from krume.bake.jacket import Layers
from krume.bake.material import Material

Place = np.ndarray[tuple[int, ...], np.dtype[np.intp]]
Which = np.ndarray[tuple[int, ...], np.dtype[np.bool_]]


@dataclass(frozen=True, slots=True)
class Faces:
    """Where a tin touches the batter, (faces,): all rings of the bottom, then rows of the walls.

    `cell` and `row` are the cell and its row, `skin_cell` and `skin_row` the same with the top's
    rings first; areas and half cells are `…_flat` where they stand
    still and `…_tall` for each metre of the row's height.
    """

    cell: Place
    row: Place
    skin_cell: Place
    skin_row: Place
    area_flat: Array
    area_tall: Array
    half_flat: Array
    half_tall: Array
    shared: tuple[tuple[int, int], ...]


@dataclass(slots=True)
class PerDraw:
    """Arrays whose first axis is the draws; some of them can be kept and the others let go."""

    def only(self, which: Which) -> Self:
        """The same for some of the draws."""
        return replace(self, **{f.name: getattr(self, f.name)[which] for f in fields(self)})


@dataclass(slots=True)
class Own(PerDraw):
    """What does not change during a bake but differs from draw to draw."""

    cell_mass: Array
    row_height: Array
    empty: Array
    solid: Array
    retention: Array
    lift: Array
    start_k: Array
    leaven: Array
    leaven_most: Array
    pores: Array
    film: Array
    glow: Array
    film_top: Array
    per_dry: Array
    crust: Array
    crust_vapour: Array
    wet: Array
    oven_vapour: Array
    target: Array


@dataclass(frozen=True, slots=True)
class Setup:
    """What does not change during a bake: the case, its grid, tables and draws.

    `core` and `set` are the cells, row after row, in which the coldest and the least set is looked
    for.
    """

    grid: Grid
    faces: Faces
    material: Material
    draws: Draws
    course: Course
    layers: Layers | None
    wall_heat: float
    wall_m2k_w: float
    core: slice | Place
    set: slice | Place
    has_leavening: bool
    own: Own

    def only(self, which: Which) -> "Setup":
        """The same case for some of its draws."""
        layers = None if self.layers is None else self.layers.only(which)
        course = self.course.only(which)
        return replace(self, own=self.own.only(which), course=course, layers=layers)


@dataclass(slots=True)
class State(PerDraw):
    """What changes: the only mutable thing of the model, and it never leaves this folder.

    `skin` is the outer temperature of the top's rings, then of the tin at every face; `dry` the
    water that left there for each area. `react` is starch and egg, `least` the lesser; `left` is
    what has not browned. `before` is how core, set and colour stand; `done` when each rule was met
    [s], `loss` the share lost at the last of them; `most` the last step's largest change.
    """

    temp: Array
    rate: Array
    growth: Array
    react: Array
    least: Array
    skin: Array
    skin_rate: Array
    dry: Array
    flux: Array
    front: Array
    front_rate: Array
    last_front: Array
    last_outer: Array
    left: Array
    layer: Array
    layer_water: Array
    time: Array
    step: Array
    lost: Array
    before: Array
    done: Array
    loss: Array
    most: Array


@dataclass(frozen=True, slots=True)
class Track:
    """Nominal bake at every step: minutes, core, top surface [degC], colour, loss share."""

    time_min: tuple[float, ...]
    core_c: tuple[float, ...]
    top_c: tuple[float, ...]
    colour: tuple[float, ...]
    loss: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Outcome:
    """Minutes at which each rule was met, (draws, 3) as core, set, colour; inf is never.

    `height_m` is how high the nominal cake has risen.
    """

    minutes: Array
    loss: Array
    boiling_c: float
    core_c: float
    track: Track
    height_m: float
    steps: int
