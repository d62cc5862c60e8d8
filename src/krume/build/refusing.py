"""What cannot be: layers higher than the cake, a trim wider than the tin, a ring too low."""

import math
from collections.abc import Mapping, Sequence

from krume.base import Clash, as_text
from krume.build.cake_cuts import bakes_of, nearest_cuts, packed
from krume.build.outline import Outline, can_be_cut, fits_in, floor_of
from krume.build.plan_lines import Component, RingLine, TortePlan
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
    found = []
    for piece in cut:
        to, wide = piece.trimmed_to_cm, piece.trimmed_wide_cm
        if to is None or _can_be_cut(floor, piece):
            continue
        needs = f"{as_text(to, 2)} cm" if wide is None else _sides(to, wide)
        has = f"{as_text(floor.diameter_cm or floor.width_cm, 2)} cm across"
        if floor.diameter_cm is None and wide is not None:
            has = _sides(floor.length_cm, floor.width_cm)
        limit = f"line {piece.number}: {piece.read}"
        name = f"the cake of {part.name}"
        said = (
            f"The cake of {part.name} has {has}; {needs} is needed ({limit}). "
            f"Nearest: cut it to what it has, or bake it in a tin of {needs}."
        )
        found.append(Clash(name, limit, needs, has, said))
    return found


def _can_be_cut(floor: Outline, piece: Component) -> bool:
    to = piece.trimmed_to_cm or 0.0
    if piece.is_disc and floor.diameter_cm is None:
        return fits_in(Outline(to), floor)
    return can_be_cut(floor, to, piece.trimmed_wide_cm)


def _sides(long_cm: float, wide_cm: float) -> str:
    return f"{as_text(long_cm, 2)} × {as_text(wide_cm, 2)} cm"


def _too_high(part: ComponentFormula, cut: list[Component]) -> list[Clash]:
    high = part.baked_height_mm
    heights = [piece.height_mm for piece in cut if piece.height_mm is not None]
    if high is None or not heights:
        return []
    cakes = bakes_of(part, cut)
    if packed(heights, cakes, high) is not None:
        return []
    line = cut[0].number
    said = " + ".join(f"{heights.count(h)} × {as_text(h, 2)} mm" for h in dict.fromkeys(heights))
    one = "" if cakes == 1 else f" in each of {cakes} cakes"
    limit, needs = f"line {line}: layers of {said}", f"{as_text(sum(heights), 2)} mm"
    has = f"{as_text(high, 2)} mm of height{one}"
    whole = f"The cake of {part.name} has {has}; {needs} is needed ({limit})."
    nearest = nearest_cuts(heights, cakes, high)
    return [Clash(f"the cake of {part.name}", limit, needs, has, f"{whole} {nearest}".strip())]


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
    return (*_ring_wide(plan.ring, torte), *_ring_high(plan.ring, torte))


def _ring_wide(ring: RingLine, torte: Torte) -> tuple[Clash, ...]:
    """A piece that does not go into the ring, the widest of them."""
    inside = ring.outline
    pieces = [x.outline for x in torte.layers if x.role == "piece" and x.outline is not None]
    out = [outline for outline in pieces if not fits_in(outline, inside)]
    if not out:
        return ()
    widest = max(out, key=lambda outline: outline.across_cm)
    needs, room = _size(widest), _size(inside)
    cut = _size(Outline(inside.width_cm)) if _is_cornered_only(widest, inside) else room
    has = f"{room} across" if inside.diameter_cm is not None else room
    said = (
        f"The ring has {has}; {needs} is needed ({ring.read}). Nearest: write "
        f"“, trimmed to {cut}” behind the layers, or take a ring of {needs}."
    )
    return (Clash("the ring", ring.read, needs, has, said),)


def _is_cornered_only(piece: Outline, ring: Outline) -> bool:
    """Whether a round piece would have to go into a ring with corners."""
    return piece.diameter_cm is not None and ring.diameter_cm is None


def _size(outline: Outline) -> str:
    if outline.diameter_cm is not None:
        return f"{as_text(outline.diameter_cm, 2)} cm"
    return _sides(outline.length_cm, outline.width_cm)


def _ring_high(ring: RingLine, torte: Torte) -> tuple[Clash, ...]:
    high = ring_stack_mm(torte)
    if ring.height_cm is None or high is None or high <= ring.height_cm * 10 + _SLACK_MM:
        return ()
    room_mm = ring.height_cm * 10
    needs, has = f"{as_text(high, 2)} mm", f"{as_text(room_mm, 2)} mm of height"
    said = f"The ring has {has}; {needs} is needed ({ring.read}). {_lower(torte, room_mm)}"
    return (Clash("the ring", ring.read, needs, has, said),)


def _lower(torte: Torte, room_mm: float) -> str:
    """The nearest torte that goes into a ring: its creams lower, where they can be."""
    ring = f"a ring {as_text((ring_stack_mm(torte) or 0.0) / 10, 2)} cm high"
    creams = [x for x in torte.layers if x.role == "filling" and (x.adds_mm or 0.0) > 0]
    others = added(x.adds_mm for x in torte.layers if x.role != "coat") or 0.0
    others -= sum(x.adds_mm or 0.0 for x in creams)
    if not creams or others >= room_mm:
        return (
            f"All but the cream takes {as_text(others, 2)} mm, so no cream goes in at all. "
            f"Nearest: a layer less, or {ring}."
        )
    each = math.floor((room_mm - others) / len(creams) * 100) / 100
    return f"Nearest: {len(creams)} × {as_text(each, 2)} mm of cream, or {ring}."


def ring_stack_mm(torte: Torte) -> float | None:
    """Height that stands in the ring: all but a coat, which is put on when the ring is off."""
    return added(layer.adds_mm for layer in torte.layers if layer.role != "coat")


def _shell_clash(torte: Torte) -> tuple[Clash, ...]:
    level, high = filled_to_mm(torte), torte.layers[0].height_mm
    if level is None or high is None or level <= high + _SLACK_MM:
        return ()
    needs, has = f"{as_text(level, 1)} mm", f"{as_text(high, 2)} mm of height"
    said = f"The shell has {has}; {needs} is needed (floor and filling). {_less(torte, high)}"
    return (Clash("the shell", "floor and filling", needs, has, said.strip()),)


def _less(torte: Torte, high_mm: float) -> str:
    """How much of the last filling a shell holds, where its grams are known."""
    last = next((x for x in reversed(torte.layers) if x.role == "filling"), None)
    if last is None or not last.height_mm or last.mass_g is None:
        return ""
    over = (filled_to_mm(torte) or 0.0) - high_mm
    share = (last.height_mm - over) / last.height_mm
    if share <= 0:
        return ""
    grams = math.floor(last.mass_g * share)
    return f"Nearest: {grams} g of {last.of} fill it to the brim."


def dome_clashes(outside: Sequence[Component], torte: Torte) -> tuple[Clash, ...]:
    """A dome higher than half a ball over its torte."""
    domes = [(c, x) for c in outside if c.is_domed for x in torte.layers if x.line == c.number]
    across = next((x.outline.diameter_cm for _, x in domes if x.outline is not None), None)
    if across is None:
        return ()
    most = f"{as_text(across * 5, 2)} mm"
    return tuple(
        Clash(
            "the dome", f"line {c.number}: {c.read}", "a dome", f"at most {most}",
            f"A dome is at most half a ball: over {as_text(across, 2)} cm that is {most} high "
            f"(line {c.number}: {c.read}). Nearest: {most}.",
        )
        for c, layer in domes
        if layer.height_mm is None and (c.height_mm or 0.0) * (c.count or 1) > across * 5
    )  # fmt: skip
