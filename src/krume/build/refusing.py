"""What cannot be: layers higher than the cake, a trim wider than the tin, a ring too low."""

from collections.abc import Mapping

from krume.base import Clash, as_text
from krume.build.outline import can_be_cut, floor_of
from krume.build.plan_lines import Component, TortePlan
from krume.build.shelled import filled_to_mm
from krume.build.stack import Stack
from krume.build.torte import ComponentFormula, Torte, added

_SLACK_MM = 1e-6

Parts = Mapping[str, ComponentFormula]


def cutting_clashes(stack: Stack, parts: Parts) -> tuple[Clash, ...]:
    """Clashes of the pieces with the cakes they are cut from."""
    pieces = tuple(storey.piece for storey in stack.storeys)
    names = tuple(dict.fromkeys(piece.what for piece in pieces))
    found: list[Clash] = []
    for name in names:
        cut = [piece for piece in pieces if piece.what == name and piece.piece != "shell"]
        found.extend(_too_wide(parts[name], cut))
        found.extend(_too_high(parts[name], cut))
    spread = [each.component for storey in stack.storeys for each in storey.on]
    found.extend(_free_edges(stack, parts, spread))
    return tuple(dict.fromkeys(found))


def _too_wide(part: ComponentFormula, cut: list[Component]) -> list[Clash]:
    floor = None if part.tin is None else floor_of(part.tin)
    if floor is None:
        return []
    return [
        Clash(
            name=f"the cake of {part.name}",
            limit=f"line {piece.number}: {piece.read}",
            needs=f"{as_text(piece.trimmed_to_cm, 2)} cm",
            has=f"{as_text(floor.diameter_cm or floor.width_cm, 2)} cm across",
        )
        for piece in cut
        if piece.trimmed_to_cm is not None and not can_be_cut(floor, piece.trimmed_to_cm)
    ]


def _too_high(part: ComponentFormula, cut: list[Component]) -> list[Clash]:
    high = part.baked_height_mm
    heights = [piece.height_mm for piece in cut if piece.height_mm is not None]
    if high is None or not heights:
        return []
    cakes = _cakes(part, cut)
    if _fits(heights, cakes, high):
        return []
    line = cut[0].number
    said = " + ".join(f"{heights.count(h)} × {as_text(h, 2)} mm" for h in dict.fromkeys(heights))
    one = "" if cakes == 1 else f" in each of {cakes} cakes"
    return [
        Clash(
            name=f"the cake of {part.name}",
            limit=f"line {line}: layers of {said}",
            needs=f"{as_text(sum(heights), 2)} mm",
            has=f"{as_text(high, 2)} mm of height{one}",
        )
    ]


def _cakes(part: ComponentFormula, cut: list[Component]) -> int:
    """Cakes at hand: one batch, in as many tins as it is baked in; a flat sheet is a bake."""
    sheets = sum(piece.piece == "sheet" for piece in cut)
    tins = 1 if part.tin is None else part.tin.count
    return max(tins, sheets)


def _fits(heights: list[float], cakes: int, high: float) -> bool:
    """Whether layers can be cut from cakes, the thickest first, each where there is room."""
    room = [high + _SLACK_MM] * cakes
    for height in sorted(heights, reverse=True):
        index = next((i for i, left in enumerate(room) if left >= height), None)
        if index is None:
            return False
        room[index] -= height
    return True


def _free_edges(stack: Stack, parts: Parts, spread: list[Component]) -> list[Clash]:
    if stack.kind != "roll" or not stack.storeys:
        return []
    piece = stack.storeys[0].piece
    tin = parts[piece.what].tin
    floor = None if tin is None else floor_of(tin)
    if floor is None or floor.diameter_cm is not None:
        return []
    length = floor.width_cm if piece.rolled_from == "long" else floor.length_cm
    return [
        Clash(
            name="the side that is rolled up",
            limit=f"line {each.number}: {each.read}",
            needs=f"more than {as_text(each.free_edge_cm, 2)} cm",
            has=f"{as_text(length, 2)} cm",
        )
        for each in spread
        if each.free_edge_cm is not None and each.free_edge_cm >= length
    ]


def holding_clashes(plan: TortePlan, torte: Torte) -> tuple[Clash, ...]:
    """Clashes of a torte with what holds it: the ring's width and height, the wall of a shell."""
    if torte.kind == "tart":
        return _shell_clash(torte)
    if plan.ring is None:
        return ()
    wide = [layer for layer in torte.layers if layer.role == "piece" and layer.outline is not None]
    across = max((x.outline.across_cm for x in wide if x.outline is not None), default=0.0)
    found: list[Clash] = []
    if across > plan.ring.diameter_cm + _SLACK_MM:
        has = f"{as_text(plan.ring.diameter_cm, 2)} cm across"
        found.append(Clash("the ring", plan.ring.read, f"{as_text(across, 2)} cm", has))
    high = ring_stack_mm(torte)
    if plan.ring.height_cm is not None and high is not None:
        room_mm = plan.ring.height_cm * 10
        if high > room_mm + _SLACK_MM:
            has = f"{as_text(room_mm, 2)} mm of height"
            found.append(Clash("the ring", plan.ring.read, f"{as_text(high, 2)} mm", has))
    return tuple(found)


def ring_stack_mm(torte: Torte) -> float | None:
    """Height that stands in the ring: all but a coat, which is put on when the ring is off."""
    return added(layer.adds_mm for layer in torte.layers if layer.role != "coat")


def _shell_clash(torte: Torte) -> tuple[Clash, ...]:
    level, high = filled_to_mm(torte), torte.layers[0].height_mm
    if level is None or high is None or level <= high + _SLACK_MM:
        return ()
    needs = f"{as_text(level, 1)} mm"
    return (Clash("the shell", "floor and filling", needs, f"{as_text(high, 2)} mm of height"),)
