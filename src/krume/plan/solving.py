"""Placing jobs by constraint programming: the best end that can be shown, then one fixed answer.

Eight workers race for the best aim and its proof. Which of several equal placings they come upon
is chance, so once the aim is proven a second search, one worker with a fixed seed, looks for a
placing that reaches it: equal input then gives equal output. Where one worker does not get there
within its work, what the race came upon is taken.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from krume.plan.project import Hold, Job, Placed, Project

if TYPE_CHECKING:
    from ortools.sat.python.cp_model import CpModel, CpSolver, IntVar

WORKERS = 8
SEED = 1
"""Settings of the search: no answer depends on them once it is proven."""
SETTLING_WORK = 4.0
"""Work the second search may do, in the solver's own measure, the same on every machine."""


@dataclass(frozen=True, slots=True)
class Aim:
    """What is wished: each group's last end early, and short waits between two jobs.

    An empty aim asks for any placing.
    """

    early: tuple[tuple[str, ...], ...] = ()
    close: tuple[tuple[str, str], ...] = ()


@dataclass(slots=True)
class _Parts:
    """Variables of a model by the job's name."""

    model: "CpModel"
    start: dict[str, "IntVar"] = field(default_factory=dict)
    there: dict[str, "IntVar"] = field(default_factory=dict)
    interval: dict[str, Any] = field(default_factory=dict)


def place(
    project: Project,
    aim: Aim,
    *,
    time_limit_s: float = 10.0,
    hint: Mapping[str, int] | None = None,
) -> Placed | None:
    """Place all jobs; None where it cannot be done, or was not found in the time there is.

    `proven` says that no placing has a better aim; `bound` is what no placing can beat.
    """
    from ortools.sat.python import cp_model

    parts = _model(project)
    goal = _aimed(parts, project, aim)
    for name, minute in (hint or {}).items():
        parts.model.add_hint(parts.start[name], minute)
    solver = _solver()
    solver.parameters.max_time_in_seconds = time_limit_s
    status = solver.solve(parts.model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return None
    proven = status == cp_model.OPTIMAL
    bound = round(solver.best_objective_bound) if goal is not None else 0
    starts = _settled(parts, project, goal, solver) if proven else _starts(parts, project, solver)
    return Placed(starts, proven=proven, bound=bound)


def _solver() -> "CpSolver":
    from ortools.sat.python import cp_model

    solver = cp_model.CpSolver()
    solver.parameters.num_workers = WORKERS
    solver.parameters.random_seed = SEED
    return solver


def _settled(parts: _Parts, project: Project, goal: Any, solver: "CpSolver") -> dict[str, int]:
    """A placing that reaches the proven aim, the same one each time."""
    from ortools.sat.python import cp_model

    if goal is not None:
        best = round(solver.objective_value)
        parts.model.clear_objective()  # type: ignore[no-untyped-call]
        parts.model.add(goal <= best)
    again = _solver()
    again.parameters.num_workers = 1
    again.parameters.max_deterministic_time = SETTLING_WORK
    status = again.solve(parts.model)
    found = again if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else solver
    return _starts(parts, project, found)


def _starts(parts: _Parts, project: Project, solver: "CpSolver") -> dict[str, int]:
    return {
        job.name: int(solver.value(parts.start[job.name]))
        for job in project.jobs
        if job.name not in parts.there or solver.value(parts.there[job.name])
    }


def _model(project: Project) -> _Parts:
    from ortools.sat.python import cp_model

    parts = _Parts(cp_model.CpModel())
    for job in project.jobs:
        _add_job(parts, job, project.horizon)
    for either in dict.fromkeys(job.either for job in project.jobs if job.either):
        chosen = [parts.there[job.name] for job in project.jobs if job.either == either]
        parts.model.add_exactly_one(chosen)
    for gap in project.gaps:
        both = [parts.there[name] for name in (gap.before, gap.after) if name in parts.there]
        end = parts.start[gap.before] + project.job(gap.before).minutes
        after = parts.start[gap.after]
        _when(parts.model.add(after >= end + gap.least), both)
        if gap.most is not None:
            _when(parts.model.add(after <= end + gap.most), both)
    for limit, capacity in project.limits:
        _add_limit(parts, project, limit, capacity)
    return parts


def _when(constraint: Any, both: list["IntVar"]) -> None:
    if both:
        constraint.only_enforce_if(both)


def _add_job(parts: _Parts, job: Job, horizon: int) -> None:
    latest = (horizon if job.deadline is None else min(job.deadline, horizon)) - job.minutes
    # An empty range is no fault of the caller: it makes the whole model infeasible.
    start = parts.model.new_int_var(job.release, max(job.release, latest), f"start {job.name}")
    if latest < job.release:
        parts.model.add_bool_or([])
    parts.start[job.name] = start
    if job.either:
        there = parts.model.new_bool_var(f"there {job.name}")
        parts.there[job.name] = there
        parts.interval[job.name] = parts.model.new_optional_fixed_size_interval_var(
            start, job.minutes, there, job.name
        )
    else:
        parts.interval[job.name] = parts.model.new_fixed_size_interval_var(
            start, job.minutes, job.name
        )


def _add_limit(parts: _Parts, project: Project, limit: str, capacity: int) -> None:
    taking = list(project.taking(limit))
    intervals = [parts.interval[job.name] for job, _ in taking]
    amounts = [amount for _, amount in taking]
    for hold in project.holds:
        if hold.limit == limit:
            intervals.append(_held(parts, project, hold))
            amounts.append(hold.amount)
    for index, one in enumerate(project.closed):
        if one.limit == limit:
            name = f"closed {index}"
            size = one.end - one.start
            intervals.append(parts.model.new_fixed_size_interval_var(one.start, size, name))
            amounts.append(one.amount)
    if not intervals:
        return
    if capacity == 1 and all(amount == 1 for amount in amounts):
        parts.model.add_no_overlap(intervals)
    else:
        parts.model.add_cumulative(intervals, amounts, capacity)


def _held(parts: _Parts, project: Project, hold: Hold) -> Any:
    extra = project.job(hold.begins).minutes if hold.from_end else 0
    start = parts.start[hold.begins] + extra
    end = parts.start[hold.ends] + project.job(hold.ends).minutes
    size = parts.model.new_int_var(0, project.horizon, f"held {hold.begins} to {hold.ends}")
    return parts.model.new_interval_var(start, size, end, f"hold {hold.begins} {hold.ends}")


def _aimed(parts: _Parts, project: Project, aim: Aim) -> Any:
    """The sum that is made small; None where any placing will do."""
    ends = [
        _last_end(parts, project, group, f"end of group {index}")
        for index, group in enumerate(aim.early)
        if group
    ]
    waits = [
        parts.start[after] - parts.start[before] - project.job(before).minutes
        for before, after in aim.close
    ]
    if not ends and not waits:
        return None
    goal = sum(ends) + sum(waits)
    parts.model.minimize(goal)
    return goal


def _last_end(parts: _Parts, project: Project, group: Sequence[str], name: str) -> "IntVar":
    end = parts.model.new_int_var(0, project.horizon, name)
    for job in group:
        there = [parts.there[job]] if job in parts.there else []
        _when(parts.model.add(end >= parts.start[job] + project.job(job).minutes), there)
    return end
