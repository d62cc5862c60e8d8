"""The closest split, against every split there is."""

from collections.abc import Iterator, Sequence

from hypothesis import given, settings
from hypothesis import strategies as st

from krume.design.slip.split import Limit, closest_split, shared_out

CLASSES = ((1.0, 0.0), (0.0, 1.0), (0.0, 0.0), (1.0, -0.3))


def _all(total: int, parts: int) -> Iterator[tuple[int, ...]]:
    if parts == 1:
        yield (total,)
        return
    for first in range(total + 1):
        for rest in _all(total - first, parts - 1):
            yield (first, *rest)


def _fits(amounts: Sequence[int], limits: Sequence[Limit]) -> bool:
    return all(
        sum(c * x for c, x in zip(limit.coefficients, amounts, strict=True)) <= limit.most + 1e-9
        for limit in limits
    )


def _cost(amounts: Sequence[int], wanted: Sequence[float], floor: float) -> tuple[float, float]:
    off = [abs(x - w) for x, w in zip(amounts, wanted, strict=True)]
    return round(max(floor, *off), 7), round(sum(x * x for x in off), 6)


@st.composite
def tasks(draw: st.DrawFn) -> tuple[list[float], int, list[Limit], float]:
    """What is wanted of up to four parts, their sum, limits by class, a distance that is there."""
    parts = draw(st.sampled_from((1, 2, 3, 4, 4, 4)))
    wanted = draw(st.lists(st.floats(0, 12), min_size=parts, max_size=parts))
    mixed = st.lists(st.sampled_from(CLASSES), min_size=parts, max_size=parts)
    of = draw(st.one_of(mixed, st.permutations(CLASSES).map(lambda all_: all_[:parts])))
    limits = []
    for at in (0, 1):
        row = tuple(each[at] for each in of)
        limits.append(Limit(row, draw(st.floats(0, 12))))
        limits.append(Limit(tuple(-c for c in row), -draw(st.floats(0, 5))))
    return wanted, draw(st.integers(0, 18)), limits, draw(st.sampled_from((0.0, 2.5, 12.0)))


@settings(max_examples=300)
@given(tasks())
def test_no_other_split_is_closer(task: tuple[list[float], int, list[Limit], float]) -> None:
    wanted, total, limits, floor = task
    found = closest_split(wanted, total=total, limits=limits, distance=floor)
    every = [each for each in _all(total, len(wanted)) if _fits(each, limits)]
    if not every:
        assert found is None
        return
    assert found is not None
    assert sum(found) == total
    assert _fits(found, limits)
    assert _cost(found, wanted, floor) == min(_cost(each, wanted, floor) for each in every)


def test_limits_that_contradict_each_other_have_no_split() -> None:
    both = (Limit((1.0,), 2.0), Limit((-1.0,), -5.0))
    assert closest_split([3.0], total=3, limits=both) is None


def test_more_than_there_is_cannot_be_taken_back() -> None:
    assert closest_split([3.0], total=-1, limits=()) is None
    assert closest_split([], total=0, limits=()) is None


@given(st.lists(st.floats(0, 9), min_size=1, max_size=3), st.integers(0, 15))
def test_sharing_out_costs_least_of_all(wanted: list[float], total: int) -> None:
    boxes = [(0, 20)] * len(wanted)
    found = shared_out(wanted, boxes, range(len(wanted)), total)
    assert sum(found) == total
    costs = (_cost(each, wanted, 0.0)[1] for each in _all(total, len(wanted)))
    assert _cost(found, wanted, 0.0)[1] == min(costs)
