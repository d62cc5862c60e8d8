"""One oven's air while several loads take heat from it: heaters, losses to the room, the door."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from krume.bake.grid import Array
from krume.bake.parameters import half_width_of, value
from krume.bake.strata import even_normal
from krume.base import Figure
from krume.evidence import figures

AIR_STEP_S = 5.0
"""Step of the air's march; the heat of a step is exact, only its course inside it is not."""

_J_PER_KWH = 3.6e6


@cache
def oven_air_figures() -> dict[str, Figure]:
    """All figures of oven_air.csv, with their papers."""
    return figures("oven_air.csv")


def oven_air_value(key: str) -> float:
    """Value of a figure of oven_air.csv."""
    return oven_air_figures()[key].value


def oven_air_half_width(key: str) -> float:
    """How far a figure may be off, or DataError where its row does not say."""
    return half_width_of("oven_air.csv", key, oven_air_figures()[key])


@dataclass(frozen=True, slots=True)
class OvenBox:
    """An oven as one lump of heat, and the shelf in it; `tins_most` is None where nobody said.

    `power_known` narrows the doubt about the heaters to none: it stands on the oven's plate.
    """

    heat_j_k: float
    loss_w_k: float
    power_w: float
    room_c: float
    shelf_length_cm: float
    shelf_width_cm: float
    door_fall_k: float
    tins_most: int | None = None
    power_known: bool = False


def oven_box(*, power_w: float | None = None, tins_most: int | None = None) -> OvenBox:
    """A domestic oven by the rows of the table, with what is known of this one."""
    return OvenBox(
        heat_j_k=oven_air_value("oven-heat"),
        loss_w_k=oven_air_value("oven-loss"),
        power_w=oven_air_value("oven-power") if power_w is None else power_w,
        room_c=oven_air_value("room"),
        shelf_length_cm=oven_air_value("shelf-length"),
        shelf_width_cm=oven_air_value("shelf-width"),
        door_fall_k=oven_air_value("door-fall"),
        tins_most=tins_most,
        power_known=power_w is not None,
    )


@dataclass(frozen=True, slots=True)
class BoxDraws:
    """What is not known of a box, (draws,) each; draw 0 is the box as it is said."""

    heat_j_k: Array
    loss_w_k: Array
    power_w: Array
    room_c: Array

    def __len__(self) -> int:
        return len(self.heat_j_k)


def box_draws(box: OvenBox, *, count: int = 0, seed: int = 7) -> BoxDraws:
    """The box and `count` draws of its doubts; equal seeds give equal draws."""
    rng = np.random.default_rng(seed)

    def times(middle: float, key: str) -> Array:
        spread = oven_air_half_width(key) / oven_air_value(key)
        return np.concatenate([[middle], middle * np.exp(spread * even_normal(count, rng))])

    heat, loss = times(box.heat_j_k, "oven-heat"), times(box.loss_w_k, "oven-loss")
    power = times(box.power_w, "oven-power")
    if box.power_known:
        power = np.full(count + 1, box.power_w)
    room = box.room_c + oven_air_half_width("room") * even_normal(count, rng)
    return BoxDraws(heat, loss, power, np.concatenate([[box.room_c], room]))


@dataclass(frozen=True, slots=True)
class OvenAir:
    """The air of one day at the oven: `time_min` (steps + 1,), the rest (draws, steps).

    `short_k` (draws, steps + 1) is how far the air stands under its setting; heater and loss are
    the means of each step.
    """

    time_min: Array
    short_k: Array
    heater_w: Array
    loss_w: Array

    def heater_kwh(self, steps: int | None = None) -> Array:
        """What the heaters gave in the first steps, or in all, (draws,)."""
        total: Array = self.heater_w[:, :steps].sum(axis=1) * AIR_STEP_S / _J_PER_KWH
        return total


def oven_air(
    draws: BoxDraws,
    set_c: float,
    taken_j: Array,
    doors: Sequence[tuple[float, float]],
    *,
    is_strong: bool = False,
) -> OvenAir:
    r"""March the air of an oven from its setting, loads taking heat and the door being opened.

    C dT/dt = P - G (T - T_room) - q ;  P = min(P_most, G (T - T_room) + (C/tau) (T_set - T))

    The thermostat's cycling is averaged: it answers a shortfall with the same time constant as the
    air comes back after the door, and loads hold the air no further down than its band, as far as
    the heaters can. A door takes its fall out at once.

    Parameters
    ----------
    draws : boxes, (draws,) each [J/K, W/K, W, degC]
    set_c : setting of the air [degC]
    taken_j : heat all loads have taken by each step's end, from 0, (steps + 1,) [J]
    doors : moments and falls of the air [min, K]
    is_strong : heaters without a limit, as the bake model takes an oven alone to be

    Returns
    -------
    shortfall, heater and loss of every step [K, W, W]

    Raises
    ------
    nothing

    Valid for
    ---------
    An oven that is hot and at its setting at minute 0.

    Source
    ------
    `mathematics`, balance of heat of one lump, backward Euler

    Examples
    --------
    >>> idle = oven_air(box_draws(oven_box()), 170.0, np.zeros(721), ())
    >>> round(float(idle.heater_kwh()[0]), 3)
    0.444
    """
    steps = len(taken_j) - 1
    falls = np.zeros(steps)
    for minute, fall in doors:
        place = int(minute * 60 / AIR_STEP_S)
        if 0 <= place < steps:
            falls[place] += fall
    taken_w = np.diff(taken_j) / AIR_STEP_S
    opened, loads = _decayed(draws, falls), _decayed(draws, AIR_STEP_S * _per_k(draws) * taken_w)
    heater = _heater(draws, set_c, opened + loads)
    weak = not is_strong and (heater > draws.power_w[:, None]).any()
    if weak or (loads > oven_air_value("thermostat-band")).any():
        loads, heater = _stepped(draws, set_c, opened, taken_w, is_strong=is_strong)
    short = opened + loads
    minutes = AIR_STEP_S / 60 * np.arange(steps + 1, dtype=np.float64)
    loss = draws.loss_w_k[:, None] * (set_c - short - draws.room_c[:, None])
    before = np.zeros((len(draws), 1))
    return OvenAir(minutes, np.concatenate([before, short], axis=1), heater, loss)


def _per_k(draws: BoxDraws) -> Array:
    per: Array = 1 / draws.heat_j_k[:, None]
    return per


def _decayed(draws: BoxDraws, pushed: Array) -> Array:
    """What pushes the air down, each step's share coming back with the door's time constant."""
    keep = 1 / (1 + AIR_STEP_S / value("door-recovery"))
    # Nothing pushed is negative, so that the sum of ever larger powers loses no digit.
    powers = keep ** np.arange(pushed.shape[-1], dtype=np.float64)
    short: Array = keep * powers * np.cumsum(pushed / powers, axis=-1)
    return np.broadcast_to(short, (len(draws), pushed.shape[-1]))


def _heater(draws: BoxDraws, set_c: float, short: Array) -> Array:
    """What the thermostat asks at a shortfall: the losses, and the way back."""
    answer = (draws.heat_j_k / value("door-recovery"))[:, None] * short
    asked: Array = answer + draws.loss_w_k[:, None] * (set_c - short - draws.room_c[:, None])
    return asked


def _stepped(
    draws: BoxDraws, set_c: float, doors: Array, taken_w: Array, *, is_strong: bool
) -> tuple[Array, Array]:
    """Shortfall of the loads and heater of every step, as far as the heaters can."""
    loads, heater = np.zeros((2, *doors.shape))
    now = np.zeros(len(draws))
    most = np.full(len(draws), np.inf) if is_strong else draws.power_w
    for step, taken in enumerate(taken_w):
        now, heater[:, step] = _one(draws, set_c, now, doors[:, step], float(taken), most)
        loads[:, step] = now
    return loads, heater


def _one(
    draws: BoxDraws, set_c: float, now: Array, door: Array, taken_w: float, most_w: Array
) -> tuple[Array, Array]:
    """Shortfall of the loads after one step, and what the heaters gave in it.

    It goes no further than the thermostat's band while the heaters can hold it there; what they
    cannot give stays in the shortfall, after a door too.
    """
    pace, answer = AIR_STEP_S / draws.heat_j_k, draws.heat_j_k / value("door-recovery")
    free = (now + pace * taken_w) / (1 + AIR_STEP_S / value("door-recovery"))
    held = np.minimum(free, oven_air_value("thermostat-band"))
    back = answer * door
    lost = draws.loss_w_k * (set_c - door - held - draws.room_c)
    asked = lost + back + taken_w - (held - now) / pace
    needs = taken_w - most_w + draws.loss_w_k * (set_c - door - draws.room_c) + back
    weak = asked > most_w
    with np.errstate(invalid="ignore"):
        forced = (now + pace * needs) / (1 + pace * draws.loss_w_k)
    return np.where(weak, forced, held), np.where(weak, most_w, asked)


def warming_kwh(box: OvenBox, set_c: float) -> float:
    """Energy to heat the empty oven from the room's air to its setting at full power.

    >>> round(warming_kwh(oven_box(), 170.0), 2)
    0.3
    """
    rise, gain = set_c - box.room_c, box.power_w / box.loss_w_k
    if rise >= gain:
        return float("inf")
    seconds = -box.heat_j_k / box.loss_w_k * np.log(1 - rise / gain)
    return float(box.power_w * seconds) / _J_PER_KWH


def door_back_min() -> float:
    """Minutes after the door until the air of an oven with power to spare is near its setting.

    >>> round(door_back_min(), 1)
    5.5
    """
    near = oven_air_value("shown-short") / value("door-dip")
    return float(-value("door-recovery") * np.log(near)) / 60
