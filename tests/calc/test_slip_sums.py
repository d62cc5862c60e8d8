"""The quick sum of a slip."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import InputError
from krume.calc import run
from krume.design import rescue
from tests.design.slip.demo import F2_SLIP, slip_of, way


def test_the_worked_slip() -> None:
    found = run("slip-factor", planned="40,20,30,9,6", weighed="40,26,0,0,0")
    assert found == {"factor": 1.3, "total_g": 136.5, "surplus_g": 31.5}


def test_it_is_what_the_jar_of_the_slip_job_comes_to() -> None:
    jar = way(rescue(slip_of("F2", F2_SLIP)), "jar")
    found = run("slip-factor", planned=[40, 20, 30, 9, 6], weighed=[40, 26])
    assert jar.jar is not None
    assert (found["factor"], found["total_g"], found["surplus_g"]) == pytest.approx(
        (jar.factor, jar.total_g, jar.jar.mass_g)
    )


@given(st.lists(st.tuples(st.floats(0.1, 500), st.floats(0, 900)), min_size=1, max_size=8))
def test_at_the_factor_nothing_is_too_much_and_one_line_is_full(
    lines: list[tuple[float, float]],
) -> None:
    planned, weighed = [p for p, _ in lines], [w for _, w in lines]
    factor = run("slip-factor", planned=planned, weighed=weighed)["factor"]
    assert isinstance(factor, float)
    assert all(w <= factor * p * (1 + 1e-9) for p, w in lines)
    assert factor == 1 or any(w == pytest.approx(factor * p) for p, w in lines)


@pytest.mark.parametrize(
    ("planned", "weighed"),
    [("40,0", "1,1"), ("40", "40,1"), ("40", "-1"), ("", "1"), ("40", "nan")],
)
def test_masses_that_are_none_are_refused(planned: str, weighed: str) -> None:
    with pytest.raises(InputError):
        run("slip-factor", planned=planned, weighed=weighed)
