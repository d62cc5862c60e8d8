"""Records that speak against the others are put aside one by one."""

from collections.abc import Sequence

from hypothesis import given
from hypothesis import strategies as st

from krume.learn.own_oven.apart import put_aside


def _from_mean_of_others(values: Sequence[float]):  # type: ignore[no-untyped-def]
    def residuals(left: Sequence[int]) -> list[float]:
        found = []
        for k in left:
            others = [values[j] for j in left if j != k]
            found.append(values[k] - sum(others) / len(others) if others else 0.0)
        return found

    return residuals


def test_one_that_is_far_off_goes_and_the_others_stay() -> None:
    left, odd = put_aside(4, _from_mean_of_others([1.0, 1.2, 0.9, 5.0]), limit=2)
    assert left == (0, 1, 2)
    assert set(odd) == {3}


def test_of_two_that_contradict_one_another_neither_stays() -> None:
    assert put_aside(2, _from_mean_of_others([0.0, 9.0]), limit=2) == ((), {0: -9.0, 1: 9.0})


def test_of_two_that_contradict_one_another_the_sure_one_stays() -> None:
    left, odd = put_aside(2, _from_mean_of_others([0.0, 9.0]), limit=2, sure={1})
    assert (left, odd) == ((1,), {0: -9.0})


def test_the_furthest_goes_first_so_that_it_does_not_drag_others_out() -> None:
    # Held against the far one, the first two would be off by more than 2 themselves.
    left, _ = put_aside(3, _from_mean_of_others([0.0, 0.5, 9.0]), limit=2)
    assert left == (0, 1)


@given(st.lists(st.floats(-20, 20), max_size=8), st.floats(0.5, 10))
def test_what_stays_is_within_the_limit_and_nothing_is_lost(
    values: list[float], limit: float
) -> None:
    residuals = _from_mean_of_others(values)
    left, odd = put_aside(len(values), residuals, limit=limit)
    assert all(abs(r) <= limit for r in residuals(left))
    assert sorted((*left, *odd)) == list(range(len(values)))
