"""From a plan and its formulas to the torte: heights, masses, slices, batches and findings."""

import math
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from krume.base import Clash, Infeasible, Notice, Problem, Read
from krume.build.asking import (
    density_asked,
    dome_asked,
    goods_asked,
    high_asked,
    not_found,
    piece_asked,
    ring_asked,
    roll_asked,
    weight_asked,
)
from krume.build.batches import batches, eggs, slices, wastes_of
from krume.build.cake_cuts import bakes_of, cake_cuts, pieces_of
from krume.build.coat import Body
from krume.build.cover import cover_clashes, cover_of
from krume.build.cutting import cuts_of
from krume.build.decorated import height_notice, is_decoration, stands_over_mm
from krume.build.figures import figure
from krume.build.findings import findings
from krume.build.gelling import gel_asked, gel_clashes, gel_notices
from krume.build.outline import floor_of
from krume.build.plan_lines import Component, TortePlan
from krume.build.refusing import cutting_clashes, dome_clashes, holding_clashes, ring_stack_mm
from krume.build.rolled import rolled
from krume.build.shelled import shelled
from krume.build.stack import Stack, stack_of
from krume.build.stacked import stacked
from krume.build.tiered import tier_clashes, tiered, tiers_asked
from krume.build.torte import ComponentFormula, Torte, added

_BUILDERS = {"roll": rolled, "tart": shelled}


Parts = Mapping[str, ComponentFormula]


def build_torte(
    plan: TortePlan, parts: Parts, tiers: Mapping[str, Torte] = MappingProxyType({})
) -> Read[Torte] | Infeasible:
    """Build a torte of its plan; what is not known is asked, what cannot be is refused.

    `parts` are the formulas by the words the plan uses for them, `tiers` the tortes that stand on
    one another. Where anything is asked the torte holds what is known, and a mass or height that
    hangs on it is None.
    """
    missing = tuple(not_found(c) for c in plan.components if c.piece != "tier" and _no(c, parts))
    known = tuple(c for c in plan.components if c.piece == "tier" or not _no(c, parts))
    stack = stack_of(replace(plan, components=known))
    if stack.kind == "tiers":
        return _tiers(plan, stack, parts, tiers, missing)
    stack, domed = _without_domed(stack, parts)
    asked = (*missing, *stack.problems, *domed)
    if not stack.storeys or any(p.code in _STOP for p in asked):
        return Read(_nothing(plan, stack), _once(asked), stack.notices)
    clashes = cutting_clashes(stack, parts)
    if clashes:
        return Infeasible(clashes)
    used = [parts[name] for name in dict.fromkeys(c.what for c in stack_parts(stack))]
    if strong := gel_clashes(used):
        return Infeasible(strong)
    torte = _BUILDERS.get(stack.kind, stacked)(plan, stack, parts)
    clashes = (*holding_clashes(plan, torte), *dome_clashes(stack.outside, torte))
    clashes = (*clashes, *_covers_clash(stack, torte))
    if clashes:
        return Infeasible(clashes)
    done = _finished(plan, stack, parts, incomplete(torte) if asked else torte)
    done = replace(done, notices=(*done.notices, *gel_notices(used)))
    dry = (problem for part in used for problem in gel_asked(part))
    asked = (*asked, *_unknown(plan, stack, parts, torte), *high_asked(torte), *dry)
    return Read(done, _once(asked), done.notices)


def _no(component: Component, parts: Parts) -> bool:
    return component.what not in parts


def _tiers(
    plan: TortePlan,
    stack: Stack,
    parts: Parts,
    tiers: Mapping[str, Torte],
    missing: tuple[Problem, ...],
) -> Read[Torte] | Infeasible:
    """Tortes on one another; nothing is summed while a tier is not known."""
    asked = (*missing, *stack.problems, *tiers_asked(stack, parts, tiers))
    bare = [c for c in stack.outside if c.what in parts and c.mass_g is None]
    asked = (*asked, *(weight_asked(parts[c.what], c) for c in bare))
    if not stack.storeys or any(p.code.startswith("tier-") for p in asked):
        return Read(_nothing(plan, stack), _once(asked), stack.notices)
    clashes = tier_clashes(stack, tiers)
    if clashes:
        return Infeasible(clashes)
    outside = tuple(c for c in stack.outside if is_decoration(parts[c.what], c))
    torte = tiered(plan, replace(stack, outside=outside), parts, tiers)
    torte = incomplete(torte) if asked else torte
    lines = {c.number for c in outside}
    worn = tuple(x for x in torte.layers if x.line in lines and x.of in {c.what for c in outside})
    return Read(torte, _once(asked), (*torte.notices, *height_notice(worn)))


def _without_domed(stack: Stack, parts: Parts) -> tuple[Stack, tuple[Problem, ...]]:
    """The stack without what cannot lie on its dome, and what is asked of it."""
    asked: list[Problem] = []
    left: list[Component] = []
    has_dome = False
    for component in stack.outside:
        lies = component.place == "on top" and not is_decoration(parts[component.what], component)
        is_round = stack.kind in ("stacked", "ring", "tart") and _is_round(stack, parts)
        if component.is_domed and not is_round:
            asked.append(dome_asked(component, is_round=False))
        elif has_dome and lies:
            asked.append(dome_asked(component, is_round=True))
        else:
            left.append(component)
            has_dome = has_dome or component.is_domed
    return replace(stack, outside=tuple(left)), tuple(asked)


def _is_round(stack: Stack, parts: Parts) -> bool:
    """Whether the tins of a torte do not say that it has corners."""
    tins = [parts[storey.piece.what].tin for storey in stack.storeys]
    floors = [floor_of(tin) for tin in tins if tin is not None]
    discs = all(storey.piece.is_disc for storey in stack.storeys)
    return discs or all(floor is None or floor.diameter_cm is not None for floor in floors)


def _covers_clash(stack: Stack, torte: Torte) -> tuple[Clash, ...]:
    """A cover that is rolled out smaller than the way over its torte."""
    outside = {c.number: c for c in stack.outside if c.rolled_out_cm is not None}
    layer = next((x for x in torte.layers if x.line in outside), None)
    if layer is None or layer.outline is None or layer.height_mm is None:
        return ()
    before = torte.layers[: torte.layers.index(layer)]
    high = added(x.adds_mm for x in before)
    dome = max((x.dome_mm for x in before), default=0.0)
    inner = layer.outline.grown(-layer.height_mm / 10) if layer.role == "coat" else layer.outline
    component = replace(outside[layer.line], rolled_out_cm=None)
    need = cover_of(Body(inner, high, None, dome), _BARE, component, layer)
    spare = 2 * figure("cover-spare").value
    return cover_clashes(torte, outside, need[0].across_cm - spare) if need else ()


_BARE = ComponentFormula("", "")


def incomplete(torte: Torte) -> Torte:
    """The torte where a line of its plan is not in it yet: no total is known."""
    cut = tuple(replace(each, mass_g=None) for each in torte.slices)
    return replace(torte, mass_g=None, height_mm=None, ring_spare_mm=None, slices=cut)


_STOP = frozenset({"one-piece", "no-piece"})


def _once(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    return tuple(dict.fromkeys(problems))


def _nothing(plan: TortePlan, stack: Stack) -> Torte:
    return Torte(plan.name or "", stack.kind, (), None, None, None)


def _unknown(plan: TortePlan, stack: Stack, parts: Parts, torte: Torte) -> tuple[Problem, ...]:
    asked: list[Problem] = []
    for storey in stack.storeys:
        asked.extend(piece_asked(parts[storey.piece.what], storey.piece))
        asked.extend(roll_asked(parts[storey.piece.what], storey.piece))
    for component in _spread(stack):
        asked.extend(_amount_asked(parts[component.what], component))
    if plan.ring is not None and plan.ring.height_cm is None:
        asked.append(ring_asked(plan, ring_stack_mm(torte)))
    return tuple(asked)


def _amount_asked(part: ComponentFormula, component: Component) -> list[Problem]:
    """What is not known of a cream, of fruit that lies between, or of a decoration."""
    if is_decoration(part, component):
        return [weight_asked(part, component)] if component.mass_g is None else []
    if part.is_goods:
        return [goods_asked(part, component)] if component.height_mm is None else []
    if component.g_per_cm2 is None and part.density_g_ml is None:
        return [density_asked(part)]
    return []


def stack_parts(stack: Stack) -> tuple[Component, ...]:
    """Every line of a stack: its pieces, what lies on them, what goes outside."""
    return (*(storey.piece for storey in stack.storeys), *_spread(stack))


def _spread(stack: Stack) -> tuple[Component, ...]:
    inside = (each.component for storey in stack.storeys for each in storey.on)
    return tuple(dict.fromkeys((*inside, *stack.outside)))


def _finished(plan: TortePlan, stack: Stack, parts: Parts, torte: Torte) -> Torte:
    """The torte with its slices, batches, eggs and findings."""
    wastes = wastes_of(plan, torte.layers, torte.covers)
    made = batches(torte.layers, parts, _cakes(stack, parts), wastes)
    room_mm = None if plan.ring is None or plan.ring.height_cm is None else plan.ring.height_cm * 10
    high = ring_stack_mm(torte) if torte.height_mm is not None else None
    spare = None if room_mm is None or high is None else room_mm - high
    over = stands_over_mm(torte.layers)
    torte = replace(torte, ring_height_mm=room_mm, ring_spare_mm=spare, over_mm=over)
    amounts = {
        c.number: c.g_per_cm2
        for c in _spread(stack)
        if c.g_per_cm2 is not None and parts[c.what].family in ("syrup", None)
    }
    return replace(
        torte,
        slices=slices(torte, plan.slices),
        batches=made,
        eggs=eggs(made, parts),
        cuts=cuts_of(torte),
        cakes=cake_cuts(stack, parts),
        notices=(
            *torte.notices,
            *_flared(stack, parts),
            *height_notice(torte.layers),
            *_uncut(plan),
        ),
        findings=findings(torte, parts, amounts),
    )


def _flared(stack: Stack, parts: Parts) -> tuple[Notice, ...]:
    """Notice for each tin whose walls lean: its cake is taken as upright."""
    names = dict.fromkeys(storey.piece.what for storey in stack.storeys)
    tins = {name: tin for name in names if (tin := parts[name].tin) is not None}
    return tuple(
        Notice("walls-taken-upright", f"The cake of {name} is taken as wide as its tin's floor.")
        for name, tin in tins.items()
        if tin.top_cm is not None or tin.top_length_cm is not None
    )


def _uncut(plan: TortePlan) -> tuple[Notice, ...]:
    if plan.slices:
        return ()
    text = "No number of slices is written, so none is weighed. Type such as: Slices: 12"
    return (Notice("slices-not-written", text),)


def _cakes(stack: Stack, parts: Parts) -> dict[str, int]:
    """Whole bakes of each baked formula: as many as its layers are cut from, at least one."""
    found: dict[str, int] = {}
    for name in dict.fromkeys(storey.piece.what for storey in stack.storeys):
        tin = parts[name].tin
        cakes = bakes_of(parts[name], pieces_of(stack, name))
        found[name] = max(1, math.ceil(cakes / (1 if tin is None else tin.count)))
    return found
