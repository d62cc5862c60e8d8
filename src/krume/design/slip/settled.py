"""Masses of the lines when nothing is done about a slip, and with a bowl put in their place."""

from krume.design.slip.bowl import Bowl
from krume.design.slip.state import Slip

Masses = tuple[float | None, ...]


def plan_g(slip: Slip) -> Masses:
    """Planned masses of the lines."""
    return tuple(line.mass_g for line in slip.lines)


def settled_g(slip: Slip) -> Masses:
    """What each line comes to when what is over stays and the rest goes in as planned."""
    return tuple(_settled_g(slip, n) for n in range(len(slip.lines)))


def _settled_g(slip: Slip, line: int) -> float | None:
    plan = slip.plan_g(line)
    if plan is None:
        return None
    held = slip.held_g(line)
    return held if line in slip.closed else max(held, plan)


def with_bowl(
    slip: Slip, masses_g: Masses, bowl: Bowl, ends_g: tuple[float, ...], *, scale: float = 1.0
) -> Masses:
    """Masses with the items of a bowl at their ends; a line's parts in other bowls stay.

    `scale` is the factor the masses already carry.
    """
    out = list(masses_g)
    inside = {item.line: end for item, end in zip(bowl.items, ends_g, strict=True)}
    planned = {item.line: item.plan_g for item in bowl.items}
    for line, end in inside.items():
        whole, mass = slip.plan_g(line), masses_g[line]
        if whole is None or mass is None:
            continue
        beside = max(0.0, mass - _inside_of(planned[line], mass, whole, scale))
        out[line] = end + beside
    return tuple(out)


def _inside_of(planned_g: float, mass_g: float, whole_g: float, scale: float) -> float:
    """What of a line's mass belongs into the bowl: all of it, or its planned part."""
    if planned_g >= whole_g - 1e-6:
        return mass_g
    return min(planned_g * scale, mass_g)
