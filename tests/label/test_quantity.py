"""Share of a named ingredient over the finished food."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.label import declared_share_pct
from tests.agreement import agrees


@pytest.mark.source("eu-1169-2011", "article 22 and annex VIII: R15")
def test_the_share_goes_by_the_finished_food() -> None:
    assert agrees(declared_share_pct(100.0, total_g=460.0, evaporated_g=60.0), "25.0")
    assert agrees(declared_share_pct(100.0, total_g=460.0), "21.7")


@given(part=st.floats(0.0, 400.0), lost=st.floats(0.0, 300.0))
def test_losing_water_raises_the_share(part: float, lost: float) -> None:
    raw = declared_share_pct(part, total_g=400.0)
    baked = declared_share_pct(part, total_g=400.0, evaporated_g=lost)
    assert baked >= raw


@pytest.mark.parametrize(
    ("part", "lost"), [(500.0, 0.0), (-1.0, 0.0), (100.0, 400.0), (100.0, -1.0)]
)
def test_masses_that_cannot_be_are_refused(part: float, lost: float) -> None:
    with pytest.raises(OutOfRangeError):
        declared_share_pct(part, total_g=400.0, evaporated_g=lost)
