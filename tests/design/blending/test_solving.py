"""The nearest blend: against every blend there is, and against a solver that shares nothing."""

from dataclasses import replace
from math import sqrt
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.base import Infeasible, KrumeError
from krume.design import BlendFit, BlendLimit, BlendTask, next_blends, solve_blend
from krume.design.blending import searching, solving
from krume.design.blending.best import Best
from krume.design.blending.grid import Grid, grid_of
from krume.design.blending.near import near
from krume.design.blending.planes import Planes
from krume.design.blending.relaxing import relaxed
from krume.design.blending.sums import Box
from tests.design.blending.every_blend import holds, plain_best
from tests.design.blending.random_tasks import small_task, studio_task
from tests.design.blending.scip_peer import peer_solve, squared_of

COVERS = ("best", "grid", "meeting", "near", "partial", "searching")
BATCHES, EACH = 20, 11
PROVEN = 1e-6

TWO = BlendTask(
    names=("rice", "starch"),
    composition=((6.0, 1.4, 2.4), (0.0, 0.0, 0.0)),
    properties=("protein", "fat", "fibre"),
    target=(3.0, 0.7, 1.2),
    total_g=10.0,
)


def fitted(task: BlendTask) -> BlendFit:
    """The solver's blend of a task that has one."""
    found = solve_blend(task)
    assert isinstance(found, BlendFit)
    return found


def test_half_and_half_is_found_exactly() -> None:
    found = fitted(TWO)
    assert found.masses_g == (5.0, 5.0)
    assert found.got == TWO.target
    assert (found.distance, found.proven, found.bound) == (0.0, True, 0.0)


@pytest.mark.parametrize("batch", range(BATCHES))
def test_no_blend_of_a_small_task_is_nearer(batch: int) -> None:
    for seed in range(batch * EACH, (batch + 1) * EACH):
        task = small_task(seed)
        plain, found = plain_best(task), solve_blend(task)
        if plain is None:
            assert isinstance(found, Infeasible), seed
            assert found.clashes, seed
            continue
        assert isinstance(found, BlendFit), seed
        assert found.masses_g == plain.masses_g, seed
        assert found.distance == pytest.approx(plain.distance, abs=1e-9), seed
        assert found.proven, seed


def test_small_tasks_come_with_and_without_an_answer() -> None:
    answered = [plain_best(small_task(seed)) is not None for seed in range(40)]
    assert 10 < sum(answered) < 35


@pytest.mark.parametrize("batch", range(5))
def test_the_next_blends_are_the_next_of_other_flours(batch: int) -> None:
    for seed in range(batch * 10, batch * 10 + 10):
        task = small_task(seed)
        best = plain_best(task)
        if best is None:
            continue
        told = [best.used]
        for fit in next_blends(task, fitted(task), 2):
            plain = plain_best(task, tuple(told))
            assert plain is not None, seed
            assert fit.masses_g == plain.masses_g, seed
            told.append(plain.used)
        if len(told) < 3:
            assert plain_best(task, tuple(told)) is None, seed


@pytest.mark.parametrize("batch", range(BATCHES))
def test_another_solver_finds_no_nearer_blend(batch: int) -> None:
    for seed in range(batch * EACH, (batch + 1) * EACH):
        task = studio_task(seed, (5, 6, 7, 8))
        peer, found = peer_solve(task), solve_blend(task)
        if peer.masses_g is None:
            assert isinstance(found, Infeasible), seed
            continue
        assert isinstance(found, BlendFit), seed
        assert holds(task, found.masses_g), seed
        assert squared_of(task, found.masses_g) <= peer.squared + PROVEN, seed
        assert squared_of(task, found.masses_g) >= peer.bound - PROVEN, seed
        assert found.bound**2 <= peer.squared + PROVEN, seed


@pytest.mark.parametrize("seed", [2, 3, 6, 19, 20, 24, 26, 32, 37, 38])
def test_another_solver_finds_no_nearer_blend_of_twelve_flours(seed: int) -> None:
    task = studio_task(seed, (12,))
    peer, found = peer_solve(task, time_limit_s=10.0), solve_blend(task)
    assert peer.masses_g is not None
    assert isinstance(found, BlendFit)
    assert found.proven
    assert holds(task, found.masses_g)
    assert found.distance**2 <= peer.squared + PROVEN
    assert found.bound**2 <= peer.squared + PROVEN
    assert peer.bound <= found.distance**2 + PROVEN


@pytest.mark.parametrize("seed", range(60))
def test_the_long_way_finds_the_nearest_of_small_tasks_too(
    seed: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(searching, "_SMALL", 0)
    monkeypatch.setattr(searching, "_NEAR", (4, 40))
    monkeypatch.setattr(searching, "_LIST", 30)
    monkeypatch.setattr(searching, "_CHUNK", 20)
    task = small_task(seed)
    plain, found = plain_best(task), solve_blend(task)
    if plain is None:
        assert isinstance(found, Infeasible)
        return
    assert isinstance(found, BlendFit)
    assert found.distance**2 == pytest.approx(plain.distance**2, abs=PROVEN)
    assert found.proven


def test_what_is_told_is_that_of_the_masses() -> None:
    task = studio_task(6, (12,))
    found = fitted(task)
    assert sum(found.masses_g) == task.total_g
    assert all(mass == round(mass) for mass in found.masses_g)
    assert found.distance == pytest.approx(sqrt(squared_of(task, found.masses_g)), abs=1e-12)
    assert found.bound <= found.distance
    assert found.proven == (found.distance**2 - found.bound**2 <= PROVEN * (1 + PROVEN))


def test_of_two_alike_flours_the_one_with_the_earlier_name_is_taken() -> None:
    row = (6.0, 1.4, 2.4)
    task = replace(TWO, names=("b", "c", "a"), composition=(row, (0.0, 0.0, 0.0), row))
    assert fitted(task).masses_g == (0.0, 5.0, 5.0)


@given(seed=st.integers(0, 400), data=st.data())
@settings(max_examples=25, deadline=None)
def test_the_order_of_the_flours_changes_nothing(seed: int, data: st.DataObject) -> None:
    task = small_task(seed)
    order = data.draw(st.permutations(range(len(task.names))))
    assert _told(solve_blend(task), task) == _told(solve_blend(_in_order(task, order)), task, order)


def _in_order(task: BlendTask, order: list[int]) -> BlendTask:
    def pick(values: Any) -> Any:
        return None if values is None else tuple(values[at] for at in order)

    return replace(
        task,
        names=pick(task.names),
        composition=pick(task.composition),
        most_g=pick(task.most_g),
        price_per_kg=pick(task.price_per_kg),
        limits=tuple(
            replace(limit, members=tuple(order.index(at) for at in limit.members))
            for limit in task.limits
        ),
        property_limits=tuple(
            replace(held, composition=pick(held.composition)) for held in task.property_limits
        ),
    )


def _told(
    found: BlendFit | Infeasible, task: BlendTask, order: list[int] | None = None
) -> dict[str, float] | None:
    if isinstance(found, Infeasible):
        return None
    names = task.names if order is None else [task.names[at] for at in order]
    return dict(zip(names, found.masses_g, strict=True))


@given(seed=st.integers(0, 400), high_pct=st.integers(20, 100))
@settings(max_examples=25, deadline=None)
def test_a_limit_more_never_brings_a_nearer_blend(seed: int, high_pct: int) -> None:
    task = small_task(seed)
    limit = BlendLimit("first", (0,), None, float(high_pct))
    free, held = solve_blend(task), solve_blend(replace(task, limits=(*task.limits, limit)))
    if isinstance(held, BlendFit):
        assert isinstance(free, BlendFit)
        assert free.distance <= held.distance + 1e-9


@given(seed=st.integers(0, 400), factor=st.sampled_from([2.0, 0.5, 10.0]))
@settings(max_examples=25, deadline=None)
def test_grams_in_another_step_are_the_same_blend(seed: int, factor: float) -> None:
    task = replace(small_task(seed), most_g=None)
    scaled = replace(
        task,
        total_g=task.total_g * factor,
        step_g=task.step_g * factor,
        least_part_g=task.least_part_g * factor,
    )
    found, other = solve_blend(task), solve_blend(scaled)
    if isinstance(found, Infeasible):
        assert isinstance(other, Infeasible)
        return
    assert isinstance(other, BlendFit)
    assert other.masses_g == tuple(mass * factor for mass in found.masses_g)


def test_a_little_work_leaves_a_blend_within_every_limit_and_an_honest_bound() -> None:
    task = studio_task(24, (12,))
    hurried, full = solve_blend(task, time_limit_s=0.0), fitted(task)
    assert isinstance(hurried, BlendFit)
    assert holds(task, hurried.masses_g)
    assert hurried.bound <= full.distance <= hurried.distance
    assert hurried.nodes < full.nodes


def test_a_blend_that_breaks_a_limit_is_never_told(monkeypatch: pytest.MonkeyPatch) -> None:
    # A search gone wrong: the limit is lost on the way to the grid.
    held = replace(TWO, limits=(BlendLimit("rice", (0,), None, 20.0),))
    monkeypatch.setattr(solving, "grid_of", lambda _: grid_of(TWO))
    with pytest.raises(KrumeError, match="limit on rice"):
        solve_blend(held)


def test_equal_tasks_have_equal_answers() -> None:
    task = studio_task(10, (12,))
    assert solve_blend(task) == solve_blend(task)


def test_a_total_between_two_steps_is_named() -> None:
    found = solve_blend(replace(TWO, total_g=10.5))
    assert isinstance(found, Infeasible)
    assert [clash.name for clash in found.clashes] == ["total"]


def test_no_flour_in_common_leaves_no_next_blend() -> None:
    only = replace(TWO, names=("rice",), composition=TWO.composition[:1])
    assert next_blends(only, fitted(only), 3) == ()


def _narrowing(task: BlendTask, work: searching.Work) -> tuple[Box, Box | None]:
    """The box of a task before and after what its planes forbid, beside a good blend."""
    grid = grid_of(task)
    box = Box(grid.low, grid.high)
    fractions = relaxed(grid, grid.low, grid.high)
    assert fractions is not None
    best = Best(grid)
    found = near(grid, fractions, grid.low, grid.high)
    if found is not None:
        best.offer(found)
    planes = Planes(grid, fractions, box)
    return box, searching.narrowed(grid, planes, best, box, work)


@pytest.mark.parametrize("seed", range(9))
def test_a_narrower_box_keeps_the_nearest_blend(seed: int) -> None:
    task = studio_task(seed, (6, 7))
    before, after = _narrowing(task, searching.Work(1e9))
    found = solve_blend(task)
    if after is None or not isinstance(found, BlendFit):
        return
    grid = grid_of(task)
    x = [round(found.masses_g[at] / task.step_g) for at in grid.order]
    assert all(
        low <= steps <= high for low, steps, high in zip(after.low, x, after.high, strict=True)
    )
    assert all(before.low <= after.low)
    assert all(after.high <= before.high)


def test_without_work_a_box_stays_as_it_is() -> None:
    narrower = 0
    for seed in range(9):
        before, after = _narrowing(studio_task(seed, (6, 7)), searching.Work(0.0))
        assert after is not None
        assert after.low.tolist() == before.low.tolist()
        assert after.high.tolist() == before.high.tolist()
        _, with_work = _narrowing(studio_task(seed, (6, 7)), searching.Work(1e9))
        narrower += with_work is not None and with_work.high.tolist() != before.high.tolist()
    assert narrower > 0


def test_looking_through_tables_is_counted_as_work() -> None:
    work = searching.Work(1e9)
    _narrowing(replace(studio_task(0, (6, 7)), step_g=0.05), work)
    coarse = searching.Work(1e9)
    _narrowing(studio_task(0, (6, 7)), coarse)
    assert work.left < coarse.left < 1e9


def test_all_blends_beside_the_nearest_share_one_limit(monkeypatch: pytest.MonkeyPatch) -> None:
    given: list[float] = []

    def hurried(grid: Grid, best: Best, work: searching.Work) -> tuple[float, int]:
        given.append(work.left)
        work.left = 0.0
        return whole(grid, best, searching.Work(1e6))

    whole = solving._nearest  # noqa: SLF001 - the search itself, only with less work
    task = studio_task(3, (7,))
    best = fitted(task)
    monkeypatch.setattr(solving, "_nearest", hurried)
    assert len(next_blends(task, best, 3)) == 3
    assert given == pytest.approx([given[0]] * 3)
