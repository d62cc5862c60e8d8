"""What no batter, tin or oven can be: refused before anything is worked out."""

import math

from krume.bake.batter import JACKETS, RACKS, UNDERS, AirCourse, Around, Batter, Oven
from krume.bake.footing import depth_cm, floor_cm2
from krume.bake.parameters import figures, wall
from krume.base import InputError, OutOfRangeError
from krume.properties import constant
from krume.size import Tin

PARTS = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
_LEAST_WATER, _MOST_SUGAR = 0.02, 0.90
_WHOLE = (0.8, 1.2)
_MOST_CELLS = 200
_SLACK = 0.02


def check(batter: Batter, tin: Tin, oven: Oven) -> None:
    """Nothing, or OutOfRangeError that names the figure, what it is and what it may be."""
    _check_batter(batter)
    _check_parts(batter)
    _check_tin(tin)
    _check_oven(oven)
    _check_around(oven.around)


def check_depth(batter: Batter, tin: Tin) -> None:
    """Nothing, or OutOfRangeError where the batter is a film on the floor or a column."""
    _between("depth_cm", depth_cm(batter, tin), 0.1, 30.0, "cm", "The batter would stand")


def check_cells(cells: tuple[int, int]) -> None:
    """Nothing, or OutOfRangeError where a grid has no cells or too many."""
    is_pair = isinstance(cells, tuple | list) and len(cells) == 2
    if not is_pair or not all(_is_count(each) for each in cells):
        text = (
            f"A grid has 1 to {_MOST_CELLS} rings and as many rows, two whole numbers; got {cells}."
        )
        raise OutOfRangeError(text, field="cells", got=str(cells), want=f"1 to {_MOST_CELLS}")


def check_probed(core_c: float, after_min: float | None) -> None:
    """Nothing, or OutOfRangeError where a reading or the minutes before it cannot be."""
    _between("core_c", core_c, -50.0, 250.0, "°C", "The core is read at")
    if after_min is not None and not 0 < after_min < math.inf:
        text = f"A core after {after_min:g} minutes tells no pace. Give the minutes since the door."
        raise OutOfRangeError(text, field="after_min", got=f"{after_min:g}", want="above 0 min")


def _is_count(each: object) -> bool:
    return isinstance(each, int) and not isinstance(each, bool) and 1 <= each <= _MOST_CELLS


def _between(field: str, amount: float, low: float, high: float, unit: str, what: str) -> None:
    if isinstance(amount, bool) or not low <= amount <= high:
        want = f"{low:g} to {high:g} {unit}".rstrip()
        text = f"{what} {amount:g} {unit}".rstrip() + f". What can be is {want}."
        raise OutOfRangeError(text, field=field, got=f"{amount:g}", want=want)


def _check_batter(batter: Batter) -> None:
    _between("mass_g", batter.mass_g, 0.5, 50_000.0, "g", "The batter weighs")
    _between("density_g_ml", batter.density_g_ml, 0.1, 1.6, "g/ml", "The batter's density is")
    if batter.temp_c <= 0:
        text = (
            f"The batter is at {batter.temp_c:g} °C, frozen: the model knows no thawing. "
            "Let it thaw and give its temperature then, above 0 °C."
        )
        raise OutOfRangeError(text, field="temp_c", got=f"{batter.temp_c:g}", want="above 0 °C")
    _between("temp_c", batter.temp_c, 0.0, 60.0, "°C", "The batter is at")
    _between("gas_ratio", batter.gas_ratio, 0.0, 2.0, "", "The gas ratio is")
    _between("core_altitude_m", batter.core_altitude_m, *_altitudes(), "m", "The core is for")
    if batter.core_c is not None:
        _between("core_c", batter.core_c, 40.0, 130.0, "°C", "The core is to reach")
    colours = [key.removeprefix("colour-") for key in figures() if key.startswith("colour-")]
    _one_of("colour", batter.colour, tuple(colours))


def _altitudes() -> tuple[float, float]:
    return constant("altitude-least"), constant("kitchen-altitude-most")


def _check_parts(batter: Batter) -> None:
    for name in (*PARTS, "sugar"):
        _between(name, getattr(batter, name), 0.0, 1.0, "", f"The {name} of the batter is")
    whole = math.fsum(getattr(batter, name) for name in PARTS)
    _between("parts", whole, *_WHOLE, "", "The parts of the batter sum to")
    _between("water", batter.water, _LEAST_WATER, 1.0, "", "The water of the batter is")
    if batter.sugar > batter.carbohydrate + _SLACK:
        text = (
            f"The sugar of the batter is {batter.sugar:g}, its carbohydrate {batter.carbohydrate:g}"
            ": sugar is part of the carbohydrate and cannot be more."
        )
        want = f"at most {batter.carbohydrate:g}"
        raise OutOfRangeError(text, field="sugar", got=f"{batter.sugar:g}", want=want)
    share = batter.sugar_share
    _between("sugar", share, 0.0, _MOST_SUGAR, "", "Sugar over sugar and water is")


def _check_tin(tin: Tin) -> None:
    wall(tin.material)
    if not isinstance(tin.count, int) or not 1 <= tin.count <= 1000:
        text = f"A tin has 1 to 1000 cups; got {tin.count}."
        raise OutOfRangeError(text, field="count", got=str(tin.count), want="1 to 1000")
    for field in ("diameter_cm", "length_cm", "width_cm", "height_cm"):
        side = getattr(tin, field)
        if side is not None:
            _between(field, side, 0.5, 200.0, "cm", f"The tin's {field.split('_')[0]} is")
    if tin.hole_cm is not None and tin.diameter_cm is not None:
        most = tin.diameter_cm - 1.0
        _between("hole_cm", tin.hole_cm, 0.0, max(most, 0.0), "cm", "The hole in the tin is")
    if not math.isfinite(floor_cm2(tin)) or floor_cm2(tin) <= 0:
        text = f"The tin '{tin.read}' has no floor. Type its inside size, in cm."
        raise OutOfRangeError(text, field="tin", got=tin.read, want="inside size in cm")


def _check_oven(oven: Oven) -> None:
    _between("temp_c", oven.temp_c, 0.0, 400.0, "°C", "The oven is at")
    _between("altitude_m", oven.altitude_m, *_altitudes(), "m", "The oven stands at")
    _between("heat", oven.heat, 1e-6, 50.0, "", "The oven's heat is")
    _between("ln_heat_sd", oven.ln_heat_sd, 0.0, 2.0, "", "The doubt of the oven's heat is")
    _between("temp_half_width_c", oven.temp_half_width_c, 0.0, 100.0, "°C", "The oven's doubt is")


def _check_around(around: Around) -> None:
    _one_of("jacket", around.jacket, JACKETS)
    _one_of("under", around.under, UNDERS)
    _one_of("rack", around.rack, RACKS)
    if around.warming_from_c is not None:
        _between("warming_from_c", around.warming_from_c, 0.0, 400.0, "°C", "The oven warms from")
    for minute in around.door_min:
        _between("door_min", minute, 0.0, 1000.0, "min", "The door is opened at")
    if around.course is not None:
        _check_course(around.course)


def _check_course(course: AirCourse) -> None:
    if len(course.time_min) != len(course.temp_c) or not course.time_min:
        text = "A course of the air has one temperature for each of its minutes, at least one."
        got = f"{len(course.time_min)} and {len(course.temp_c)}"
        raise OutOfRangeError(text, field="course", got=got, want="as many of both")
    for minute in course.time_min:
        _between("course", minute, -1e4, 1e4, "min", "A point of the air's course is at")
    for air in course.temp_c:
        _between("course", air, 0.0, 400.0, "°C", "The air's course has")
    if any(
        late <= early for early, late in zip(course.time_min, course.time_min[1:], strict=False)
    ):
        text = "The minutes of a course of the air rise from point to point."
        raise OutOfRangeError(text, field="course", got="not rising", want="rising minutes")


def _one_of(field: str, word: str, known: tuple[str, ...]) -> None:
    if word not in known:
        text = f"No {field} '{word}'. Type one of: {', '.join(known)}."
        raise InputError(text, field=field, got=str(word), want=", ".join(known))
