"""Several drawings below each other as one, each with its heading, for a file or a sheet."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

_HEADING, _ROOM, _TYPE, _SMALL = 34.0, 26.0, 19.0, 15.0
_OPENING = re.compile(r'<svg [^>]*viewBox="0 0 ([\d.]+) ([\d.]+)"[^>]*>')


@dataclass(frozen=True, slots=True)
class Shown:
    """A drawing with its heading, and a line of words below it."""

    heading: str
    svg: str
    below: str = ""


def stacked_drawing(parts: Sequence[Shown], *, title: str, ident: str) -> str:
    """Drawings of one page below each other; each keeps its own title and description."""
    sizes = [_size(part.svg) for part in parts]
    wide = max((size[0] for size in sizes), default=0.0)
    placed, y = [], 4.0
    for part, (own_wide, own_high) in zip(parts, sizes, strict=True):
        placed.append(_words(part.heading, y + _TYPE, _TYPE, "d-text d-bold"))
        y += _HEADING
        place = f'<svg x="0" y="{y:g}" width="{own_wide:g}" height="{own_high:g}" '
        placed.append(place + part.svg.removeprefix("<svg "))
        y += own_high
        if part.below:
            y += _SMALL + 8
            placed.append(_words(part.below, y, _SMALL, "d-text-2"))
        y += _ROOM
    names = f"{ident}-name {ident}-what"
    headings = "; ".join(part.heading for part in parts)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide:g} {y - _ROOM + 4:.0f}" '
        f'role="img" aria-labelledby="{names}"><title id="{ident}-name">{escape(title)}</title>'
        f'<desc id="{ident}-what">{escape(headings)}.</desc>{"".join(placed)}</svg>'
    )


def _size(svg: str) -> tuple[float, float]:
    found = _OPENING.match(svg)
    return (0.0, 0.0) if found is None else (float(found[1]), float(found[2]))


def _words(words: str, y: float, size: float, look: str) -> str:
    shape = f'x="0" y="{y:g}" font-size="{size:g}"'
    return f'<text {shape} class="{look}">{escape(words)}</text>'
