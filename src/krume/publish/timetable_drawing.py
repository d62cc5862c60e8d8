"""A day drawn in lanes: hours down, solid cannot move, hatched may move, open runs by itself."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from html import escape

from krume.publish.signs import printable
from krume.publish.timetable import HATCHED, OPEN, SOLID, Day, DayTask, Places

FONT = "Krume Next, Atkinson Hyperlegible Next, DejaVu Sans, sans-serif"
WIDE_MM = 205.0
_LANES = {"hands": (15.0, 109.0), "oven": (113.0, 151.0), "rack": (155.0, 205.0)}
_HEADS = {"hands": "Hands", "oven": "Oven", "rack": "Rack and fridge"}
_BAR_MM = 16.0
_HEAD_MM = 8.0
_ROW_MM = 3.9
_SIZE_MM = 3.3
_ADVANCE = 0.52
HIGH_MM = 150.0
"""Height of a drawing where nothing else is wished [mm]."""
_NIGHT_MM = 13.0
_LEAST_MIN = 60
_COLUMN_MM = 13.0
_LEAST_SIGNS = 2
_TICK_MIN = 5
_QUARTER_MIN = 15
_HOUR_MIN = 60


@dataclass(frozen=True, slots=True)
class _Scale:
    """From the clock to millimetres down the page."""

    first: datetime
    minutes: int
    high_mm: float

    def y(self, moment: datetime) -> float:
        past = (moment - self.first).total_seconds() / 60
        return _HEAD_MM + self.high_mm * past / self.minutes


def day_sentence(day: Day) -> str:
    """The drawing in one sentence, for who does not see it."""
    hands = [task for task in day.tasks if task.lane == "hands"]
    loads = sum(task.lane == "oven" and task.bold != "" for task in day.tasks)
    first = min((task.start for task in day.tasks), default=None)
    last = max((task.end for task in day.tasks), default=None)
    if first is None or last is None:
        return f"{day.name}: nothing to do."
    return (
        f"{day.name} in three lanes from {_clock(first)} to {_clock(last)}: {len(hands)} pieces of "
        f"work by hand, {loads} oven loads. The same is in the table below."
    )


def day_drawing(day: Day, *, ident: str, high_mm: float = HIGH_MM) -> str:
    """A day as an SVG drawing, one unit a millimetre of paper; ids in it begin with `ident`."""
    scale = _scale(day, high_mm)
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDE_MM:g} {high_mm:g}" '
        f'role="img" aria-label="{escape(day_sentence(day))}" font-family="{FONT}">',
        _hatch(ident),
        *_heads(),
        *_hours(scale),
        *_hands(day, scale, ident),
        *_oven(day, scale, ident),
        *_rack(day, scale, ident),
        *([] if day.places is None else _places(day.places, scale)),
        "</svg>",
    ]
    return "".join(parts)


def _scale(day: Day, high_mm: float) -> _Scale:
    moments = [m for task in day.tasks for m in (task.start, task.end)]
    moments += [mark.at for mark in day.marks]
    first = min(moments).replace(second=0)
    first -= timedelta(minutes=first.minute % _QUARTER_MIN)
    span = (max(moments) - first).total_seconds() / 60
    minutes = math.ceil(span / _QUARTER_MIN) * _QUARTER_MIN
    below = 2.0 if day.places is None else _NIGHT_MM
    return _Scale(first, max(minutes, _LEAST_MIN), high_mm - _HEAD_MM - below)


def _hatch(ident: str) -> str:
    return (
        f'<defs><pattern id="{ident}-h" patternUnits="userSpaceOnUse" width="1.6" height="1.6">'
        '<path class="d-hatch" stroke="#757080" stroke-width="0.25" '
        'd="M-0.4 2L2 -0.4M-0.4 0.4L0.4 -0.4M1.2 2L2 1.2"/></pattern></defs>'
    )


def _heads() -> Iterator[str]:
    for lane, (left, right) in _LANES.items():
        yield _text(left, 4.2, _HEADS[lane], size=4.2, weight=800)
        yield _line(left, 6.0, right, 6.0, 0.4)


def _hours(scale: _Scale) -> Iterator[str]:
    bottom = _HEAD_MM + scale.high_mm
    yield _line(13.0, _HEAD_MM, 13.0, bottom, 0.3)
    for minute in range(0, scale.minutes + 1, _TICK_MIN):
        at = scale.first + timedelta(minutes=minute)
        y, whole = scale.y(at), at.minute == 0
        length = 3.0 if whole else 1.8 if at.minute == _HOUR_MIN // 2 else 0.9
        yield _line(13.0 - length, y, 13.0, y, 0.2)
        if whole:
            yield _line(13.0, y, WIDE_MM, y, 0.1, kind="d-faint", colour="#d5d5cd")
            yield _text(9.4, y + 1.1, _clock(at), size=3.2, anchor="end")


def _hands(day: Day, scale: _Scale, ident: str) -> Iterator[str]:
    left, right = _LANES["hands"]
    tasks = merged([task for task in day.tasks if task.lane == "hands"])
    middles = [(scale.y(task.start) + scale.y(task.end)) / 2 for task in tasks]
    spots = spread(middles, _ROW_MM, low=_HEAD_MM + 1, high=_HEAD_MM + scale.high_mm)
    for task, middle, spot in zip(tasks, middles, spots, strict=True):
        yield _box(task, left, _BAR_MM, scale, ident)
        if abs(middle - spot) > 0.3:
            x = left + _BAR_MM
            yield (
                f'<path class="d-line" fill="none" stroke="#1e1830" stroke-width="0.12" '
                f'd="M{x:g} {middle:.2f}l2 0L{x + 4:g} {spot:.2f}"/>'
            )
        x = left + _BAR_MM + 4.6
        yield _text(x, spot + 1.15, _clock(task.start), weight=800)
        room = right - x - 11
        yield _text(x + 11, spot + 1.15, _fitting(task.words, room))


def merged(tasks: Sequence[DayTask]) -> list[DayTask]:
    """Tasks of one kind that follow one another without a pause, as one that names them all.

    Two are of one kind when their words begin the same, up to the colon.
    """
    groups: list[list[DayTask]] = []
    for task in sorted(tasks, key=lambda task: (task.start, task.words)):
        if groups and _goes_on(groups[-1][-1], task):
            groups[-1].append(task)
        else:
            groups.append([task])
    return [_together(group) for group in groups]


def _goes_on(last: DayTask, task: DayTask) -> bool:
    same = _head(last) == _head(task) and last.look == task.look
    return same and last.end == task.start and ": " in task.words


def _head(task: DayTask) -> str:
    return task.words.partition(": ")[0]


def _together(group: Sequence[DayTask]) -> DayTask:
    if len(group) == 1:
        return group[0]
    whats = [task.words.partition(": ")[2] for task in group]
    words = f"{_head(group[0])}: {run(whats)}"
    return replace(group[0], end=group[-1].end, words=words)


def run(names: Sequence[str]) -> str:
    """Names in a few words: numbers that follow one another as a span.

    >>> run(["T1 1", "T1 2", "T1 3"]), run(["T2 1", "T3"])
    ('T1 1–3', 'T2 1, T3')
    """
    stems = [name.rpartition(" ") for name in names]
    numbers = [int(last) for _, _, last in stems if last.isdigit()]
    first = stems[0][0]
    same = first and len(numbers) == len(names) and all(stem == first for stem, _, _ in stems)
    if same and numbers == list(range(numbers[0], numbers[0] + len(numbers))):
        return f"{first} {numbers[0]}–{numbers[-1]}"
    return ", ".join(dict.fromkeys(names))


def spread(middles: Sequence[float], row: float, *, low: float, high: float) -> list[float]:
    """Places for labels as near to their middles as they go, a row apart, inside the lane.

    >>> spread([1.0, 1.5, 9.0], 3.0, low=0.0, high=10.0)
    [0.0, 3.0, 9.0]
    """
    if not middles:
        return []
    row = min(row, (high - low) / max(1, len(middles) - 1))
    blocks: list[tuple[float, int]] = []
    for index, middle in enumerate(middles):
        blocks.append((middle - index * row, 1))
        # Blocks that would overlap become one, at the mean of what they wish.
        while len(blocks) > 1 and blocks[-2][0] > blocks[-1][0]:
            (one, n), (two, m) = blocks[-2:]
            blocks[-2:] = [((one * n + two * m) / (n + m), n + m)]
    wished = [at for at, count in blocks for _ in range(count)]
    most = high - (len(middles) - 1) * row
    return [min(max(at, low), most) + index * row for index, at in enumerate(wished)]


def _oven(day: Day, scale: _Scale, ident: str) -> Iterator[str]:
    left, right = _LANES["oven"]
    for task in day.tasks:
        if task.lane != "oven":
            continue
        yield _box(task, left, right - left, scale, ident)
        if not task.bold:
            continue
        top, high = scale.y(task.start), scale.y(task.end) - scale.y(task.start)
        room = right - left - 3
        if high >= 2.4 * _ROW_MM:
            yield _text(left + 1.6, top + 4.2, _fitting(task.bold, room), size=3.7, weight=800)
            words = _fitting(task.words, room + 1.5, size=2.9)
            yield _text(left + 1.6, top + 7.8, words, size=2.9)
        else:
            words = _fitting(f"{task.bold}, {task.words}", room, size=2.9)
            yield _text(left + 1.6, top + min(high, 4.4) / 2 + 1.3, words, size=2.9, weight=600)
    for mark in day.marks:
        y = scale.y(mark.at)
        yield _line(right - 12, y, right, y, 0.5)
        if mark.words:
            yield _text(right - 0.8, y - 0.8, mark.words, size=2.7, anchor="end")


def _rack(day: Day, scale: _Scale, ident: str) -> Iterator[str]:
    left, right = _LANES["rack"]
    tasks = [task for task in day.tasks if task.lane == "rack"]
    columns = max((task.place for task in tasks), default=0) + 1
    each = min(_COLUMN_MM, (right - left) / columns)
    for task in tasks:
        x = left + task.place * each
        yield _box(task, x, each - 0.8, scale, ident)
        yield _stood(task, x, each, scale)


def _stood(task: DayTask, x: float, each: float, scale: _Scale) -> str:
    """The words of a rack: across where the column is wide, else down along it."""
    top, high = scale.y(task.start), scale.y(task.end) - scale.y(task.start)
    if each >= _COLUMN_MM and high >= _ROW_MM:
        return _text(
            x + 1.0, top + 3.6, _fitting(task.words, each - 2, size=2.7), size=2.7, halo=True
        )
    size = min(2.7, each - 1.4)
    words = _fitting(task.words, high - 1.5, size=size)
    if len(words) < _LEAST_SIGNS or high < _ROW_MM:
        return ""
    turned = _text(0.0, 0.0, words, size=size, halo=True)
    across = x + (each - 0.8) / 2 - size * 0.35
    return f'<g transform="translate({across:.2f} {top + 1.2:.2f}) rotate(90)">{turned}</g>'


def _places(places: Places, scale: _Scale) -> Iterator[str]:
    """One square a place that is wanted: full, or crossed where there is none."""
    left = _LANES["rack"][0]
    top = _HEAD_MM + scale.high_mm + 6.5
    words = f"Tonight {places.takes} of {places.has} places"
    yield _text(left, top - 1.6, words, size=3.1, weight=800)
    for index in range(places.takes):
        x, y = left + index % 12 * 4.1, top + index // 12 * 4.6
        if index < places.has:
            yield (
                f'<rect class="d-ink" fill="#1e1830" x="{x:g}" y="{y:g}" width="3.6" height="3.6"/>'
            )
        else:
            yield (
                f'<path class="d-stop" fill="none" stroke="#8a1250" stroke-width="0.5" '
                f'd="M{x:g} {y:g}h3.6v3.6h-3.6zl3.6 3.6M{x + 3.6:g} {y:g}l-3.6 3.6"/>'
            )


def _box(task: DayTask, x: float, wide: float, scale: _Scale, ident: str) -> str:
    top = scale.y(task.start)
    high = max(0.5, scale.y(task.end) - top)
    if task.look == SOLID:
        return (
            f'<rect class="d-ink d-gap" fill="#1e1830" stroke="#fff" stroke-width="0.2" '
            f'x="{x:.2f}" y="{top:.2f}" '
            f'width="{wide:.2f}" height="{high:.2f}"/>'
        )
    fill = f"url(#{ident}-h)" if task.look == HATCHED else "none"
    width = 0.5 if task.look == OPEN else 0.25
    return (
        f'<rect class="d-line" fill="{fill}" stroke="#1e1830" stroke-width="{width}" '
        f'x="{x:.2f}" y="{top:.2f}" width="{wide:.2f}" height="{high:.2f}"/>'
    )


def _line(
    x1: float, y1: float, x2: float, y2: float, wide: float, *,
    kind: str = "d-line", colour: str = "#1e1830",
) -> str:  # fmt: skip
    return (
        f'<path class="{kind}" fill="none" stroke="{colour}" stroke-width="{wide:g}" '
        f'd="M{x1:.2f} {y1:.2f}L{x2:.2f} {y2:.2f}"/>'
    )


def _text(
    x: float, y: float, words: str, *,
    size: float = _SIZE_MM, weight: int = 400, anchor: str = "start", halo: bool = False,
) -> str:  # fmt: skip
    clean = escape(printable(words).text)
    around = ' paint-order="stroke" stroke="#fff" stroke-width="0.9"' if halo else ""
    kind = "d-text d-halo" if halo else "d-text"
    return (
        f'<text class="{kind}" fill="#1e1830"{around} x="{x:.2f}" y="{y:.2f}" font-size="{size:g}" '
        f'font-weight="{weight}" text-anchor="{anchor}">{clean}</text>'
    )


def _fitting(words: str, room: float, *, size: float = _SIZE_MM) -> str:
    """Words as far as they fit; the table beside the drawing has them whole."""
    most = max(3, int(room / (size * _ADVANCE)))
    return words if len(words) <= most else f"{words[: most - 1].rstrip()}…"


def _clock(moment: datetime) -> str:
    return f"{moment.hour}:{moment.minute:02d}"
