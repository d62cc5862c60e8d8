"""From a plan and its formulas to the torte: heights, masses, slices, batches and findings."""

from collections.abc import Mapping
from dataclasses import replace

from krume.base import Infeasible, Notice, Problem, Read
from krume.build.asking import density_asked, not_found, piece_asked, ring_asked, roll_asked
from krume.build.batches import batches, eggs, slices
from krume.build.findings import findings
from krume.build.plan_lines import Component, TortePlan
from krume.build.refusing import cutting_clashes, holding_clashes, ring_stack_mm
from krume.build.rolled import rolled
from krume.build.shelled import shelled
from krume.build.stack import Stack, stack_of
from krume.build.stacked import stacked
from krume.build.torte import ComponentFormula, Torte

_BUILDERS = {"roll": rolled, "tart": shelled}


def build_torte(plan: TortePlan, parts: Mapping[str, ComponentFormula]) -> Read[Torte] | Infeasible:
    """Build a torte of its plan; what is not known is asked, what cannot be is refused.

    `parts` are the formulas by the words the plan uses for them. Where anything is asked the
    torte holds what is known, and a mass or height that hangs on it is None.
    """
    missing = tuple(not_found(c) for c in plan.components if c.what not in parts)
    known = tuple(c for c in plan.components if c.what in parts)
    stack = stack_of(replace(plan, components=known))
    asked = (*missing, *stack.problems)
    if not stack.storeys or any(p.code in _STOP for p in asked):
        return Read(_nothing(plan, stack), _once(asked), stack.notices)
    clashes = cutting_clashes(stack, parts)
    if clashes:
        return Infeasible(clashes)
    torte = _BUILDERS.get(stack.kind, stacked)(plan, stack, parts)
    clashes = holding_clashes(plan, torte)
    if clashes:
        return Infeasible(clashes)
    done = _finished(plan, stack, parts, incomplete(torte) if asked else torte)
    asked = (*asked, *_unknown(plan, stack, parts, torte))
    return Read(done, _once(asked), done.notices)


def incomplete(torte: Torte) -> Torte:
    """The torte where a line of its plan is not in it yet: no total is known."""
    cut = tuple(replace(each, mass_g=None) for each in torte.slices)
    return replace(torte, mass_g=None, height_mm=None, ring_spare_mm=None, slices=cut)


_STOP = frozenset({"one-piece", "no-piece"})


def _once(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    return tuple(dict.fromkeys(problems))


def _nothing(plan: TortePlan, stack: Stack) -> Torte:
    return Torte(plan.name or "", stack.kind, (), None, None, None)


def _unknown(
    plan: TortePlan, stack: Stack, parts: Mapping[str, ComponentFormula], torte: Torte
) -> tuple[Problem, ...]:
    asked: list[Problem] = []
    for storey in stack.storeys:
        asked.extend(piece_asked(parts[storey.piece.what], storey.piece))
        asked.extend(roll_asked(parts[storey.piece.what], storey.piece))
    for component in _spread(stack):
        part = parts[component.what]
        if component.g_per_cm2 is None and part.density_g_ml is None:
            asked.append(density_asked(part))
    if plan.ring is not None and plan.ring.height_cm is None:
        asked.append(ring_asked(plan, ring_stack_mm(torte)))
    return tuple(asked)


def _spread(stack: Stack) -> tuple[Component, ...]:
    inside = (each.component for storey in stack.storeys for each in storey.on)
    return tuple(dict.fromkeys((*inside, *stack.outside)))


def _finished(
    plan: TortePlan, stack: Stack, parts: Mapping[str, ComponentFormula], torte: Torte
) -> Torte:
    """The torte with its slices, batches, eggs and findings."""
    made = batches(torte.layers, parts, _cakes(stack))
    room_mm = None if plan.ring is None or plan.ring.height_cm is None else plan.ring.height_cm * 10
    high = ring_stack_mm(torte) if torte.height_mm is not None else None
    spare = None if room_mm is None or high is None else room_mm - high
    torte = replace(torte, ring_height_mm=room_mm, ring_spare_mm=spare)
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
        notices=(*torte.notices, *_flared(stack, parts), *_uncut(plan)),
        findings=findings(torte, parts, amounts),
    )


def _flared(stack: Stack, parts: Mapping[str, ComponentFormula]) -> tuple[Notice, ...]:
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


def _cakes(stack: Stack) -> dict[str, int]:
    """Whole bakes of each baked formula: one batch, and one for each flat sheet."""
    names = dict.fromkeys(storey.piece.what for storey in stack.storeys)
    return {name: max(1, _sheets(stack, name)) for name in names}


def _sheets(stack: Stack, name: str) -> int:
    pieces = [storey.piece for storey in stack.storeys if storey.piece.what == name]
    return sum(piece.piece == "sheet" for piece in pieces)
