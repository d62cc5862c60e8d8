"""A torte of layers, free or in a ring: heights add up from the bottom, masses follow."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from krume.base import Notice, as_text
from krume.build.coat import Body
from krume.build.masses import MM_PER_CM, Bed, piece_layer, spread_layer
from krume.build.outline import Outline
from krume.build.outside import put_outside
from krume.build.plan_lines import Component, RingLine, TortePlan
from krume.build.stack import Spread, Stack, Storey
from krume.build.torte import ComponentFormula, Layer, Torte, added

Parts = Mapping[str, ComponentFormula]


@dataclass(frozen=True, slots=True)
class Pile:
    """Layers so far, and the height they reach."""

    layers: tuple[Layer, ...] = ()
    height_mm: float | None = 0.0

    def with_layer(self, layer: Layer) -> "Pile":
        """The pile with one layer more."""
        known = self.height_mm is not None and layer.adds_mm is not None
        height = (self.height_mm or 0.0) + (layer.adds_mm or 0.0) if known else None
        return Pile((*self.layers, layer), height)


def stacked(plan: TortePlan, stack: Stack, parts: Parts) -> Torte:
    """Torte of layers with what lies on them, on top and around."""
    pile = Pile()
    filled: set[int] = set()
    for index, storey in enumerate(stack.storeys):
        above = index + 1 < len(stack.storeys)
        pile = _storey(pile, storey, plan.ring, parts, filled, has_more=above)
    inside = _body(pile, plan.ring)
    dressed = put_outside(pile.layers, inside, stack.outside, parts)
    layers, body = dressed.layers, dressed.body
    return Torte(
        name=plan.name or "",
        kind=stack.kind,
        layers=layers,
        outline=body.outline,
        height_mm=body.height_mm,
        mass_g=added(layer.mass_g for layer in layers),
        dome_mm=body.dome_mm,
        skin=body.skin,
        covers=dressed.covers,
        notices=(*stack.notices, *_gap_notice(plan.ring, pile.layers, filled)),
    )


def _storey(
    pile: Pile,
    storey: Storey,
    ring: RingLine | None,
    parts: Parts,
    filled: set[int],
    *,
    has_more: bool,
) -> Pile:
    part = parts[storey.piece.what]
    piece = piece_layer(part, storey.piece, storey.number, pile.height_mm)
    pile = pile.with_layer(piece)
    for spread in storey.on:
        bed = _bed(pile, piece, ring, spread.component, filled)
        layer = spread_layer(parts[spread.component.what], spread.component, bed, spread.mass_g)
        pile = pile.with_layer(_placed(layer, storey.number, spread, has_more=has_more))
    return pile


def _placed(layer: Layer, number: int, spread: Spread, *, has_more: bool) -> Layer:
    if layer.role == "syrup" or not has_more:
        return replace(layer, name=f"{layer.name}, on layer {number}")
    between = spread.component.place == "between the layers"
    where = f"between layers {number} and {number + 1}" if between else f"on layer {number}"
    return replace(layer, name=f"{layer.name}, {where}")


def _bed(
    pile: Pile, piece: Layer, ring: RingLine | None, component: Component, filled: set[int]
) -> Bed:
    """Bed of a filling: in a ring it reaches the ring, and may fill the gaps below it too."""
    if ring is None or component.g_per_cm2 is not None or piece.outline is None:
        return Bed(piece.outline, pile.height_mm)
    across = ring.outline
    if not component.fills_ring:
        return Bed(across, pile.height_mm)
    open_pieces = [
        (index, layer)
        for index, layer in enumerate(pile.layers)
        if layer.role == "piece" and index not in filled
    ]
    filled.update(index for index, _ in open_pieces)
    gaps = [_gap_ml(across, layer) for _, layer in open_pieces]
    start = open_pieces[0][1].bottom_mm if open_pieces else None
    return Bed(across, pile.height_mm, sum(gaps), start if sum(gaps) > 0 else None)


def _gap_ml(ring: Outline, piece: Layer) -> float:
    if piece.outline is None or piece.height_mm is None:
        return 0.0
    return (ring.area_cm2 - piece.outline.area_cm2) * piece.height_mm / MM_PER_CM


def _body(pile: Pile, ring: RingLine | None) -> Body:
    if ring is not None:
        outline: Outline | None = ring.outline
    else:
        known = [layer.outline for layer in pile.layers if layer.outline is not None]
        outline = max(known, key=lambda found: found.area_cm2) if known else None
    volume = added(x.volume_ml for x in pile.layers if x.role != "syrup")
    return Body(outline, pile.height_mm, volume)


def _gap_notice(
    ring: RingLine | None, layers: tuple[Layer, ...], filled: set[int]
) -> tuple[Notice, ...]:
    if ring is None:
        return ()
    across = ring.outline
    left = [
        layer
        for index, layer in enumerate(layers)
        if layer.role == "piece" and index not in filled and _gap_ml(across, layer) > 0
    ]
    if not left or left[0].outline is None:
        return ()
    gap_mm = (across.across_cm - left[0].outline.across_cm) / 2 * MM_PER_CM
    text = (
        f"A gap of {as_text(gap_mm, 1)} mm beside {len(left)} of the layers is left empty in this "
        "sum. Where cream fills it, write “filled out to the ring” behind that cream."
    )
    return (Notice("gap-empty", text, f"line {left[0].line}"),)
