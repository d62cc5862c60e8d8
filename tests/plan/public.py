"""Public scheduling instances, as what `solve` takes."""

import csv
from dataclasses import dataclass
from pathlib import Path

FOLDER = Path(__file__).parent / "instances"


@dataclass(frozen=True, slots=True)
class Instance:
    """Durations, demands, capacities and order of one instance."""

    durations: list[int]
    demands: list[list[int]]
    capacities: list[int]
    precedence: list[tuple[int, int]]


def _rows(name: str) -> list[dict[str, str]]:
    with (FOLDER / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def project(name: str) -> Instance:
    """An instance of tasks with successors and four limits."""
    *tasks, last = _rows(f"{name}.csv")
    limits = ("r1", "r2", "r3", "r4")
    return Instance(
        [int(task["duration"]) for task in tasks],
        [[int(task[k]) for k in limits] for task in tasks],
        [int(last[k]) for k in limits],
        [(int(t["task"]) - 1, int(s) - 1) for t in tasks for s in t["successors"].split()],
    )


def shop(name: str) -> Instance:
    """An instance of jobs, each a chain of turns on machines."""
    found = Instance([], [], [], [])
    rows = _rows(f"{name}.csv")
    machines = len(rows[0]["machines"].split())
    found.capacities.extend([1] * machines)
    for row in rows:
        turns = zip(row["machines"].split(), row["minutes"].split(), strict=True)
        for number, (machine, minutes) in enumerate(turns):
            if number:
                found.precedence.append((len(found.durations) - 1, len(found.durations)))
            found.durations.append(int(minutes))
            found.demands.append([int(k == int(machine)) for k in range(machines)])
    return found
