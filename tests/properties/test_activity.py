"""Water activity: printed values, and the bound that real sugars undercut."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.properties import (
    ideal_activity,
    norrish_activity,
    ross_activity,
    solution_activity,
    syrup_activity,
)
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R24, R25")
@pytest.mark.parametrize(
    ("solute", "percent", "printed"),
    [("sucrose", 50.0, "0.9348"), ("sucrose", 60.0, "0.8953"), ("glycerol", 30.0, "0.9163")],
)
def test_one_solute_is_the_printed_one(solute: str, percent: float, printed: str) -> None:
    assert agrees(solution_activity(percent, solute=solute), printed)


@pytest.mark.source("reference-book", "R24b, R26, R95")
def test_mixtures_and_the_ideal_are_the_printed_ones() -> None:
    mixed = norrish_activity({"sucrose": 40.0, "glycerol": 20.0}, water_g=40.0)
    assert agrees(mixed, "0.8325", within="0.0002", why="the book's own tolerance")
    alone = [
        norrish_activity({name: mass}, water_g=40.0)
        for name, mass in (("sucrose", 40.0), ("glycerol", 20.0))
    ]
    assert agrees(alone[0], "0.9348") and agrees(alone[1], "0.9026")
    assert agrees(ross_activity(alone), "0.8437", within="0.0002", why="the book's own tolerance")
    assert agrees(ideal_activity(50.0, solute="sucrose"), "0.9500")


@given(percent=st.floats(0.0, 40.0), solute=st.sampled_from(["sucrose", "glycerol", "xylitol"]))
def test_norrish_undercuts_the_ideal_solution(percent: float, solute: str) -> None:
    real = solution_activity(percent, solute=solute)
    assert real <= ideal_activity(percent, solute=solute) + 1e-12


@given(low=st.floats(0.0, 85.0), step=st.floats(0.5, 5.0), temp=st.floats(10.0, 120.0))
def test_more_sugar_binds_more_water(low: float, step: float, temp: float) -> None:
    assert syrup_activity(low + step, temp_c=temp) < syrup_activity(low, temp_c=temp)


@pytest.mark.parametrize(
    "call",
    [
        lambda: solution_activity(80.0, solute="sucrose"),
        lambda: solution_activity(-1.0, solute="sucrose"),
        lambda: solution_activity(100.0, solute="sucrose"),
        lambda: norrish_activity({"sucrose": 10.0}, water_g=0.0),
        lambda: norrish_activity({"sucrose": -1.0}, water_g=10.0),
        lambda: ross_activity([]),
        lambda: ross_activity([1.2]),
        lambda: syrup_activity(95.0, temp_c=20.0),
    ],
)
def test_outside_its_range_it_refuses(call) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(OutOfRangeError):
        call()
