"""From the oven's door to a cold cake: when it may be split, filled, wrapped, or must be rolled."""

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.cooling.at_door import AtDoor, at_door
from krume.bake.cooling.body import Course, Stage, body_of
from krume.bake.cooling.cooled import (
    Cooling,
    at_moment,
    curve_of,
    joined,
    minutes_until,
    water_left,
)
from krume.bake.cooling.crumb import in_cloth
from krume.bake.cooling.falling import cool_down
from krume.bake.cooling.rows import cooling_doubt, cooling_value
from krume.bake.cooling.spread import cooling_draws
from krume.bake.cooling.ways import as_roll, in_tin, on_cloth, on_rack, rolled_up
from krume.bake.grid import Cells, Footprint, grid_of
from krume.bake.prediction import Bake, likeliest
from krume.bake.section import sections
from krume.base import Infeasible, Interval, Notice, OutOfRangeError
from krume.properties import constant
from krume.size import Tin

WAYS = ("rack", "hung", "rolled", "tin")
_GOALS = ("split", "fill", "wrap")
# The last draws of a warm room come down very late; what counts is the ninetieth of a hundred.
_ENOUGH = 0.94
_ROLL_CELLS = Cells(rings=6, rows=5)
_LOWEST_CM, _HIGHEST_CM = 0.3, 20.0
_THICKEST_ROLL_CM = 3.0


def cool(
    batter: Batter,
    tin: Tin,
    oven: Oven,
    *,
    way: str = "rack",
    room_c: float | None = None,
    turned_at_min: float | None = None,
    wrapped_at_min: float | None = None,
    height_cm: float | None = None,
    humidity_pct: float | None = None,
    bake: Bake | None = None,
    cells: tuple[int, int] | None = None,
    count: int = 256,
    seed: int = 7,
) -> Cooling | Infeasible:
    """Cool a bake down in a room, or say what forbids the bake itself.

    `way`: `rack` (turned out at `turned_at_min`, 10 unless said), `hung` (upside down in the tin),
    `rolled` (a sheet turned out at once and rolled in its cloth), `tin` (left in it). `height_cm`
    is the baked height where it is known, else the model's own; `wrapped_at_min` wraps in foil.
    `bake` is the likeliest bake where it is known already; `cells` are (rings, rows).
    """
    room = cooling_value("room") if room_c is None else room_c
    _check_room(way, room, humidity_pct)
    turned = _turned_min(way, turned_at_min, wrapped_at_min)
    baked = likeliest(batter, tin, oven) if bake is None else bake
    if isinstance(baked, Infeasible):
        return baked
    (cut,) = sections(batter, tin, oven, at_min=[baked.minutes], cells=cells)
    height = cut.height_cm[-1] if height_cm is None else height_cm
    _check_height(way, height)
    doubt = cooling_doubt("room") / (1 if room_c is None else 2)
    draws = cooling_draws(
        room, room_doubt_k=doubt, humidity_pct=humidity_pct, count=count, seed=seed
    )
    cake = at_door(
        batter, tin, oven, cut, draws, loss_pct=baked.loss_pct, height_cm=height,
        cells=Cells() if cells is None else Cells(*cells),
    )  # fmt: skip
    if way == "rolled":
        return _rolled(cake, tin, room, height)
    return _stood(cake, way, room, turned, wrapped_at_min, height)


def _check_room(way: str, room_c: float, humidity_pct: float | None) -> None:
    least, most = cooling_value("room-least"), cooling_value("room-most")
    if way not in WAYS:
        text = f"'{way}' is no way to cool a cake. Type one of: {', '.join(WAYS)}."
        raise OutOfRangeError(text, field="way", got=way, want=", ".join(WAYS))
    if not least <= room_c <= most:
        text = f"A room of {room_c:g} °C is not known here. Type its air, {least:g} to {most:g} °C."
        raise OutOfRangeError(
            text, field="room_c", got=f"{room_c:g}", want=f"{least:g} to {most:g}"
        )
    if humidity_pct is not None and not 5 <= humidity_pct <= 95:
        text = f"Humidity of a room lies between 5 and 95 %; got {humidity_pct:g}."
        raise OutOfRangeError(text, field="humidity_pct", got=f"{humidity_pct:g}", want="5 to 95 %")


def _turned_min(way: str, turned: float | None, wrapped: float | None) -> float | None:
    if way != "rack":
        return 0.0 if way == "rolled" else None
    found = cooling_value("turned") if turned is None else turned
    for name, minutes in (("turned_at_min", found), ("wrapped_at_min", wrapped)):
        if minutes is not None and not 0 <= minutes <= cooling_value("longest"):
            text = f"{minutes:g} minutes after the oven are not asked about: 0 to 720."
            raise OutOfRangeError(text, field=name, got=f"{minutes:g}", want="0 to 720 min")
    if wrapped is not None and wrapped < found:
        text = f"It is wrapped at {wrapped:g} min, and turned out later, at {found:g}."
        raise OutOfRangeError(text, field="wrapped_at_min", got=f"{wrapped:g}", want=f"{found:g}")
    return found


def _check_height(way: str, height_cm: float) -> None:
    most = _THICKEST_ROLL_CM if way == "rolled" else _HIGHEST_CM
    if _LOWEST_CM <= height_cm <= most:
        return
    what = "A sheet to be rolled" if way == "rolled" else "A baked cake"
    text = f"{what} is {_LOWEST_CM:g} to {most:g} cm high; got {height_cm:.3g}."
    raise OutOfRangeError(
        text, field="height_cm", got=f"{height_cm:.3g}", want=f"{_LOWEST_CM:g} to {most:g} cm"
    )


def _stages(
    cake: AtDoor, way: str, turned: float | None, wrapped: float | None, last: float
) -> list[Stage]:
    if way != "rack" or turned is None:
        return [in_tin(cake.cake, last, hung=way == "hung")]
    bare = last if wrapped is None else 60 * wrapped
    stages = [in_tin(cake.cake, 60 * turned), on_rack(cake.cake, bare)]
    return stages if wrapped is None else [*stages, on_rack(cake.cake, last, wrapped=True)]


def _stood(
    cake: AtDoor, way: str, room: float, turned: float | None, wrapped: float | None, height: float
) -> Cooling:
    stages = _stages(cake, way, turned, wrapped, 60 * cooling_value("longest"))
    course = cool_down(cake.body, cake.start_k, stages, goal_k=_stop_k(_GOALS, room),
                       enough=_ENOUGH)  # fmt: skip
    factor = cake.cake.draws.factor
    found = {key: minutes_until(course, cooling_value(f"{key}-most"), factor) for key in _GOALS}
    return _answer(cake, way, room, height, course, found, turned=turned)


def _stop_k(goals: tuple[str, ...], room_c: float) -> float:
    """Where the sum may stop: the coldest goal this room can reach at all."""
    named = [cooling_value(f"{key}-most") for key in goals]
    return min([goal for goal in named if goal > room_c + 1], default=room_c + 3) + 273.15


def _rolled(cake: AtDoor, tin: Tin, room: float, height: float) -> Cooling:
    """First the flat sheet, for the window; then the roll, rolled in the window's middle."""
    last = 60 * cooling_value("longest")
    cold, hot = cooling_value("roll-coldest"), cooling_value("roll-hottest")
    flat = cool_down(cake.body, cake.start_k[:, ::-1], [on_cloth(cake.cake, last)],
                     goal_k=max(cold - 2, room + 1) + constant("celsius-zero"),
                     enough=_ENOUGH)  # fmt: skip
    factor = cake.cake.draws.factor
    window = {"roll_from": minutes_until(flat, hot, factor, which="mean_k"),
              "roll_until": minutes_until(flat, cold, factor, which="mean_k")}  # fmt: skip
    ends = [each.best for each in window.values() if each is not None]
    moment = sum(ends) / len(ends) if ends else 0.0
    course = joined(flat, _as_log(cake, tin, flat, 60 * moment, room), 60 * moment)
    found = {key: minutes_until(course, cooling_value(f"{key}-most"), factor) for key in _GOALS[1:]}
    return _answer(cake, "rolled", room, height, course, found | window, turned=0.0, rolled=moment)


def _as_log(cake: AtDoor, tin: Tin, flat: Course, at_s: float, room: float) -> Course:
    """The sheet as a loose roll in its cloth, evenly as warm as its mean when it is rolled."""
    sizes = [side / 100 for side in (tin.length_cm, tin.width_cm) if side is not None]
    sizes = sizes or [cake.cake.area_m2**0.5]
    diameter, length = rolled_up(max(sizes), min(sizes), cake.cake.height_m)
    sheet = cake.cake.height_m * cake.cake.draws.height
    grid = grid_of(Footprint(np.pi * diameter**2 / 4, diameter / 2), _ROLL_CELLS)
    body = body_of(grid, in_cloth(cake.body.stuff, sheet),
                   mass_kg=cake.body.cell_mass.sum(axis=(1, 2)) * cake.whole_g_per_kg / 1000,
                   height_m=np.full(len(sheet), length))  # fmt: skip
    warm = at_moment(flat, "mean_k", at_s)
    start = np.broadcast_to(warm[:, None, None], body.cell_mass.shape)
    last = 60 * cooling_value("longest")
    return cool_down(body, start, [as_roll(cake.cake, diameter, last)],
                     goal_k=_stop_k(("fill", "wrap"), room), enough=_ENOUGH)  # fmt: skip


def _answer(
    cake: AtDoor,
    way: str,
    room: float,
    height: float,
    course: Course,
    found: dict[str, Interval | None],
    *,
    turned: float | None,
    rolled: float | None = None,
) -> Cooling:
    return Cooling(
        way=way,
        room_c=room,
        turned_min=turned,
        start_c=float(course.mean_k[0, 0]) - constant("celsius-zero"),
        height_cm=height,
        split_min=found.get("split"),
        fill_min=found.get("fill"),
        wrap_min=found.get("wrap"),
        roll_from_min=found.get("roll_from"),
        roll_until_min=found.get("roll_until"),
        rolled_min=rolled,
        water_g=water_left(course, cake.whole_g_per_kg),
        curve=curve_of(course),
        draws=len(cake.cake.draws) - 1,
        notices=_notices(room, found),
    )


_WORDS = {"split": "cut into layers", "fill": "filled with a cream", "wrap": "wrapped"}


def _notices(room: float, found: dict[str, Interval | None]) -> tuple[Notice, ...]:
    never = tuple(
        Notice(
            "never-in-this-room",
            f"A room of {room:g} °C does not bring the middle to the {goal:g} °C at which it is "
            f"{_WORDS[key]}. Let it stand somewhere colder.",
        )
        for key in _GOALS
        if key in found and found[key] is None and (goal := cooling_value(f"{key}-most"))
    )
    promise = (
        f"Minutes after the oven, in a room of {room:g} °C, by a model that was compared with no "
        "cake. A probe in the middle decides."
    )
    return (Notice("cooling-is-a-range", promise), *never)
