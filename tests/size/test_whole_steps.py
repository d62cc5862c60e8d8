"""Whole steps against every vector there is, in exact fractions."""

from collections.abc import Iterator
from fractions import Fraction
from math import prod

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from pyscipopt import Model, quicksum

from krume.size.whole_steps import whole_steps

Worth = tuple[int, int, tuple[int, ...]]


def vectors(total: int, lines: int) -> Iterator[tuple[int, ...]]:
    """All vectors of at least one step a line with that sum."""
    if lines == 1:
        yield (total,)
        return
    for first in range(1, total - lines + 2):
        for rest in vectors(total - first, lines - 1):
            yield (first, *rest)


def worth(sizes: list[int], step: int, counts: tuple[int, ...]) -> Worth:
    """Worst error and squares, both over one common denominator, then more in the earlier line."""
    whole = prod(sizes)
    errors = [(n * step - a) * (whole // a) for a, n in zip(sizes, counts, strict=True)]
    return max(map(abs, errors)), sum(e * e for e in errors), tuple(-n for n in counts)


@given(sizes=st.lists(st.integers(1, 40), min_size=1, max_size=4), step=st.integers(4, 12))
@example(sizes=[54, 54, 100], step=10)
@example(sizes=[11, 11, 11, 11], step=10)
@example(sizes=[25, 25, 5], step=10)
def test_it_is_the_best_of_all_vectors_there_are(sizes: list[int], step: int) -> None:
    total = max(round(Fraction(sum(sizes), step)), len(sizes))
    best = min(vectors(total, len(sizes)), key=lambda counts: worth(sizes, step, counts))
    assert tuple(whole_steps(sizes, step=step)) == best


@pytest.mark.parametrize("factor", [0.7931, 1.0323, 1.6180, 2.7183])
def test_the_worst_of_twelve_lines_is_what_a_general_solver_finds(factor: float) -> None:
    grams = (40, 20, 30, 9, 55, 75, 255, 20, 12, 100, 17, 13)
    sizes = [round(mass * factor * 10**6) for mass in grams]
    found = whole_steps(sizes, step=10**6)
    worst = max(abs(n * 10**6 - a) / a for a, n in zip(sizes, found, strict=True))
    assert worst == pytest.approx(smallest_worst_error([size / 10**6 for size in sizes]), abs=1e-6)


def smallest_worst_error(steps: list[float]) -> float:
    """The same question put to a solver of whole-number programs."""
    model = Model()
    model.hideOutput()
    worst = model.addVar("worst", lb=0.0)
    counts = [model.addVar(f"n{at}", vtype="I", lb=1) for at in range(len(steps))]
    model.addCons(quicksum(counts) == round(sum(steps)))
    for count, size in zip(counts, steps, strict=True):
        model.addCons(count - size <= worst * size)
        model.addCons(size - count <= worst * size)
    model.setObjective(worst)
    model.optimize()
    return float(model.getObjVal())


@given(size=st.integers(1, 40), lines=st.integers(2, 5), step=st.integers(2, 12))
def test_equal_lines_share_the_odd_steps_from_the_first_on(
    size: int, lines: int, step: int
) -> None:
    found = whole_steps([size] * lines, step=step)
    assert found == sorted(found, reverse=True)
    assert found[0] - found[-1] <= 1


@given(sizes=st.lists(st.integers(0, 10**13), min_size=1, max_size=15))
def test_the_sum_is_the_nearest_one(sizes: list[int]) -> None:
    total = round(Fraction(sum(sizes), 10**9))
    lines = sum(size > 0 for size in sizes)
    assert sum(whole_steps(sizes, step=10**9)) == max(total, lines)


def test_the_worst_line_comes_before_the_squares() -> None:
    # One step is lacking. On 5.4 it adds less to the squares, on 10.0 the worst line is better.
    assert whole_steps([54, 54, 100], step=10) == [5, 5, 11]


def test_under_the_limit_of_the_lightest_the_squares_decide() -> None:
    # The light line sets the limit, 29 %, which hinders no other: two steps on two lines are less.
    assert whole_steps([14, 204, 404, 1004], step=10) == [1, 20, 41, 101]


def test_nothing_stays_nothing_and_something_stays_something() -> None:
    assert whole_steps([0, 1, 1, 1], step=10) == [0, 1, 1, 1]


@pytest.mark.parametrize(("total", "nearest"), [(25, 2), (35, 4), (24, 2), (26, 3)])
def test_an_exact_half_of_the_sum_goes_to_the_even_one(total: int, nearest: int) -> None:
    assert whole_steps([total], step=10) == [nearest]
