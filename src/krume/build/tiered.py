"""Tortes on one another as tiers: each stands on its own board, and the boards on supports."""

from collections.abc import Mapping
from dataclasses import replace
from itertools import pairwise

from krume.base import Clash, Notice, Problem, as_text
from krume.build.batches import batches, eggs, wastes_of
from krume.build.coat import Body
from krume.build.decorated import decoration, is_decoration, stands_over_mm
from krume.build.figures import figure
from krume.build.outline import fits_in
from krume.build.plan_lines import Component, TortePlan
from krume.build.stack import Stack
from krume.build.torte import (
    BuildFinding,
    ComponentFormula,
    Layer,
    Skin,
    Slice,
    Tier,
    Torte,
    added,
)

_KINDS = ("stacked", "ring")
Parts = Mapping[str, ComponentFormula]


def tiers_asked(stack: Stack, parts: Parts, tortes: Mapping[str, Torte]) -> tuple[Problem, ...]:
    """Questions about tiers that are no tortes, and about what cannot lie on all of them."""
    asked = [p for storey in stack.storeys for p in _tier_asked(storey.piece, tortes)]
    spread = [each.component for storey in stack.storeys for each in storey.on]
    for component in (*spread, *stack.outside):
        part = parts.get(component.what)
        if part is None or not is_decoration(part, component):
            ask = (
                "A torte of tiers takes decorations only: coats and creams stand in the text of "
                "each tier. Take this line there."
            )
            where = f"line {component.number}"
            asked.append(Problem("not-on-tiers", where, component.read, ask))
    return tuple(dict.fromkeys(asked))


def _tier_asked(piece: Component, tortes: Mapping[str, Torte]) -> list[Problem]:
    where = f"line {piece.number}"
    found = tortes.get(piece.what)
    if found is None:
        ask = f"There is no torte called {piece.what}. Correct the name, or add the torte."
        return [Problem("tier-missing", where, piece.read, ask)]
    if found.kind not in _KINDS:
        ask = f"{piece.what} is a {_word(found.kind)}, and only a torte of layers stands as a tier."
        return [Problem("tier-kind", where, piece.read, ask)]
    return []


def _word(kind: str) -> str:
    return "torte of tiers" if kind == "tiers" else kind


def tiered(plan: TortePlan, stack: Stack, parts: Parts, tortes: Mapping[str, Torte]) -> Torte:
    """A torte of tiers: heights and boards add up, masses are those of its tortes."""
    tiers, height = _stood(stack, tortes)
    layers = tuple(layer for tier in tiers for layer in _lifted(tier))
    bottom, top = tiers[0].torte, tiers[-1].torte
    worn = tuple(decoration(Body(top.outline, height), parts[c.what], c) for c in stack.outside)
    layers = (*layers, *worn)
    cakes = _cakes(tiers)
    made = batches(layers, parts, cakes, _wastes(plan, tiers, worn))
    return Torte(
        name=plan.name or "",
        kind="tiers",
        layers=layers,
        outline=bottom.outline,
        height_mm=height,
        mass_g=added(layer.mass_g for layer in layers),
        slices=_slices(tiers),
        batches=made,
        eggs=eggs(made, parts),
        findings=(*_findings(tiers), *_supports(tiers)),
        notices=(*stack.notices, *_notices(tiers)),
        dome_mm=top.dome_mm,
        over_mm=stands_over_mm((*top.decorations, *worn)),
        skin=_skin(tiers),
        cuts=(),
        cakes=tuple(cake for tier in tiers for cake in tier.torte.cakes),
        covers=tuple(cover for tier in tiers for cover in tier.torte.covers),
        tiers=tiers,
    )


def _stood(stack: Stack, tortes: Mapping[str, Torte]) -> tuple[tuple[Tier, ...], float | None]:
    """Each tier with the height it begins at: a board lies under every one but the lowest."""
    board = figure("tier-board").value
    found: list[Tier] = []
    reached: float | None = 0.0
    for number, storey in enumerate(stack.storeys, start=1):
        torte = tortes[storey.piece.what]
        if number > 1 and reached is not None:
            reached += board
        found.append(Tier(number, storey.piece.what, torte, reached))
        high = torte.height_mm
        reached = None if reached is None or high is None else reached + high
    return tuple(found), reached


def _lifted(tier: Tier) -> tuple[Layer, ...]:
    up = tier.bottom_mm
    return tuple(
        replace(
            layer,
            name=f"Tier {tier.number}: {layer.name}",
            bottom_mm=_up(layer.bottom_mm, up),
            fills_from_mm=_up(layer.fills_from_mm, up),
            top_mm=_up(layer.top_mm, up),
        )
        for layer in tier.torte.layers
    )


def _up(value_mm: float | None, by_mm: float | None) -> float | None:
    return None if value_mm is None or by_mm is None else value_mm + by_mm


def _cakes(tiers: tuple[Tier, ...]) -> dict[str, int]:
    """Whole bakes: those of each tier together, because tins differ."""
    found: dict[str, int] = {}
    for tier in tiers:
        for batch in tier.torte.batches:
            if batch.kind == "cake":
                found[batch.name] = found.get(batch.name, 0) + round(batch.batches or 1)
    return found


def _wastes(plan: TortePlan, tiers: tuple[Tier, ...], worn: tuple[Layer, ...]) -> dict[str, float]:
    """What stays in bag and bowl of all tiers, and of what is put on them at the end."""
    found = wastes_of(plan, worn, ())
    for tier in tiers:
        for batch in tier.torte.batches:
            found[batch.name] = found.get(batch.name, 0.0) + batch.waste_g
    return found


def _slices(tiers: tuple[Tier, ...]) -> tuple[Slice, ...]:
    """Slices of each tier cut by itself, the usual number of each."""
    return tuple(tier.torte.slices[0] for tier in tiers if tier.torte.slices)


def _skin(tiers: tuple[Tier, ...]) -> Skin | None:
    """Its surface seen from outside: of each tier's top only the ledge shows."""
    skins = [tier.torte.skin for tier in tiers]
    outlines = [tier.torte.outline for tier in tiers]
    if None in skins or None in outlines:
        return None
    known = [skin for skin in skins if skin is not None]
    covered = sum(outline.area_cm2 for outline in outlines[1:] if outline is not None)
    top = sum(skin.top_cm2 for skin in known) - covered
    return Skin(top, sum(skin.side_cm2 for skin in known))


def _findings(tiers: tuple[Tier, ...]) -> tuple[BuildFinding, ...]:
    found = [
        replace(each, where=f"{tier.name} {each.where}")
        for tier in tiers
        for each in tier.torte.findings
    ]
    return tuple(dict.fromkeys(found))


def _notices(tiers: tuple[Tier, ...]) -> tuple[Notice, ...]:
    found = [
        replace(each, where=f"{tier.name} {each.where}".strip())
        for tier in tiers
        for each in tier.torte.notices
    ]
    return tuple(dict.fromkeys(found))


def _supports(tiers: tuple[Tier, ...]) -> tuple[BuildFinding, ...]:
    """The caution of tiers: no cream carries a torte, so supports do."""
    least = figure("tier-supports-least")
    found = []
    for below, above in pairwise(tiers):
        mass = above.torte.mass_g
        grams = "a mass that is not known" if mass is None else f"{as_text(mass, 0)} g"
        height = below.torte.height_mm
        long = "" if height is None else f" of {as_text(height, 0)} mm, all cut to one length"
        text = (
            f"Tier {above.number} puts {grams} on tier {below.number}. Cream carries no torte: "
            f"give it a board of its own on at least {as_text(least.value)} supports{long}, fit "
            "for food, and take them out before cutting. Whether it stands on the road nobody "
            "has tried here."
        )
        found.append(
            BuildFinding(
                "tier-supports", f"tier {above.number}", mass or 0.0, None, None, "g",
                least.status, text,
            )
        )  # fmt: skip
    return tuple(found)


def tier_clashes(stack: Stack, tortes: Mapping[str, Torte]) -> tuple[Clash, ...]:
    """A tier wider than the one it stands on."""
    found = []
    for below, above in pairwise(stack.storeys):
        low, high = tortes[below.piece.what].outline, tortes[above.piece.what].outline
        if low is None or high is None or fits_in(high, low):
            continue
        needs, has = f"{as_text(high.across_cm, 2)} cm", f"{as_text(low.across_cm, 2)} cm across"
        limit = f"line {above.piece.number}: {above.piece.read}"
        said = (
            f"Tier {above.number} is {needs} wide and would stand on {has} ({limit}). Nearest: "
            "write the wider torte first, the lowest tier stands at the top of the text."
        )
        found.append(Clash("the tiers", limit, needs, has, said))
    return tuple(found)
