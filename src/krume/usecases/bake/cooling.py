"""After the oven: when a cake may be split, filled, wrapped, or must be rolled."""

from dataclasses import dataclass

from krume.bake import (
    Bake,
    Batter,
    Cooling,
    CoolingWay,
    Oven,
    cool,
    cooling_value,
    cooling_ways,
)
from krume.base import Infeasible, Interval, Notice, OutOfRangeError
from krume.design import Formula, balance
from krume.size import Tin
from krume.usecases.bake.cooling_words import cooling_line, cooling_lines, own_lines
from krume.usecases.bake.own_cooling import own_cooling_min


@dataclass(frozen=True, slots=True)
class CoolingCurve:
    """Warmest place over time: likeliest, and the tenth and ninetieth of the draws."""

    time_min: tuple[float, ...]
    warmest_c: tuple[float, ...]
    low_c: tuple[float, ...]
    high_c: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class RollWindow:
    """Whole minutes after the oven in which the sheet is rolled."""

    first_min: int
    last_min: int


@dataclass(frozen=True, slots=True)
class CoolingResult:
    """Minutes after the oven, each an interval; None is not of this way, or never in this room.

    `way`: rack, hung, rolled, tin; `way_words` is how the family is cooled. `lines` say it all in
    a baker's words, `line` in one for a card. The temperatures are those that count as cold
    enough, or as too cold. `own_min` are the formula's own minutes, where its text says them.
    """

    way: str
    way_words: str
    room_c: float
    turned_min: float | None
    height_mm: float
    height_from: str
    split_min: Interval | None
    fill_min: Interval | None
    wrap_min: Interval | None
    roll_from_min: Interval | None
    roll_until_min: Interval | None
    roll_window: RollWindow | None
    rolled_min: float | None
    water_g: Interval
    split_c: float
    fill_c: float
    wrap_c: float
    roll_hottest_c: float
    roll_coldest_c: float
    own_min: Interval | None
    curve: CoolingCurve
    draws: int
    lines: tuple[str, ...]
    line: str


@dataclass(frozen=True, slots=True)
class Cooled:
    """What a cooling says: its result, or None with notices that say why there is none."""

    result: CoolingResult | None
    notices: tuple[Notice, ...] = ()


def cooling_after(
    formula: Formula,
    batter: Batter,
    tin: Tin,
    oven: Oven,
    *,
    room_c: float | None = None,
    turned_min: float | None = None,
    bake: Bake | None = None,
    count: int = 256,
) -> Cooled:
    """Cool the bake of a formula the way its family is cooled; its own planned height counts."""
    found = cooling_ways().get(balance(formula).family or "")
    if found is None:
        return Cooled(None, (_no_way(),))
    height = None if formula.baked is None else formula.baked.height_mm
    cooled = cooled_by(
        found, batter, tin, oven, height_mm=height, room_c=room_c, turned_min=turned_min,
        bake=bake, count=count,
    )  # fmt: skip
    if isinstance(cooled, Notice):
        return Cooled(None, (cooled,))
    if cooled is None:
        return Cooled(None)
    own = own_cooling_min(formula)
    return Cooled(_result(cooled, found, own, is_planned=height is not None), cooled.notices)


def cooled_by(
    way: CoolingWay,
    batter: Batter,
    tin: Tin,
    oven: Oven,
    *,
    height_mm: float | None,
    room_c: float | None = None,
    turned_min: float | None = None,
    bake: Bake | None = None,
    count: int = 256,
) -> Cooling | Notice | None:
    """A cake cooled a family's way; a notice where its height forbids it, None with no bake."""
    turned = way.turned_min if turned_min is None and way.way == "rack" else turned_min
    try:
        cooled = cool(
            batter, tin, oven, way=way.way, room_c=room_c, turned_at_min=turned,
            height_cm=None if height_mm is None else height_mm / 10, bake=bake, count=count,
        )  # fmt: skip
    except OutOfRangeError as error:
        if error.field != "height_cm":
            raise
        return Notice("no-cooling", error.message)
    return None if isinstance(cooled, Infeasible) else cooled


def _no_way() -> Notice:
    text = "How this family is cooled is not known: no minutes after the oven."
    return Notice("no-cooling", text)


def _result(
    cooled: Cooling, way: CoolingWay, own: Interval | None, *, is_planned: bool
) -> CoolingResult:
    goals = {key: cooling_value(f"{key}-most") for key in ("split", "fill", "wrap")}
    goals |= {f"roll_{end}": cooling_value(f"roll-{end}") for end in ("hottest", "coldest")}
    window, curve = cooled.roll_window_min, cooled.curve
    return CoolingResult(
        way=cooled.way,
        way_words=way.words,
        room_c=cooled.room_c,
        turned_min=cooled.turned_min,
        height_mm=round(10 * cooled.height_cm, 1),
        height_from="the formula's own plan" if is_planned else "the bake model's",
        split_min=_rounded(cooled.split_min),
        fill_min=_rounded(cooled.fill_min),
        wrap_min=_rounded(cooled.wrap_min),
        roll_from_min=_rounded(cooled.roll_from_min),
        roll_until_min=_rounded(cooled.roll_until_min),
        roll_window=None if window is None else RollWindow(*window),
        rolled_min=None if cooled.rolled_min is None else round(cooled.rolled_min, 1),
        water_g=Interval(*(round(g, 1) for g in _ends(cooled.water_g))),
        split_c=goals["split"],
        fill_c=goals["fill"],
        wrap_c=goals["wrap"],
        roll_hottest_c=goals["roll_hottest"],
        roll_coldest_c=goals["roll_coldest"],
        own_min=own,
        curve=CoolingCurve(
            tuple(round(each, 2) for each in curve.time_min),
            tuple(round(each, 1) for each in curve.warmest_c),
            tuple(round(each, 1) for each in curve.low_c),
            tuple(round(each, 1) for each in curve.high_c),
        ),
        draws=cooled.draws,
        lines=(*cooling_lines(cooled, goals), *own_lines(own)),
        line=cooling_line(cooled),
    )


def _ends(span: Interval) -> tuple[float, float, float]:
    return span.low, span.best, span.high


def _rounded(span: Interval | None) -> Interval | None:
    return None if span is None else Interval(span.low, round(span.best, 1), span.high)
