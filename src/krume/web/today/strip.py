"""The day's foams and oven loads on one line, with where it is now."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from krume.usecases import PlanTask

WIDTH, AXIS = 400.0, 50.0
_EDGE = 22.0
_QUARTER = timedelta(minutes=15)
_LABELS = 4
_STEPS_H = (1, 2, 3, 4, 6)


@dataclass(frozen=True, slots=True)
class Bar:
    """A foam, solid, or a load, open: from where to how wide."""

    x: float
    wide: float
    is_foam: bool


@dataclass(frozen=True, slots=True)
class Tick:
    """A quarter of an hour on the line; a label stands at some hours."""

    x: float
    label: str


@dataclass(frozen=True, slots=True)
class DayStrip:
    """The drawing with its sentence."""

    bars: tuple[Bar, ...]
    ticks: tuple[Tick, ...]
    now_x: float
    sentence: str


def day_strip(tasks: tuple[PlanTask, ...], now: datetime) -> DayStrip | None:
    """The strip of a day; None where it has neither a foam nor a load."""
    shown = [task for task in tasks if task.step == "foam" or _is_bake(task)]
    if not shown:
        return None
    first = _down(min(now, *(task.start for task in shown)))
    last = _down(max(now, *(task.end for task in shown))) + _QUARTER
    scale = (WIDTH - 2 * _EDGE) / (last - first).total_seconds()

    def x(moment: datetime) -> float:
        return round(_EDGE + (moment - first).total_seconds() * scale, 1)

    bars = tuple(
        Bar(x(task.start), round(x(task.end) - x(task.start), 1), task.step == "foam")
        for task in shown
    )
    ticks = tuple(Tick(x(at), label) for at, label in _ticks(first, last))
    return DayStrip(bars, ticks, x(now), _sentence(shown, now))


def _is_bake(task: PlanTask) -> bool:
    return task.step == "bake"


def _down(moment: datetime) -> datetime:
    return moment.replace(minute=moment.minute - moment.minute % 15, second=0, microsecond=0)


def _ticks(first: datetime, last: datetime) -> Iterator[tuple[datetime, str]]:
    hours = (last - first).total_seconds() / 3600
    step = next((each for each in _STEPS_H if hours / each <= _LABELS), _STEPS_H[-1])
    at = first
    while at <= last:
        is_said = at.minute == 0 and at.hour % step == 0
        yield at, f"{at.hour}:00" if is_said else ""
        at += _QUARTER


def _sentence(shown: list[PlanTask], now: datetime) -> str:
    foams = sum(task.step == "foam" for task in shown)
    first, last = min(t.start for t in shown), max(t.end for t in shown)
    said = f"Foams, solid: {foams}. Oven loads, open: {len(shown) - foams}. "
    return f"{said}From {first:%H:%M} to {last:%H:%M}. It is {now:%H:%M}."
