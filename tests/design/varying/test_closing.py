"""The exact search against brute force, its bounds, and what it refuses."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import InputError
from krume.design.varying.closing import Closed, Mover, close

STEP_G = 0.5
MOST_G = 4.0
off = st.floats(-6, 6).map(lambda x: round(x, 2))
start = st.floats(0, 4).map(lambda x: round(x, 2))
cross = st.floats(-0.3, 0.3).map(lambda x: round(x, 2))
weight = st.floats(0.5, 40).map(lambda x: round(x, 1))


def score(
    masses: tuple[float, ...], off_g: list[float], weights_g: list[float], movers: list[Mover]
) -> tuple[float, float, float]:
    """Worst shift answered for, squares of all, grams moved: written anew for the tests."""
    left = [
        gap
        + sum(
            (m - mover.start_g) * mover.per_g[at] for m, mover in zip(masses, movers, strict=True)
        )
        for at, gap in enumerate(off_g)
    ]
    weighed = [abs(gap) / w for gap, w in zip(left, weights_g, strict=True)]
    worst = max(weighed[mover.answers] for mover in movers)
    squares = sum(each**2 for each in weighed)
    moved = sum(abs(m - mover.start_g) for m, mover in zip(masses, movers, strict=True))
    return round(worst, 9), round(squares, 9), round(moved, 9)


def brute(
    off_g: list[float], weights_g: list[float], movers: list[Mover]
) -> tuple[float, float, float]:
    """Best score over every point of the grid."""
    steps = [n * STEP_G for n in range(int(MOST_G / STEP_G) + 1)]
    points = product(steps, repeat=len(movers))
    return min(score(point, off_g, weights_g, movers) for point in points)


@given(
    st.lists(off, min_size=4, max_size=4),
    st.lists(weight, min_size=4, max_size=4),
    st.lists(start, min_size=3, max_size=3),
    st.lists(cross, min_size=12, max_size=12),
    st.integers(1, 3),
)
def test_no_point_of_the_grid_is_better_than_the_one_found(
    off_g: list[float],
    weights_g: list[float],
    starts: list[float],
    crossed: list[float],
    count: int,
) -> None:
    movers = []
    for at in range(count):
        per_g = [*crossed[4 * at : 4 * at + 4]]
        per_g[at] = 0.9
        movers.append(Mover(f"m{at}", tuple(per_g), at, starts[at], MOST_G))
    found = close(off_g, weights_g, movers, STEP_G)
    assert score(found.masses_g, off_g, weights_g, movers) == brute(off_g, weights_g, movers)
    assert all(0 <= mass <= MOST_G for mass in found.masses_g)
    assert found.worst == score(found.masses_g, off_g, weights_g, movers)[0]


def test_what_is_missing_beyond_a_bound_takes_the_bound() -> None:
    mover = Mover("oil", (1.0, 0.0), 0, 0.0, 2.0)
    found = close([-5.0, 0.0], [10.0, 10.0], [mover], 0.5)
    assert found.masses_g == (2.0,)
    assert found.remains_g == (-3.0, 0.0)


def test_too_much_takes_no_line_below_nothing() -> None:
    mover = Mover("oil", (1.0, 0.0), 0, 1.0, 10.0)
    assert close([5.0, 0.0], [10.0, 10.0], [mover], 0.1).masses_g == (0.0,)


def test_without_a_line_that_may_move_all_of_it_stays() -> None:
    assert close([1.5, -2.0], [1.0, 1.0], [], 0.1) == Closed((), (1.5, -2.0), 0.0)


def test_two_lines_that_answer_for_one_thing_are_refused() -> None:
    twins = [Mover(name, (1.0, 0.0), 0, 0.0, 9.0) for name in ("butter", "oil")]
    with pytest.raises(InputError, match="butter, oil"):
        close([-1.0, 0.0], [1.0, 1.0], twins, 0.1)


@pytest.mark.parametrize(("weights_g", "step_g"), [([1.0, 0.0], 0.1), ([1.0, 1.0], 0.0)])
def test_a_weight_or_a_step_of_nothing_is_refused(weights_g: list[float], step_g: float) -> None:
    with pytest.raises(InputError, match="above 0"):
        close([1.0, 1.0], weights_g, [], step_g)
