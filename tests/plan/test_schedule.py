"""The general scheduler: published optima, every small case by trying all, and refusals."""

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.base import Infeasible, InputError
from krume.plan import Schedule, solve
from tests.agreement import agrees
from tests.plan.public import Instance, project, shop

COVERS = ("serial",)


def solved(found: Instance) -> Schedule:
    answer = solve(found.durations, found.demands, found.capacities, found.precedence)
    assert isinstance(answer, Schedule)
    return answer


@pytest.mark.source("psplib", "j301_1, R40")
def test_a_public_project_ends_at_its_published_optimum() -> None:
    answer = solved(project("j301_1"))
    assert agrees(answer.makespan, "43")
    assert answer.proven and answer.bound == answer.makespan


@pytest.mark.source("muth-thompson-1963", "six jobs on six machines")
def test_six_jobs_on_six_machines_end_at_their_published_optimum() -> None:
    answer = solved(shop("ft06"))
    assert agrees(answer.makespan, "55")
    assert answer.proven


@st.composite
def small(draw: st.DrawFn) -> Instance:
    count = draw(st.integers(1, 4))
    capacities = draw(st.lists(st.integers(1, 3), min_size=1, max_size=2))
    durations = draw(st.lists(st.integers(0, 3), min_size=count, max_size=count))
    demands = [[draw(st.integers(0, most)) for most in capacities] for _ in range(count)]
    pairs = list(itertools.combinations(range(count), 2))
    chosen = draw(st.lists(st.sampled_from(pairs), unique=True, max_size=3)) if pairs else []
    return Instance(durations, demands, capacities, chosen)


def holds(found: Instance, starts: tuple[int, ...]) -> bool:
    """Whether starts keep the order and every limit in every unit of time; shares no code."""
    ends = [start + length for start, length in zip(starts, found.durations, strict=True)]
    if any(starts[after] < ends[before] for before, after in found.precedence):
        return False
    return all(
        sum(d[k] for d, s, e in zip(found.demands, starts, ends, strict=True) if s <= t < e) <= most
        for k, most in enumerate(found.capacities)
        for t in range(max(ends, default=0))
    )


def best_by_trying_all(found: Instance) -> int:
    most = sum(found.durations)
    ranges = [range(most - length + 1) for length in found.durations]
    return min(
        max(s + d for s, d in zip(starts, found.durations, strict=True))
        for starts in itertools.product(*ranges)
        if holds(found, starts)
    )


@settings(max_examples=25)
@given(small())
def test_no_schedule_of_a_small_project_is_shorter(found: Instance) -> None:
    answer = solved(found)
    assert holds(found, answer.start)
    assert answer.makespan == best_by_trying_all(found)
    assert answer.proven


@settings(max_examples=10)
@given(small())
def test_more_of_a_limit_never_makes_a_schedule_longer(found: Instance) -> None:
    wider = Instance(
        found.durations, found.demands, [n + 1 for n in found.capacities], found.precedence
    )
    assert solved(wider).makespan <= solved(found).makespan


def test_equal_input_gives_equal_output() -> None:
    assert solved(project("j301_1")) == solved(project("j301_1"))


def test_a_schedule_is_given_when_there_is_no_time_to_prove_it() -> None:
    found = project("j301_1")
    answer = solve(
        found.durations, found.demands, found.capacities, found.precedence, time_limit_s=1e-6
    )
    assert isinstance(answer, Schedule)
    assert holds(found, answer.start)
    assert answer.bound <= answer.makespan


def test_a_demand_above_its_limit_is_named() -> None:
    answer = solve([1, 1], [[1], [3]], [2], [])
    assert isinstance(answer, Infeasible)
    (clash,) = answer.clashes
    assert (clash.name, clash.needs, clash.has) == ("limit 0", "3", "2")


def test_tasks_that_wait_for_one_another_are_named() -> None:
    answer = solve([1, 1, 1], [[], [], []], [], [(0, 1), (1, 2), (2, 1)])
    assert isinstance(answer, Infeasible)
    assert answer.clashes[0].has == "1, 2"


@pytest.mark.parametrize(
    ("durations", "demands", "capacities", "precedence", "word"),
    [
        ([1], [], [], [], "demands"),
        ([1], [[1, 2]], [1], [], "demands"),
        ([-1], [[1]], [1], [], "durations"),
        ([1.5], [[1]], [1], [], "durations"),
        ([1], [[1]], [1], [(0, 1)], "precedence"),
    ],
)
def test_input_that_is_no_project_is_refused(
    durations: list[int],
    demands: list[list[int]],
    capacities: list[int],
    precedence: list[tuple[int, int]],
    word: str,
) -> None:
    with pytest.raises(InputError) as error:
        solve(durations, demands, capacities, precedence)
    assert error.value.field == word


def test_nothing_to_do_ends_at_once() -> None:
    assert solve([], [], [2], []) == Schedule((), 0, proven=True, bound=0)
