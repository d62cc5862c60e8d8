"""A bake on a narrow strip for a printed sheet: the core's curve over one ruled line of minutes."""

from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

from krume.base import Interval, as_text
from krume.publish.plot import at_minute

WIDE, HIGH = 480.0, 92.0
_LEFT, _RIGHT, _TOP, _LINE = 6.0, 8.0, 8.0, 62.0
_TYPE, _SMALL = 13.0, 12.0
_WEDGE = 8.0
_AFTER = 1.06
_FAMILY = "Krume Next, Atkinson Hyperlegible Next, DejaVu Sans, sans-serif"


@dataclass(frozen=True, slots=True)
class ModelBake:
    """What the bake model says of one formula in its own tin and oven, for its sheets."""

    minutes: Interval
    likely_min: float
    last: str
    core_c: float
    time_min: tuple[float, ...] = ()
    temp_c: tuple[float, ...] = ()

    @property
    def text(self) -> str:
        """In one sentence."""
        low, likely, high = _figures(self)
        core = "at" if self.last == "core" else "core"
        return (
            f"By the bake model: check from {low}, most likely {likely}, latest {high} min; "
            f"{self.last} last, {core} {as_text(self.core_c, 1)} °C."
        )


def _figures(bake: ModelBake) -> tuple[str, str, str]:
    span = bake.minutes
    return as_text(span.low, 0), as_text(bake.likely_min, 0), as_text(span.high, 0)


def bake_strip(bake: ModelBake, *, ident: str = "bake") -> str:
    """The strip as SVG in one ink; empty where there is no curve."""
    if len(bake.time_min) < 2 or bake.minutes.high <= 0:
        return ""
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDE:g} {HIGH:g}" role="img" '
        f'aria-labelledby="{ident}-strip" font-family="{_FAMILY}" fill="currentColor">',
        f'<title id="{ident}-strip">{escape(bake.text)}</title>',
        *_ruled(bake),
        *_curve(bake),
        *_marks(bake),
        "</svg>",
    ]
    return "".join(parts)


def _most(bake: ModelBake) -> float:
    return bake.minutes.high * _AFTER


def _x(bake: ModelBake, minute: float) -> float:
    return _LEFT + (WIDE - _LEFT - _RIGHT) * minute / _most(bake)


def _y(bake: ModelBake, temp_c: float) -> float:
    low, high = bake.temp_c[0], max(bake.core_c, *bake.temp_c)
    return _LINE - 12 - (_LINE - 12 - _TOP) * (temp_c - low) / (high - low)


def _line(path: str, wide: float, more: str = "") -> str:
    return f'<path fill="none" stroke="currentColor" stroke-width="{wide:g}"{more} d="{path}"/>'


def _ruled(bake: ModelBake) -> Iterator[str]:
    yield _line(f"M{_LEFT:g} {_LINE:g}H{WIDE - _RIGHT:g}", 1.4)
    step = 1 if _most(bake) <= 80 else 5
    ticks = "".join(
        f"M{_x(bake, minute):.1f} {_LINE:g}v{_tick(minute)}"
        for minute in range(0, int(_most(bake)) + 1, step)
    )
    yield _line(ticks, 0.7)


def _tick(minute: int) -> int:
    return 8 if minute % 10 == 0 else 6 if minute % 5 == 0 else 3


def _curve(bake: ModelBake) -> Iterator[str]:
    """The core up to the end of the likeliest bake, and the core that is wanted."""
    end = bake.likely_min
    points = [each for each in zip(bake.time_min, bake.temp_c, strict=True) if each[0] < end]
    points.append((end, at_minute(end, bake.time_min, bake.temp_c)))
    path = "M" + "L".join(f"{_x(bake, t):.1f} {_y(bake, c):.1f}" for t, c in points)
    yield _line(path, 1.4)
    y = _y(bake, bake.core_c)
    yield _line(f"M{_LEFT:g} {y:.1f}H{WIDE - _RIGHT:g}", 0.6, ' stroke-dasharray="2 3"')
    yield _text(_LEFT + 2, y + _SMALL, f"core {as_text(bake.core_c, 1)} °C", _SMALL)
    yield _line(f"M{_x(bake, end):.1f} {y:.1f}V{_LINE:g}", 1)


def _marks(bake: ModelBake) -> Iterator[str]:
    """Check from, most likely and latest under the line; the span between as a heavy bar."""
    low, high = _x(bake, bake.minutes.low), _x(bake, bake.minutes.high)
    yield _line(f"M{low:.1f} {_LINE - 4:g}H{high:.1f}", 3)
    for x in (low, high):
        yield (
            f'<path d="M{x - _WEDGE / 2:.1f} {_LINE - _WEDGE - 1:g}h{_WEDGE:g}'
            f'l-{_WEDGE / 2:g} {_WEDGE:g}z"/>'
        )
    first, likely, last = _figures(bake)
    below = _LINE + 22
    yield _text(low, below, f"check from {first}", _TYPE, "end")
    yield _text(_x(bake, bake.likely_min), below, likely, _TYPE, "middle", heavy=True)
    yield _text(high, below, f"latest {last} min", _TYPE, "end")


def _text(
    x: float, y: float, words: str, size: float, anchor: str = "start", *, heavy: bool = False
) -> str:
    weight = ' font-weight="800"' if heavy else ""
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size:g}" text-anchor="{anchor}"{weight}>'
        f"{escape(words)}</text>"
    )
