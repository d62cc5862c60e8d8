"""Slack: how far a job may slip, and not a minute further."""

from hypothesis import given
from hypothesis import strategies as st

from krume.plan import Gap, Job, Project, faults, slack

HANDS = (("hands", 1),)


def test_a_chain_shares_the_room_before_its_deadline() -> None:
    project = Project(
        (Job("a", 2, HANDS), Job("b", 3, HANDS, deadline=10)),
        (("hands", 1),),
        (Gap("a", "b"),),
        horizon=50,
    )
    assert slack(project, {"a": 0, "b": 2}) == {"a": 5, "b": 5}
    assert slack(project, {"a": 0, "b": 5}) == {"a": 5, "b": 2}


def test_a_longest_wait_ties_what_follows_to_what_is_done_before() -> None:
    project = Project(
        (Job("foam", 2), Job("load", 1)), gaps=(Gap("foam", "load", 0, 3),), horizon=100
    )
    assert slack(project, {"foam": 0, "load": 2}) == {"foam": 97, "load": 97}
    held = Project(
        (Job("foam", 2, deadline=2), Job("load", 1)),
        gaps=(Gap("foam", "load", 0, 3),),
        horizon=100,
    )
    assert slack(held, {"foam": 0, "load": 2}) == {"foam": 0, "load": 3}


@given(st.lists(st.integers(1, 6), min_size=1, max_size=6), st.integers(0, 20))
def test_the_last_minute_of_slack_holds_and_one_more_does_not(
    lengths: list[int], spare: int
) -> None:
    deadline = sum(lengths) + spare
    jobs = tuple(
        Job(str(n), length, HANDS, deadline=deadline if n == len(lengths) - 1 else None)
        for n, length in enumerate(lengths)
    )
    gaps = tuple(Gap(str(n), str(n + 1)) for n in range(len(jobs) - 1))
    project = Project(jobs, (("hands", 1),), gaps, horizon=deadline + 50)
    starts = {str(n): sum(lengths[:n]) for n in range(len(lengths))}
    assert set(slack(project, starts).values()) == {spare}
    late = {name: start + spare for name, start in starts.items()}
    assert faults(project, late) == ()
    assert faults(project, {name: start + 1 for name, start in late.items()}) != ()
