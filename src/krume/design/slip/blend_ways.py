"""Ways out of a slip in a blend: a jar, as it is, the total held, a second small cake."""

import math

from krume.design.slip.bowl import Bowl, Item
from krume.design.slip.judging import Judge
from krume.design.slip.limits import band_limits
from krume.design.slip.settled import Masses, plan_g, settled_g, with_bowl
from krume.design.slip.split import closest_split
from krume.design.slip.state import NOISE_G, Slip, figure
from krume.design.slip.way import Declined, Draft


def jar(slip: Slip, bowl: Bowl) -> Draft | Declined:
    """Fill every line of the bowl up to the one factor; what is over goes into a jar."""
    factor = max(1.0, bowl.needed)
    if bowl.added:
        names = " and ".join(slip.lines[n].name for n in bowl.added)
        return Declined("jar", f"{names} in the same bowl is no part of the blend")
    stuck = _stuck(slip, bowl, factor)
    if stuck:
        return Declined("jar", stuck)
    if factor > figure("jar-most"):
        return Declined("jar", f"the blend would have to be made {factor:.1f} times")
    ends = tuple(factor * item.plan_g for item in bowl.items)
    plan = tuple(item.plan_g for item in bowl.items)
    base = settled_g(slip)
    return Draft(
        "jar",
        factor,
        card_g=with_bowl(slip, base, bowl, plan),
        end_g=with_bowl(slip, base, bowl, ends),
        bowl_g=ends,
        jar_factor=factor - 1,
    )


def _stuck(slip: Slip, bowl: Bowl, factor: float) -> str:
    """Why a bowl cannot be filled up to a factor; empty where it can."""
    for item in bowl.items:
        if item.is_closed and item.held_g < factor * item.plan_g - NOISE_G:
            name = slip.lines[item.line].name
            return f"there is no more {name} to fill the blend up with"
    return ""


def leave(slip: Slip, bowl: Bowl | None) -> Draft:
    """What is over stays, the rest goes in as planned."""
    card = settled_g(slip)
    ends = None if bowl is None else tuple(_end(item) for item in bowl.items)
    return Draft("leave", 1.0, card, card, ends)


def _end(item: Item) -> float:
    return item.held_g if item.is_closed else max(item.held_g, item.plan_g)


def hold(slip: Slip, bowl: Bowl) -> Draft | Declined:
    """Take the surplus back from the lines not yet weighed, all by one factor."""
    ends = _held_total(bowl)
    if ends is None:
        return Declined("hold", "too little of the blend is still to be weighed to take it back")
    card = with_bowl(slip, settled_g(slip), bowl, ends)
    return Draft("hold", 1.0, card, card, ends)


def _held_total(bowl: Bowl) -> tuple[float, ...] | None:
    """Items whose sum is the plan's: the open parts shrink alike, none below what lies there."""
    taking = {n for n, item in enumerate(bowl.items) if item.is_open and item.is_bulk}
    ends = [_end(item) for item in bowl.items]
    room = bowl.plan_g - math.fsum(end for n, end in enumerate(ends) if n not in taking)
    while taking:
        factor = room / math.fsum(bowl.items[n].plan_g for n in taking)
        full = {n for n in taking if factor * bowl.items[n].plan_g < bowl.items[n].held_g}
        if not full:
            break
        for n in full:
            ends[n] = bowl.items[n].held_g
            room -= ends[n]
        taking -= full
    else:
        return None
    if factor <= NOISE_G:
        return None
    for n in taking:
        ends[n] = factor * bowl.items[n].plan_g
    return tuple(ends)


def hold_in_band(slip: Slip, bowl: Bowl, judge: Judge) -> Draft | None:
    """The split of what is still to weigh that keeps the total and every band, closest to plan."""
    taking = [n for n, item in enumerate(bowl.items) if item.is_open and item.is_bulk]
    start = [_end(i) if n not in taking else i.held_g for n, i in enumerate(bowl.items)]
    steps = round((bowl.plan_g - math.fsum(start)) / slip.step_g)
    base = with_bowl(slip, settled_g(slip), bowl, tuple(start))
    lines = [bowl.items[n].line for n in taking]
    limits = band_limits(judge, base, lines, step_g=slip.step_g)
    if limits is None or steps < 0 or not taking:
        return None
    beyond = (abs(start[n] - i.plan_g) for n, i in enumerate(bowl.items) if n not in taking)
    split = closest_split(
        [(bowl.items[n].plan_g - bowl.items[n].held_g) / slip.step_g for n in taking],
        total=steps,
        limits=limits,
        distance=max(beyond, default=0.0) / slip.step_g,
    )
    if split is None:
        return None
    for n, count in zip(taking, split, strict=True):
        start[n] += count * slip.step_g
    card = with_bowl(slip, settled_g(slip), bowl, tuple(start))
    return Draft("hold-in-band", 1.0, card, card, tuple(start))


def follow(slip: Slip, bowl: Bowl) -> Draft | None:
    """As `leave`, and everything outside the bowl grows with the bowl."""
    ends = tuple(_end(item) for item in bowl.items)
    factor = math.fsum(ends) / bowl.plan_g
    masses: Masses = tuple(None if m is None else m * factor for m in plan_g(slip))
    card = with_bowl(slip, masses, bowl, ends, scale=factor)
    if factor < figure("follow-least") or any(
        _is_beyond(slip, n, card[n]) for n in range(len(card))
    ):
        return None
    return Draft("follow", factor, card, card, ends)


def _is_beyond(slip: Slip, line: int, mass_g: float | None) -> bool:
    """Whether a mass cannot be reached from what lies there."""
    if mass_g is None:
        return False
    held = slip.held_g(line)
    return held > mass_g + NOISE_G or (line in slip.closed and held < mass_g - NOISE_G)


def second(slip: Slip, bowl: Bowl) -> Draft | Declined:
    """The surplus blend as a second, small cake: everything beside the blend comes on top."""
    first = jar(slip, bowl)
    if isinstance(first, Declined):
        return Declined("second", first.why)
    part = first.jar_factor
    if not figure("second-least") <= part <= figure("second-most"):
        return Declined("second", f"the surplus is {part:.2f} of a cake")
    masses: Masses = tuple(None if m is None else m * (1 + part) for m in plan_g(slip))
    beyond = [n for n in range(len(masses)) if _is_beyond(slip, n, masses[n])]
    if beyond:
        return Declined("second", f"{slip.lines[beyond[0]].name} does not come out at that size")
    small: Masses = tuple(None if m is None else m * part for m in plan_g(slip))
    return Draft("second", part, card_g=small, end_g=masses)
