"""The dial: printed settings, and the sign of an offset."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.bake import dial
from krume.base import OutOfRangeError
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R99, dial of the checks")
def test_settings_are_the_printed_ones() -> None:
    warm = dial(170.0, offset_k=8.0)
    assert agrees(warm.set_c, "162") and agrees(warm.set_f, "323.6")
    low = dial(157.0, offset_k=-12.0)
    assert agrees(low.set_c, "169") and agrees(low.set_f, "336.2")


@given(want=st.floats(100.0, 250.0), offset=st.floats(-40.0, 40.0))
def test_an_oven_that_reads_low_is_set_higher(want: float, offset: float) -> None:
    found = dial(want, offset_k=offset)
    assert found.set_c + offset == pytest.approx(want)
    assert (found.set_c > want) == (offset < 0) or offset == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("want", "offset"), [(10.0, 0.0), (400.0, 0.0), (170.0, 120.0)])
def test_an_oven_that_cannot_be_is_refused(want: float, offset: float) -> None:
    with pytest.raises(OutOfRangeError):
        dial(want, offset_k=offset)
