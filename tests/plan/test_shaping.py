"""Idle time is drawn out of a placed plan without breaking it."""

from hypothesis import given, settings
from hypothesis import strategies as st

from krume.plan import Gap, Job, Project, faults
from krume.plan.shaping import shaped

HANDS = (("hands", 1),)
PROJECT = Project(
    (Job("a", 2, HANDS), Job("b", 2, HANDS), Job("last", 1, HANDS, deadline=20)),
    (("hands", 1),),
    (Gap("a", "b", 1, 5),),
    horizon=30,
)


def test_work_is_early_and_what_is_late_is_late() -> None:
    starts = {"a": 4, "b": 8, "last": 12}
    assert shaped(PROJECT, starts, late=("last",)) == {"a": 0, "b": 3, "last": 19}


def test_what_hugs_its_follower_is_done_just_before_it() -> None:
    starts = {"a": 4, "b": 8, "last": 12}
    found = shaped(PROJECT, starts, hugging=("a",))
    assert found["b"] - found["a"] - 2 == 1


@settings(max_examples=40)
@given(st.integers(0, 8), st.integers(1, 5), st.integers(0, 9))
def test_a_shaped_plan_still_holds_and_ends_no_later(first: int, wait: int, rest: int) -> None:
    starts = {"a": first, "b": first + 2 + wait, "last": min(19, first + 4 + wait + rest)}
    assert faults(PROJECT, starts) == ()
    found = shaped(PROJECT, starts)
    assert faults(PROJECT, found) == ()
    assert all(found[name] <= start for name, start in starts.items())
