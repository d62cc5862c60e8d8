"""What a bake keeps from step to step, and what it hands out."""

from dataclasses import dataclass, field

import numpy as np

from krume.bake.course import Course
from krume.bake.draws import Draws
from krume.bake.grid import Array, Grid
from krume.bake.material import Material
from krume.bake.parameters import Wall


@dataclass(frozen=True, slots=True)
class Setup:
    """What does not change during a bake: the case, its grid, tables and draws."""

    grid: Grid
    material: Material
    draws: Draws
    course: Course
    wall: Wall
    liner: float
    hole: bool
    cell_mass: Array
    row_height: Array
    wet_water: Array
    dry_water: Array
    film: Array
    fan: bool
    target: Array


@dataclass(slots=True)
class State:
    """What changes: the only mutable thing of the model, and it never leaves this module."""

    temp: Array
    rate: Array
    growth: Array
    starch: Array
    egg: Array
    bottom: Array
    side: Array
    inner: Array
    bottom_rate: Array
    side_rate: Array
    inner_rate: Array
    dry_bottom: Array
    dry_side: Array
    dry_inner: Array
    dry_top: Array
    flux: Array
    front: Array
    front_rate: Array
    outer: Array
    outer_rate: Array
    last_front: Array
    last_outer: Array
    colour: Array
    time: Array
    step: Array
    lost: Array
    failed: np.ndarray[tuple[int, ...], np.dtype[np.bool_]]
    steps: int = 0
    done: Array = field(default_factory=lambda: np.empty(0))
    before: Array = field(default_factory=lambda: np.empty(0))
    loss_at_done: Array = field(default_factory=lambda: np.empty(0))


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
    """Minutes at which each rule was met, (draws, 3) as core, set, colour; inf is never."""

    minutes: Array
    loss: Array
    boiling_c: float
    core_c: float
    track: Track
    steps: int
