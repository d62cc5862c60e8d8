"""How strong an oven is, drawn: what is known of any oven, and of this one after its bakes."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

from krume.base import Interval, as_text

_WIDE, _HIGH = 328.0, 200.0
_LEFT, _RIGHT, _ABOVE, _BELOW = 10.0, 10.0, 32.0, 46.0
_TYPE = 15.0
_LINE = 2.0
_WEDGE = 11.0
_TICKS_PCT = (60, 80, 100, 120, 150)
_SHOWN = 0.62
"""How far the drawing goes either way, in ln heat."""


@dataclass(frozen=True, slots=True)
class HeatCurves:
    """Densities over ln heat before and after the bakes, and the middle four fifths after."""

    ln_heats: tuple[float, ...]
    before: tuple[float, ...]
    after: tuple[float, ...]
    heat: Interval
    bakes: int


@dataclass(frozen=True, slots=True)
class _Place:
    middle: float
    most: float

    def x(self, ln_heat: float) -> float:
        part = (ln_heat - self.middle + _SHOWN) / (2 * _SHOWN)
        return _LEFT + (_WIDE - _LEFT - _RIGHT) * min(1.0, max(0.0, part))

    def y(self, density: float) -> float:
        return _HIGH - _BELOW - (_HIGH - _ABOVE - _BELOW) * density / self.most

    def shows(self, ln_heat: float) -> bool:
        return abs(ln_heat - self.middle) <= _SHOWN + 1e-9


def heat_drawing(curves: HeatCurves, *, ident: str) -> str:
    """The two curves as SVG; colours are the page's own classes, ids in it begin with `ident`."""
    middle = curves.ln_heats[len(curves.ln_heats) // 2]
    place = _Place(middle, max(*curves.after, *curves.before))
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDE:g} {_HIGH:g}" role="img" '
        f'aria-labelledby="{ident}-name {ident}-what">',
        f'<title id="{ident}-name">{escape(heat_sentence(curves))}</title>',
        f'<desc id="{ident}-what">{escape(_described(curves))}</desc>',
        *_axis(place),
        *_curve(curves.ln_heats, curves.before, place, look="d-hair", dashes="2 4"),
        *_curve(curves.ln_heats, curves.after, place, look="d-line", dashes=""),
        *_middle(curves, place),
        *_names(curves, place),
        "</svg>",
    ]
    return "".join(parts)


def heat_sentence(curves: HeatCurves) -> str:
    """The drawing in one sentence."""
    low, high = _percent(curves.heat.low), _percent(curves.heat.high)
    bakes = f"{curves.bakes} bake{'' if curves.bakes == 1 else 's'}"
    return (
        f"How strong the oven is over the usual one: {_percent(curves.heat.best)} %, four fifths "
        f"between {low} and {high} % after {bakes}."
    )


def _described(curves: HeatCurves) -> str:
    before, after = _width(curves, curves.before), _width(curves, curves.after)
    return (
        f"Two hills over the heat in per cent of the usual oven. The dotted one, before any bake, "
        f"is {_percent(before / after)} % as wide as the drawn one."
    )


def _width(curves: HeatCurves, density: Sequence[float]) -> float:
    """Standard deviation of a curve, in ln heat."""
    whole = sum(density)
    mean = sum(u * d for u, d in zip(curves.ln_heats, density, strict=True)) / whole
    pairs = zip(curves.ln_heats, density, strict=True)
    return math.sqrt(sum((u - mean) ** 2 * d for u, d in pairs) / whole)


def _percent(heat: float) -> str:
    return as_text(100 * heat, 0)


def _axis(place: _Place) -> Iterator[str]:
    bottom = place.y(0)
    ruled = f"M{_LEFT} {bottom:.1f}H{_WIDE - _RIGHT}"
    yield f'<path class="d-line" stroke-width="{_LINE}" d="{ruled}"/>'
    for percent in _TICKS_PCT:
        at = math.log(percent / 100)
        if place.shows(at):
            yield f'<path class="d-line" stroke-width="1" d="M{place.x(at):.1f} {bottom:.1f}v7"/>'
            yield _text(place.x(at), bottom + 22, str(percent), "d-text-2", anchor="middle")
    yield _text(_WIDE - _RIGHT, bottom + 40, "% of the usual oven's heat", "d-text-2", anchor="end")


def _curve(
    ln_heats: Sequence[float], density: Sequence[float], place: _Place, *, look: str, dashes: str
) -> Iterator[str]:
    pairs = zip(ln_heats, density, strict=True)
    points = [f"{place.x(u):.1f} {place.y(d):.1f}" for u, d in pairs if place.shows(u)]
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    width = 1.5 if dashes else _LINE
    yield f'<path class="{look}" stroke-width="{width}"{dashed} d="M{"L".join(points)}"/>'


def _middle(curves: HeatCurves, place: _Place) -> Iterator[str]:
    """The middle four fifths on the line, its ends as wedges that stand on it."""
    bottom = place.y(0)
    low, high = (place.x(math.log(end)) for end in (curves.heat.low, curves.heat.high))
    yield f'<path class="d-line" stroke-width="4" d="M{low:.1f} {bottom - 6:.1f}H{high:.1f}"/>'
    for each in (low, high):
        left = each - _WEDGE / 2
        yield f'<path class="d-ink" d="M{left:.1f} {bottom - 13:.1f}h{_WEDGE}l-{_WEDGE / 2} 13z"/>'


def _names(curves: HeatCurves, place: _Place) -> Iterator[str]:
    """Each hill by its name: this oven's at its top, any oven's at its foot."""
    top = max(range(len(curves.after)), key=lambda k: curves.after[k])
    x = place.x(curves.ln_heats[top])
    after = f"after {curves.bakes} bake{'' if curves.bakes == 1 else 's'}"
    near = "start" if x < _WIDE / 2 else "end"
    shift = -40 if near == "start" else 40
    yield _text(x + shift, _ABOVE - 10, after, "d-text d-bold", anchor=near)
    foot = _LEFT if near == "end" else _WIDE - _RIGHT
    anchor = "start" if near == "end" else "end"
    yield _text(foot, _HIGH - _BELOW - 46, "before any", "d-text-2", anchor=anchor, halo=True)


def _text(
    x: float, y: float, words: str, look: str, *, anchor: str = "start", halo: bool = False
) -> str:
    shape = f'x="{x:.1f}" y="{y:.1f}" font-size="{_TYPE:g}" text-anchor="{anchor}"'
    said = escape(words)
    under = f'<text {shape} class="d-halo">{said}</text>' if halo else ""
    return f'{under}<text {shape} class="{look}">{said}</text>'
