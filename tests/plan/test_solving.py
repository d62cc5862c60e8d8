"""Placing with gaps, closed hours, places held and choices, each against the plain checker."""

from hypothesis import given, settings
from hypothesis import strategies as st

from krume.plan import Aim, Closed, Gap, Hold, Job, Project, faults, place

HANDS = (("hands", 1),)


def early(project: Project) -> Aim:
    return Aim(early=(tuple(job.name for job in project.jobs),))


def test_a_night_is_kept_free() -> None:
    project = Project(
        (Job("a", 3, HANDS), Job("b", 3, HANDS)),
        (("hands", 1),),
        closed=(Closed("hands", 4, 10, 1),),
        horizon=20,
    )
    found = place(project, early(project))
    assert found is not None and found.proven
    assert sorted(found.starts.values()) == [0, 10]
    assert found.bound == 13


def test_a_longest_wait_pulls_the_first_job_after_it() -> None:
    project = Project(
        (Job("foam", 2), Job("load", 1, (("oven", 1),)), Job("other", 9, (("oven", 1),))),
        (("oven", 1),),
        (Gap("foam", "load", 0, 1), Gap("other", "load")),
        horizon=20,
    )
    found = place(project, early(project))
    assert found is not None
    assert faults(project, found.starts) == ()
    assert found.starts["foam"] >= 6


def test_a_place_is_held_until_the_end_of_the_last_job() -> None:
    jobs = tuple(Job(f"{step}{n}", 2) for n in (1, 2) for step in ("in", "out"))
    holds = tuple(Hold("fridge", 1, f"in{n}", f"out{n}", from_end=True) for n in (1, 2))
    gaps = tuple(Gap(f"in{n}", f"out{n}", 5) for n in (1, 2))
    project = Project(jobs, (("fridge", 1),), gaps, holds, horizon=40)
    found = place(project, early(project))
    assert found is not None
    assert faults(project, found.starts) == ()
    assert found.bound == 16


def test_of_a_choice_the_shorter_one_is_taken() -> None:
    jobs = (Job("slow", 9, either="bake"), Job("fast", 4, either="bake"), Job("end", 1))
    project = Project(jobs, gaps=(Gap("slow", "end"), Gap("fast", "end")), horizon=20)
    found = place(project, early(project))
    assert found is not None
    assert set(found.starts) == {"fast", "end"}
    assert found.starts["end"] == 4


def test_what_cannot_be_placed_is_none() -> None:
    late = Project((Job("a", 5, deadline=4),), horizon=10)
    assert place(late, Aim()) is None
    full = Project((Job("a", 5, HANDS), Job("b", 6, HANDS)), (("hands", 1),), horizon=10)
    assert place(full, Aim()) is None


@settings(max_examples=20)
@given(
    st.lists(st.tuples(st.integers(1, 5), st.integers(0, 6)), min_size=1, max_size=5),
    st.integers(0, 4),
)
def test_whatever_is_placed_holds(jobs: list[tuple[int, int]], most: int) -> None:
    made = tuple(Job(str(n), length, HANDS, release=r) for n, (length, r) in enumerate(jobs))
    gaps = tuple(Gap(str(n), str(n + 1), 0, most) for n in range(len(made) - 1))
    project = Project(made, (("hands", 1),), gaps, closed=(Closed("hands", 7, 9, 1),), horizon=60)
    found = place(project, early(project))
    assert found is not None
    assert faults(project, found.starts) == ()
    again = place(project, early(project))
    assert again == found
