"""Mould-free days: printed values, and refusal outside the lines."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.keep import mould_free_days
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R27, R28")
@pytest.mark.parametrize(
    ("erh", "temp", "printed"), [(80.0, 21.0, "26.9"), (74.0, 21.0, "82.4"), (80.0, 27.0, "17.5")]
)
def test_days_are_the_printed_ones(erh: float, temp: float, printed: str) -> None:
    assert agrees(mould_free_days(erh, temp_c=temp), printed)


@given(erh=st.floats(74.0, 89.0), damper=st.floats(0.1, 1.0))
def test_damper_and_warmer_cakes_mould_sooner(erh: float, damper: float) -> None:
    assert mould_free_days(erh + damper, temp_c=21.0) < mould_free_days(erh, temp_c=21.0)
    assert mould_free_days(erh, temp_c=27.0) < mould_free_days(erh, temp_c=21.0)


@pytest.mark.parametrize(("erh", "temp"), [(73.9, 21.0), (90.1, 21.0), (80.0, 25.0)])
def test_outside_the_lines_it_refuses(erh: float, temp: float) -> None:
    with pytest.raises(OutOfRangeError):
        mould_free_days(erh, temp_c=temp)
