"""Layers cut from baked cakes: which layer from which cake, and how many a height yields."""

import math
from collections.abc import Mapping, Sequence

from krume.base import OutOfRangeError, as_text
from krume.build.plan_lines import Component
from krume.build.stack import Stack
from krume.build.torte import CakeCut, ComponentFormula

_SLACK_MM = 1e-6
Parts = Mapping[str, ComponentFormula]


def layers_of(high_mm: float, *, thick_mm: float, off_mm: float = 0.0, kerf_mm: float = 0.0) -> int:
    """Layers of one thickness that a cake yields.

    n = floor((H - off + kerf) / (t + kerf)): between two layers a cut is lost, not at the ends

    Parameters
    ----------
    high_mm : H, height of the cake, cold [mm]
    thick_mm : t, one layer [mm]
    off_mm : cut from top and bottom before: the hump, the crust [mm]
    kerf_mm : lost to crumbs in each cut [mm]

    Returns
    -------
    whole layers

    Raises
    ------
    OutOfRangeError : the thickness is not above 0, or another length is negative

    Source
    ------
    `mathematics`

    Examples
    --------
    >>> layers_of(50.0, thick_mm=14.0), layers_of(50.0, thick_mm=10.0, off_mm=4.0, kerf_mm=1.0)
    (3, 4)
    """
    if thick_mm <= 0 or min(high_mm, off_mm, kerf_mm) < 0:
        raise OutOfRangeError(
            "A layer is more than 0 mm thick, and no other length is below 0.",
            field="thick_mm", got=f"{thick_mm:g}", want="more than 0",
        )  # fmt: skip
    room_mm = high_mm - off_mm + kerf_mm + _SLACK_MM
    return max(0, math.floor(room_mm / (thick_mm + kerf_mm)))


def bakes_of(part: ComponentFormula, cut: Sequence[Component]) -> int:
    """Cakes at hand: as the plan says, else one batch in its tins; a flat sheet is a bake."""
    said = max((piece.bakes or 0 for piece in cut), default=0)
    tins = 1 if part.tin is None else part.tin.count
    sheets = sum(piece.piece == "sheet" for piece in cut)
    return max(said * tins, tins, sheets, 1)


def packed(heights: Sequence[float], cakes: int, high_mm: float) -> list[list[float]] | None:
    """Layers shared out over cakes, the thickest first, each where there is room first.

    None where they do not go in.

    >>> packed([14.0, 14.0, 25.0], 2, 50.0)
    [[25.0, 14.0], [14.0]]
    """
    found: list[list[float]] = [[] for _ in range(cakes)]
    room = [high_mm + _SLACK_MM] * cakes
    for height in sorted(heights, reverse=True):
        index = next((i for i, left in enumerate(room) if left >= height), None)
        if index is None:
            return None
        room[index] -= height
        found[index].append(height)
    return found


def pieces_of(stack: Stack, name: str) -> list[Component]:
    """What is cut from the cakes of a formula; a shell is used whole."""
    pieces = (storey.piece for storey in stack.storeys)
    return [piece for piece in pieces if piece.what == name and piece.piece in ("layer", "sheet")]


def cake_cuts(stack: Stack, parts: Parts) -> tuple[CakeCut, ...]:
    """Every baked cake with the layers cut from it; none while a height is not known."""
    found: list[CakeCut] = []
    for name in dict.fromkeys(storey.piece.what for storey in stack.storeys):
        cut, high = pieces_of(stack, name), parts[name].baked_height_mm
        heights = [piece.height_mm for piece in cut if piece.height_mm is not None]
        if high is None or not heights or len(heights) < len(cut):
            continue
        shared = packed(heights, bakes_of(parts[name], cut), high) or []
        found.extend(_cut(name, number, each, high) for number, each in enumerate(shared, start=1))
    return tuple(each for each in found if each.layers_mm)


def _cut(name: str, number: int, heights: list[float], high: float) -> CakeCut:
    left = max(0.0, high - math.fsum(heights))
    same = len(set(heights)) == 1
    most = layers_of(high, thick_mm=heights[0]) if same else len(heights)
    return CakeCut(name, number, tuple(heights), high, left, most)


def nearest_cuts(heights: Sequence[float], cakes: int, high_mm: float) -> str:
    """What would go: fewer layers, thinner ones, or more bakes, as words."""
    said: list[str] = []
    thick = max(heights)
    few = cakes * layers_of(high_mm, thick_mm=thick)
    if 0 < few < len(heights):
        said.append(f"{few} layer{'s' if few > 1 else ''} of {as_text(thick, 2)} mm")
    thin = math.floor(high_mm / math.ceil(len(heights) / cakes) * 10) / 10
    if thin > 0:
        many = len(heights)
        said.append(f"{many} layer{'s' if many > 1 else ''} of {as_text(thin, 1)} mm")
    more = next((n for n in range(cakes + 1, 51) if packed(heights, n, high_mm) is not None), None)
    if more is not None:
        said.append(f"the same with “, from {more} bakes” behind the line")
    return f"Nearest: {'; or '.join(said)}." if said else ""
