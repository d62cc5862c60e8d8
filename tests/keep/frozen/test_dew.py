"""The dew point: where a cold cake sweats."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.keep.frozen import dew_point_c


@given(st.floats(5.0, 40.0), st.floats(45.0, 99.0))
def test_it_is_below_the_air_and_rises_with_its_water(temp: float, humidity: float) -> None:
    dew = dew_point_c(temp, humidity_pct=humidity) if temp > 15 else None
    if dew is not None:
        assert dew < temp
        assert dew < dew_point_c(temp, humidity_pct=humidity + 0.9)


def test_full_air_sweats_at_its_own_temperature() -> None:
    assert dew_point_c(18.0, humidity_pct=100.0) == pytest.approx(18.0, abs=1e-6)


@pytest.mark.parametrize(("temp", "humidity"), [(21.0, 0.0), (21.0, 101.0), (3.0, 20.0)])
def test_frost_and_air_that_cannot_be_are_refused(temp: float, humidity: float) -> None:
    with pytest.raises(OutOfRangeError):
        dew_point_c(temp, humidity_pct=humidity)
