"""Gas of soda and powder: printed volumes and proportion."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.properties import constant, molar_volume_ml, powder_gas_ml, soda_gas_ml
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R34a, R69, R70")
def test_soda_gives_the_printed_volumes() -> None:
    assert agrees(molar_volume_ml(25.0), "24465.4")
    assert agrees(soda_gas_ml(1.0, temp_c=25.0), "291.2")
    assert agrees(soda_gas_ml(1.0, temp_c=25.0, with_acid=False), "145.6")
    assert agrees(soda_gas_ml(1.0, temp_c=100.0), "364.5")


@pytest.mark.source("reference-book", "R34b")
def test_powder_gives_the_printed_volumes() -> None:
    assert agrees(powder_gas_ml(1.0, available_pct=12.0, temp_c=25.0), "66.7")
    assert agrees(powder_gas_ml(1.0, available_pct=10.0, temp_c=25.0), "55.6")


@given(mass=st.floats(0.0, 100.0), temp=st.floats(0.0, 200.0))
def test_soda_is_a_powder_of_its_own_share_of_gas(mass: float, temp: float) -> None:
    share = 100 * constant("molar-carbon-dioxide") / constant("molar-soda")
    assert soda_gas_ml(mass, temp_c=temp) == pytest.approx(
        powder_gas_ml(mass, available_pct=share, temp_c=temp)
    )


@pytest.mark.parametrize("wrong", [-1.0, math.inf, math.nan])
def test_masses_and_shares_that_cannot_be_are_refused(wrong: float) -> None:
    with pytest.raises(OutOfRangeError):
        soda_gas_ml(wrong, temp_c=25.0)
    with pytest.raises(OutOfRangeError):
        powder_gas_ml(1.0, available_pct=wrong, temp_c=25.0)
    with pytest.raises(OutOfRangeError):
        molar_volume_ml(300.0)
