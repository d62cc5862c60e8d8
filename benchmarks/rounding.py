"""Rounding to a scale, beside a general solver of whole-number programs on the same question."""

from benchmarks.measure import Row, call_s

# Twelve lines of a sponge, each time a little larger, so that no answer is kept.
LINES = (31.7, 15.9, 23.8, 7.14, 4.76, 43.6, 59.5, 202.3, 15.9, 79.3, 13.2, 10.1)


def rows() -> list[Row]:
    """A formula of twelve lines on a 1 g scale."""
    own_s, peer_s = rounded_s(times=200), solver_s(times=10)
    both = (own_s * 1e3, peer_s * 1e3)
    return [
        Row("12 lines rounded to 1 g", *both, "ms", "SCIP, its worst line only", 0.1),
        Row("the same, time allowed", own_s * 1e3, 0.1, "ms", "what a hot path bears", 1.0),
    ]


def larger(number: int) -> list[float]:
    """The lines of one call."""
    return [mass * (1 + number / 1000) for mass in LINES]


def rounded_s(*, times: int) -> float:
    """Median time of one rounding."""
    from krume.size import round_masses

    return call_s(lambda number: round_masses(larger(number), step_g=1.0), times=times)


def solver_s(*, times: int) -> float:
    """Median time of the smallest worst error by the solver, which leaves the squares out."""
    return call_s(lambda number: solved(larger(number)), times=times)


def solved(exact: list[float]) -> float:
    """The smallest worst relative error of a line over all whole grams with that sum."""
    from pyscipopt import Model, quicksum

    model = Model()
    model.hideOutput()
    worst = model.addVar("worst", lb=0.0)
    counts = [model.addVar(f"n{at}", vtype="I", lb=1) for at in range(len(exact))]
    model.addCons(quicksum(counts) == round(sum(exact)))
    for count, mass in zip(counts, exact, strict=True):
        model.addCons(count - mass <= worst * mass)
        model.addCons(mass - count <= worst * mass)
    model.setObjective(worst)
    model.optimize()
    return float(model.getObjVal())
