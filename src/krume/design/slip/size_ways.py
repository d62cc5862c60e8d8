"""Ways out of a slip that change the cake's size, and fresh eggs for spoilt whites."""

from dataclasses import replace

from krume.base import as_text
from krume.design.slip.bowl import Bowl, Bowls
from krume.design.slip.eggs import egg_lines
from krume.design.slip.settled import Masses, plan_g, settled_g
from krume.design.slip.state import NOISE_G, Slip, figure
from krume.design.slip.way import Declined, Draft
from krume.size import whole_factors


def needed_factor(slip: Slip) -> float:
    """Smallest factor at which nothing weighed of any line is too much."""
    ratios = [slip.held_g(n) / plan for n, plan in enumerate(plan_g(slip)) if plan]
    return max([1.0, *ratios])


def scale_exact(slip: Slip, bowls: Bowls) -> Draft | Declined:
    """Everything by the smallest factor at which nothing is too much."""
    return _scaled(slip, "scale-exact", max(needed_factor(slip), _bowl_factor(bowls)))


def _bowl_factor(bowls: Bowls) -> float:
    return 1.0 if bowls.slip is None else max(1.0, bowls.slip.needed)


def scale(slip: Slip, bowls: Bowls) -> Draft | Declined:
    """Everything by the smallest factor from there on that gives whole eggs."""
    needed = max(needed_factor(slip), _bowl_factor(bowls))
    counts = [egg.count for egg in egg_lines(slip.formula)]
    if not counts:
        return Declined("scale", "there are no counted eggs to make whole")
    factor = next((f for f in whole_factors(counts, near=needed) if f >= needed - NOISE_G), None)
    if factor is None:
        return Declined("scale", "no size in reach gives whole eggs")
    return _scaled(slip, "scale", factor)


def _scaled(slip: Slip, kind: str, factor: float) -> Draft | Declined:
    if factor > figure("factor-most"):
        return Declined(kind, f"the cake would be {as_text(factor, 2)} times as large")
    for n in sorted(slip.closed):
        plan = slip.plan_g(n)
        if plan is not None and slip.held_g(n) < factor * plan - NOISE_G:
            return Declined(kind, f"there is no more {slip.lines[n].name}")
    masses: Masses = tuple(None if m is None else m * factor for m in plan_g(slip))
    return Draft(kind, factor, masses, masses)


def down(slip: Slip, bowls: Bowls) -> Draft | Declined:
    """Everything by the part of the plan that the short line allows.

    A dry blend that lies apart keeps its surplus in a jar; a line alone in its cup is taken back.
    """
    part, short = min((slip.held_g(n) / (slip.plan_g(n) or 1.0), n) for n in slip.short)
    name = slip.lines[short].name
    if part < figure("down-least"):
        return Declined("down", f"there is too little {name}: {100 * part:.0f} % of the plan")
    card: Masses = tuple(None if m is None else m * part for m in plan_g(slip))
    blend = _blend_with_surplus(slip, bowls, part)
    end = list(card)
    factor = part
    if blend is not None:
        factor = max(part, blend.needed)
        for item in blend.items:
            end[item.line] = (end[item.line] or 0.0) + (factor - part) * item.plan_g
    for n in range(len(end)):
        why = _in_the_way(slip, bowls, n, end[n])
        if why:
            return Declined("down", why)
    return Draft("down", part, card, tuple(end), jar_factor=factor - part)


def _blend_with_surplus(slip: Slip, bowls: Bowls, part: float) -> Bowl | None:
    """The dry blend that already holds more than the smaller cake needs, lying apart."""
    for bowl in bowls.all:
        whole = all(abs(i.plan_g - (slip.plan_g(i.line) or 0.0)) < NOISE_G for i in bowl.items)
        is_free = not (slip.same_bowl - bowl.lines) or not (slip.same_bowl & bowl.lines)
        if bowl.is_blend and whole and is_free and bowl.needed > part + NOISE_G:
            return bowl
    return None


def _in_the_way(slip: Slip, bowls: Bowls, line: int, end_g: float | None) -> str:
    """Why a line cannot come to its end; empty where it can."""
    held, name = slip.held_g(line), slip.lines[line].name
    if end_g is None or abs(held - end_g) <= NOISE_G:
        return ""
    if held < end_g:
        return f"there is no more {name}" if line in slip.closed else ""
    return "" if bowls.alone(line) else f"{name} lies with other things and does not come out"


def fresh(slip: Slip) -> Draft | Declined:
    """Break fresh eggs for the whites that have yolk in them; the cake stays as planned."""
    eggs = [egg.line for egg in egg_lines(slip.formula) if egg.part in ("whole", "white")]
    if any(n in slip.closed for n in eggs):
        return Declined("fresh", "there are no more eggs")
    card = settled_g(slip)
    return Draft("fresh", 1.0, card, card)


def without_spoilt(slip: Slip) -> Slip:
    """The slip with the eggs of the spoilt whites gone and no more eggs to come."""
    weighed, closed = list(slip.weighed_g), set(slip.closed)
    for egg in egg_lines(slip.formula):
        if egg.part == "yolk":
            continue
        good = max(0.0, egg.count - slip.spoilt_whites) * egg.each_g
        weighed[egg.line] = good
        closed.add(egg.line)
    return replace(slip, weighed_g=tuple(weighed), closed=frozenset(closed), spoilt_whites=0)
