"""Whether any blend keeps some of the limits: whole steps, by integer programming."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor, inf

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, milp

from krume.design.blending.limits import SLACK, ends, keeps, weights_of
from krume.design.blending.task import BlendTask, ClashingLimit

# A blend of another total is looked for up to so many times the total, and so many steps more.
_TIMES, _MORE = 20, 1000
MEANS = ("share", "property", "price")


@dataclass(frozen=True, slots=True)
class Pull:
    """What is wanted of a blend: the least of its steps, each times a weight."""

    steps: NDArray[np.float64]
    parts: float = 0.0


def blend_within(
    task: BlendTask,
    held: Sequence[ClashingLimit],
    *,
    pull: Pull | None = None,
    total_steps: tuple[int, int] | None = None,
) -> tuple[float, ...] | None:
    """The masses of a blend that keeps these limits, if there is one; `pull` chooses among them."""
    count = len(task.names)
    least, most = total_steps or _total_steps(task, held)
    if least > most:
        return None
    high = np.minimum(_stocks(task, held), most)
    if high.min() < 0:
        return None
    if pull is None:
        pull = Pull(np.zeros(count))
    found = milp(
        np.r_[pull.steps, np.full(count, pull.parts)],
        constraints=_rows(task, held, high, (least, most)),
        integrality=np.ones(2 * count, dtype=np.int64),
        bounds=Bounds(np.zeros(2 * count), np.r_[high, np.ones(count)]),
        options={"mip_rel_gap": 0.0},
    )
    if found.x is None:
        return None
    masses_g = tuple(float(steps * task.step_g) for steps in np.rint(found.x[:count]))
    return masses_g if all(keeps(task, limit, masses_g) for limit in held) else None


def _total_steps(task: BlendTask, held: Sequence[ClashingLimit]) -> tuple[int, int]:
    steps = task.total_g / task.step_g
    if any(limit.kind == "total" for limit in held):
        return ceil(steps - SLACK * steps), floor(steps + SLACK * steps)
    return 1, most_steps(task)


def most_steps(task: BlendTask) -> int:
    """The largest total that is looked at, in steps."""
    return _TIMES * ceil(task.total_g / task.step_g) + _MORE


def _stocks(task: BlendTask, held: Sequence[ClashingLimit]) -> NDArray[np.float64]:
    high = np.full(len(task.names), inf)
    for limit in held:
        if limit.kind == "stock" and limit.place is not None:
            high[limit.place] = floor(limit.value / task.step_g + SLACK)
    return high


def _rows(
    task: BlendTask,
    held: Sequence[ClashingLimit],
    high: NDArray[np.float64],
    total_steps: tuple[int, int],
) -> list[LinearConstraint]:
    """Columns: the steps of each flour, then whether it is used."""
    count = len(task.names)
    eye, ones, zeros = np.eye(count), np.ones(count), np.zeros(count)
    least = max([1, *(_part_steps(task, limit) for limit in held if limit.kind == "least-part")])
    rows = [
        LinearConstraint(np.r_[ones, zeros], *total_steps),
        LinearConstraint(np.c_[eye, -np.diag(high)], -inf, 0),
        LinearConstraint(np.c_[eye, -least * eye], 0, inf),
    ]
    for limit in held:
        if limit.kind == "parts":
            rows.append(LinearConstraint(np.r_[zeros, ones], -inf, limit.value))
        elif limit.kind in MEANS:
            rows.append(_mean_row(task, limit, total_steps))
    return rows


def _part_steps(task: BlendTask, limit: ClashingLimit) -> int:
    return ceil(limit.value / task.step_g - SLACK)


def _mean_row(
    task: BlendTask, limit: ClashingLimit, total_steps: tuple[int, int]
) -> LinearConstraint:
    """A limit on a mean: as a sum where the total is fixed, else each flour's part above it."""
    weights = np.array(weights_of(task, limit), dtype=float)
    low, high = ends(limit)
    least, most = total_steps
    if least == most:
        slack = SLACK * max(1.0, abs(limit.value)) * most
        return LinearConstraint(
            np.r_[weights, 0 * weights], low * most - slack, high * most + slack
        )
    above = np.r_[weights - limit.value, 0 * weights]
    return LinearConstraint(above, *((0, inf) if limit.side == "low" else (-inf, 0)))
