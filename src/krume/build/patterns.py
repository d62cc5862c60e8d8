"""The marks of the materials: holes are baked, waves whipped, straight lines gelled, blank covers.

Cells are in millimetres of cake, so they scale with the drawing. A tint stands as an attribute, for
paper and for a file by itself; on a page the class takes the tint of the page's own tokens.
"""

from collections.abc import Iterable

from krume.build.materials import materials

GRAIN = "#2a2138"
LIGHT = "#f3dfae"
SYRUP_DEPTH_MM = 3.0
"""How deep syrup is drawn into what it soaks."""

_PORES = (
    (1.4, 1.2, 0.62), (3.9, 1.8, 0.4), (6.2, 1.0, 0.52), (9.0, 1.5, 0.74), (11.1, 1.1, 0.34),
    (2.6, 3.5, 0.78), (5.1, 3.2, 0.36), (7.3, 3.7, 0.62), (10.5, 3.4, 0.5), (0.8, 5.0, 0.4),
    (3.8, 5.6, 0.54), (6.0, 5.7, 0.72), (8.9, 5.5, 0.42), (11.0, 5.9, 0.66), (1.9, 6.9, 0.46),
    (4.9, 7.2, 0.3), (7.8, 7.1, 0.5), (9.9, 7.3, 0.32),
)  # fmt: skip
_FINE = (
    (1.1, 1.0, 0.34), (4.3, 1.5, 0.44), (7.9, 0.9, 0.3), (10.8, 1.9, 0.46), (2.7, 3.9, 0.4),
    (6.4, 3.6, 0.32), (9.2, 4.4, 0.42), (0.9, 6.4, 0.3), (4.6, 6.6, 0.44), (7.7, 7.0, 0.34),
    (11.2, 6.3, 0.3),
)  # fmt: skip
_CHIPS = (
    "M2.2 1.9l1.4-.4-.5 1.3z", "M5.6 .8l1.2.8-1.5.4z", "M9 2.6l1.5.2-1 1z", "M.5 3.2l1.1-.7.1 1.4z",
    "M4.4 4.2l1-.8.5 1.2z", "M7.4 5.2l1.5-.3-.6 1.2z", "M2.1 5.3l1.2.5-1.1.8z",
    "M10.1 5.2l1.1.4-.9.9z",
)  # fmt: skip


def defs(keys: Iterable[str], ident: str) -> str:
    """Pattern definitions of some materials, their ids begun with `ident`."""
    wanted = [key for key in (*materials(),) if key in set(keys)]
    return f"<defs>{''.join(_pattern(key, ident) for key in wanted)}</defs>"


def fill(material: str, ident: str) -> str:
    """The paint of a material as an attribute."""
    return f'fill="url(#{ident}-{material})"'


def _pattern(key: str, ident: str) -> str:
    width, height, marks = _cell(key)
    ground = ""
    if key != "syrup":
        tint = materials()[key].tint
        ground = f'<rect class="m-{key}" width="{width}" height="{height}" fill="{tint}"/>'
    return (
        f'<pattern id="{ident}-{key}" patternUnits="userSpaceOnUse" width="{width}" '
        f'height="{height}">{ground}{marks}</pattern>'
    )


def _cell(key: str) -> tuple[int, int, str]:
    """Width, height and marks of one cell of a pattern."""
    if key == "sponge":
        return 12, 8, _lines(_circles(_PORES), 0.26)
    if key == "nut-sponge":
        chips = "".join(f'<path d="{path}"/>' for path in _CHIPS)
        return 12, 8, _lines(_circles(_FINE), 0.26) + _solid(chips)
    if key == "tart":
        return 8, 4, _lines('<path d="M.7 1h4.2M6.6 1H8M0 1h.1M2.6 3h4.2M0 3h.9M8 3h-.1"/>', 0.5)
    if key == "cream":
        return 10, 4, _lines('<path d="M0 2q2.5-1.8 5 0t5 0"/>', 0.32)
    if key == "set-cream":
        pins = '<path d="M2.5 3v1.5M7.5 3.4v1.5"/>'
        return 10, 5, _lines('<path d="M0 1.5q2.5-1.5 5 0t5 0"/>', 0.32) + _lines(pins, 0.6)
    if key == "jelly":
        return 3, 3, _lines('<path d="M-.5 3.5l4-4M-.5.5l1-1M2.5 3.5l1-1"/>', 0.34)
    if key == "ganache":
        points = _circles(((1.5, 1.5, 0.42), (4.5, 4.5, 0.42)))
        return 6, 6, f'<g fill="{LIGHT}">{points}</g>'
    if key == "syrup":
        return 3, 3, _lines('<path stroke-linecap="round" d="M.8.4v1.6M2.3 1.1v1.6"/>', 0.5)
    if key == "fruit":
        rings = _circles(((2.0, 2.0, 1.4), (5.5, 5.4, 1.4)))
        return 7, 7, _lines(rings, 0.34) + _solid(_circles(((2.0, 2.0, 0.35), (5.5, 5.4, 0.35))))
    if key == "cover":
        return 6, 6, _lines('<path d="M1.2 1.5h1.6M4.2 4.5h1.6"/>', 0.3)
    if key == "decoration":
        return 4, 4, _lines('<path d="M.6 3.4L2 .8l1.4 2.6z"/>', 0.3)
    return 4, 4, ""


def _circles(places: Iterable[tuple[float, float, float]]) -> str:
    return "".join(f'<circle cx="{x}" cy="{y}" r="{r}"/>' for x, y, r in places)


def _lines(marks: str, wide: float) -> str:
    return f'<g fill="none" stroke="{GRAIN}" stroke-width="{wide}">{marks}</g>'


def _solid(marks: str) -> str:
    return f'<g fill="{GRAIN}">{marks}</g>'
