"""Several loads in one oven: what each takes from the others, their minutes, and who is last.

An oven with one tin in it is the bake as it stands; only what others add is worked out here.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from krume.bake.batter import AirCourse, Oven
from krume.bake.crowding import OvenLoad, crowding
from krume.bake.grid import Array
from krume.bake.heat_taken import HeatTaken, heat_taken
from krume.bake.oven_air import (
    AIR_STEP_S,
    BoxDraws,
    OvenAir,
    OvenBox,
    box_draws,
    oven_air,
    oven_air_half_width,
    oven_air_value,
)
from krume.bake.parameters import value
from krume.bake.prediction import Prediction, predict
from krume.base import Clash, Infeasible, InputError, Notice, as_text

# First by each load alone, then twice in the air that leaves; once more moves minutes by 2 %.
_PASSES = 2
_FEW = 64
_AFTER_MIN = 20.0
_LONGEST_MIN = 200.0
_POINT_STEPS = 6
_NOTHING_K = 1e-6


@dataclass(frozen=True, slots=True)
class LoadTogether:
    """One load beside the others: its minutes, its air, and what the others take from it.

    `later_factor` is its likely minutes over those alone, `later_ln` the doubt of its logarithm;
    `prediction` is None where no draws were asked for, `course` where the others change nothing.
    Over the bake the air stands `short_k` lower than with this tin alone, `door_k` for the door;
    `heat_factor` is what is left of the surface heat. `back_min` is when the air is close to its
    setting for good, None where it is not before the cake is done; `back_c` is how far it comes
    back in the second half.
    """

    prediction: Prediction | Infeasible | None
    alone_min: float
    likely_min: float
    later_factor: float
    later_ln: float
    course: AirCourse | None
    short_k: float
    door_k: float
    heat_factor: float
    back_c: float
    back_min: float | None
    notices: tuple[Notice, ...]


@dataclass(frozen=True, slots=True)
class Together:
    """All loads of one oven in the order given; `last` is the one that comes out last.

    `heater_kwh` is from the first door to the last load out, without heating the oven up. `air_c`
    is the air over `time_min` of the common clock.
    """

    loads: tuple[LoadTogether, ...]
    last: int | None
    heater_kwh: float
    time_min: tuple[float, ...]
    air_c: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class _Now:
    """Where a pass stands: each load's oven, its likely minutes, and the heat it takes."""

    ovens: tuple[Oven, ...]
    minutes: tuple[float, ...]
    heats: tuple[HeatTaken, ...]


@dataclass(frozen=True, slots=True)
class _Short:
    """How much lower than alone the air of one load stands, from its door, (draws, points)."""

    all: Array
    doors: Array


def together(
    loads: Sequence[OvenLoad], oven: Oven, box: OvenBox, *, count: int = _FEW, seed: int = 7
) -> Together | Infeasible:
    """Minutes of every load with the others in, or the limit that forbids them.

    The air of a load is its course alone, less what the others add to the oven's shortfall; the
    heat they take is that of their own nominal bakes in the air that leaves. With a count of 0
    there are likely minutes and no draws.
    """
    _check(loads, oven)
    case = _Case(tuple(loads), oven, box)
    alone = now = case.alone()
    if stop := _too_many(loads, box, alone.minutes):
        return Infeasible((stop,))
    for _ in range(_PASSES):
        now = case.again(now)
    return case.answer(alone, now, count=count, seed=seed)


def _check(loads: Sequence[OvenLoad], oven: Oven) -> None:
    for around in (oven.around, *(load.around for load in loads)):
        if around.warming_from_c is not None or around.door_min or around.course is not None:
            text = "Several loads are worked out for an oven that is hot, and shut but to load it."
            raise InputError(text, field="oven", got="warming or open", want="a hot oven")
    if not loads or any(load.tins < 1 for load in loads):
        text = "A load is at least one tin. Name at least one load."
        raise InputError(text, field="loads", got="no tin", want="one tin or more")


def _too_many(loads: Sequence[OvenLoad], box: OvenBox, minutes: Sequence[float]) -> Clash | None:
    """The limit of the oven, where at some door more tins are in at once than it takes."""
    ends = [load.in_min + load.stay_min(done) for load, done in zip(loads, minutes, strict=True)]
    pairs = list(zip(loads, ends, strict=True))
    most = max(
        sum(each.tins for each, end in pairs if each.in_min <= load.in_min < end) for load in loads
    )
    if box.tins_most is None or most <= box.tins_most:
        return None
    limit = "as many as it takes at once"
    said = (
        f"{_tins(most)} would be in at once, and this oven takes {box.tins_most}, by your own "
        "figure. Bake fewer, or put one in later: “F1 @40”."
    )
    return Clash("oven", limit, f"room for {most}", f"room for {_tins(box.tins_most)}", said)


def _tins(count: int) -> str:
    return "1 tin" if count == 1 else f"{count} tins"


@dataclass(frozen=True, slots=True)
class _Case:
    """All loads on one clock that begins with the first door."""

    loads: tuple[OvenLoad, ...]
    oven: Oven
    box: OvenBox

    def alone(self) -> _Now:
        """Every load as if it were the only one."""
        return self._with_heats([replace(self.oven, around=load.around) for load in self.loads])

    def again(self, now: _Now) -> _Now:
        """Every load in the air that the others leave it."""
        shorts = [self.short(place, now) for place in self.places]
        return self._with_heats([self.own_oven(k, now, short) for k, short in enumerate(shorts)])

    @property
    def places(self) -> range:
        return range(len(self.loads))

    @property
    def begin(self) -> float:
        return min(load.in_min for load in self.loads)

    def _with_heats(self, ovens: Sequence[Oven]) -> _Now:
        heats = [
            heat_taken(x.batter, x.tin, own, out_min=None if x.out_min is None else x.stay_min(0))
            for x, own in zip(self.loads, ovens, strict=True)
        ]
        minutes = [min(heat.done_min, _LONGEST_MIN) for heat in heats]
        return _Now(tuple(ovens), tuple(minutes), tuple(heats))

    def own_oven(self, place: int, now: _Now, short: _Short) -> Oven:
        """The oven as one load meets it: its air, its surface heat and the doubt of both."""
        load = self.loads[place]
        crowd = crowding(place, self.loads, self.box, now.minutes, fan=self.oven.fan)
        mean = self._mean(short.all, now.minutes[place])
        doubt = float(np.std(mean[1:])) if len(mean) > 1 else 0.0
        return replace(
            self.oven,
            heat=self.oven.heat * crowd.factor,
            ln_heat_sd=math.hypot(self.oven.ln_heat_sd, crowd.ln_sd),
            temp_half_width_c=math.hypot(self.oven.temp_half_width_c, doubt),
            around=replace(load.around, course=self._course(short.all[0])),
        )

    def short(self, place: int, now: _Now, draws: BoxDraws | None = None) -> _Short:
        """How much lower the air of a load stands than with one tin of it alone."""
        boxes = box_draws(self.box) if draws is None else draws
        own = (self.loads[place].in_min, value("door-dip"))
        one = self._taken(now, only=place)
        base = self._march(boxes, one, [own], is_strong=True).short_k
        full = self._taken(now)
        shut = self._march(boxes, full, [own]).short_k
        doors = self._doors(place, now)
        open_ = self._march(boxes, full, [own, *doors]).short_k if doors else shut
        first = round((self.loads[place].in_min - self.begin) * 60 / AIR_STEP_S)
        return _Short((open_ - base)[:, first:], (open_ - shut)[:, first:])

    def _march(
        self, boxes: BoxDraws, taken: Array, doors: Sequence[tuple[float, float]],
        *, is_strong: bool = False,
    ) -> OvenAir:  # fmt: skip
        moved = [(minute - self.begin, fall) for minute, fall in doors]
        return oven_air(boxes, self.oven.temp_c, taken, moved, is_strong=is_strong)

    def _taken(self, now: _Now, *, only: int | None = None) -> Array:
        """Heat taken by all loads, or by one tin of one, at the steps of the clock [J]."""
        minutes = self.clock(now)
        total = np.zeros(len(minutes))
        for place, load in enumerate(self.loads):
            tins = load.tins if only is None else 1 if only == place else 0
            if tins:
                total += tins * now.heats[place].by(minutes - (load.in_min - self.begin))
        return total

    def clock(self, now: _Now) -> Array:
        """Minutes of the steps, from the first door to some time after the last load is out."""
        ends = [x.in_min + x.stay_min(m) for x, m in zip(self.loads, now.minutes, strict=True)]
        steps = math.ceil((max(ends) - self.begin + _AFTER_MIN) * 60 / AIR_STEP_S)
        return AIR_STEP_S / 60 * np.arange(steps + 1, dtype=np.float64)

    def _doors(self, place: int, now: _Now) -> list[tuple[float, float]]:
        """When the door is opened for others while a load bakes, and how far the air falls."""
        mine, same = self.loads[place], oven_air_value("same-door")
        own, last = mine.in_min, mine.in_min + mine.stay_min(now.minutes[place]) - same
        moments = []
        for other, (load, done) in enumerate(zip(self.loads, now.minutes, strict=True)):
            if other != place:
                moments += [load.in_min, load.in_min + load.stay_min(done)]
        found: list[float] = []
        for moment in sorted(moments):
            if moment < last and all(abs(moment - there) > same for there in (own, *found)):
                found.append(moment)
        return [(moment, self.box.door_fall_k) for moment in found]

    def _mean(self, short: Array, minutes: float) -> Array:
        """Mean shortfall over the minutes of a bake, (draws,)."""
        steps = max(1, min(short.shape[1], round(minutes * 60 / AIR_STEP_S)))
        return np.asarray(short[:, :steps].mean(axis=1), dtype=np.float64)

    def _course(self, short: Array) -> AirCourse | None:
        """The air a load meets: its own course alone, less what the others take."""
        if float(short.max(initial=0.0)) < _NOTHING_K:
            return None
        minutes = AIR_STEP_S / 60 * np.arange(0, len(short), _POINT_STEPS)
        dip = value("door-dip") * np.exp(-60 * minutes / value("door-recovery"))
        # Where the heaters fail, the loads would not take as much: no air is colder than the room.
        air = np.maximum(self.oven.temp_c - dip - short[::_POINT_STEPS], self.box.room_c)
        return AirCourse(tuple(minutes.tolist()), tuple(air.tolist()))

    def answer(self, alone: _Now, now: _Now, *, count: int, seed: int) -> Together:
        """Every load with its doubt, and the air of the oven."""
        draws = box_draws(self.box, count=count, seed=seed)
        found = tuple(self._one(k, alone, now, draws, seed=seed) for k in self.places)
        ends = [_end(load, each) for load, each in zip(self.loads, found, strict=True)]
        first = min(self.places, key=lambda place: self.loads[place].in_min)
        own = (self.loads[first].in_min, value("door-dip"))
        doors = [own, *self._doors(first, now)]
        air = self._march(box_draws(self.box), self._taken(now), doors)
        until = len(self.clock(now)) - round(_AFTER_MIN * 60 / AIR_STEP_S)
        shown = slice(0, None, _POINT_STEPS)
        return Together(
            loads=found,
            last=int(np.argmax(ends)) if all(math.isfinite(end) for end in ends) else None,
            heater_kwh=float(air.heater_kwh(until)[0]),
            time_min=tuple((self.begin + air.time_min[shown]).tolist()),
            air_c=tuple((self.oven.temp_c - air.short_k[0, shown]).tolist()),
        )

    def _one(
        self, place: int, alone: _Now, now: _Now, draws: BoxDraws, *, seed: int
    ) -> LoadTogether:
        load, short = self.loads[place], self.short(place, now, draws)
        own = self.own_oven(place, now, short)
        found, likely, count = None, now.heats[place].done_min, len(draws) - 1
        if count:
            found = predict(load.batter, load.tin, own, count=count, seed=seed)
            likely = found.bake.minutes if isinstance(found, Prediction) else math.inf
        stay = load.stay_min(min(likely, _LONGEST_MIN))
        under = _under(self.oven, own.around.course, stay)
        back_c = self.oven.temp_c - float(under[len(under) // 2 :].min())
        later = likely / alone.minutes[place]
        return LoadTogether(
            prediction=found,
            alone_min=alone.minutes[place],
            likely_min=likely,
            later_factor=later,
            later_ln=_unsure(later),
            course=own.around.course,
            short_k=float(self._mean(short.all, stay)[0]),
            door_k=float(self._mean(short.doors, stay)[0]),
            heat_factor=own.heat / self.oven.heat,
            back_c=back_c,
            back_min=_back(under, stay),
            notices=() if load.out_min is not None else _weak(self.oven, back_c, self.loads),
        )


def _unsure(later: float) -> float:
    """Doubt of a delay, as a logarithm: as unsure as the crowding that makes most of it."""
    if not math.isfinite(later) or later <= 1:
        return 0.0
    doubt = oven_air_half_width("crowding") / oven_air_value("crowding")
    return math.log(later) * doubt


def _under(oven: Oven, course: AirCourse | None, done: float) -> Array:
    """How far the air stands under its setting at every half minute of a bake [K]."""
    minutes = np.linspace(0.0, done, max(2, round(2 * done)))
    if course is None:
        alone: Array = value("door-dip") * np.exp(-60 * minutes / value("door-recovery"))
        return alone
    met = np.interp(minutes, course.time_min, course.temp_c)
    return np.asarray(oven.temp_c - met, dtype=np.float64)


def _back(under: Array, done: float) -> float | None:
    """When the air is close to its setting for good; None is not before the cake is done."""
    far = np.flatnonzero(under > oven_air_value("shown-short"))
    if not len(far):
        return 0.0
    if far[-1] == len(under) - 1:
        return None
    return float(done * (far[-1] + 1) / (len(under) - 1))


def _weak(oven: Oven, back_c: float, loads: Sequence[OvenLoad]) -> tuple[Notice, ...]:
    if oven.temp_c - back_c < oven_air_value("weak-short"):
        return ()
    tins = _tins(sum(load.tins for load in loads))
    text = (
        f"The air never comes back above {as_text(back_c, 0)} °C of {as_text(oven.temp_c, 0)} "
        f"while it bakes: the oven is too weak for {tins} like this."
    )
    return (Notice("oven-weak", text),)


def _end(load: OvenLoad, found: LoadTogether) -> float:
    best = found.likely_min
    if isinstance(found.prediction, Prediction):
        best = found.prediction.minutes.best
    return load.in_min + load.stay_min(best)
