"""`krume.keep.moisture.figures`: rates of the table, and how they change with temperature."""

import pytest

from krume.keep.moisture.figures import moisture_figure, rate
from tests.agreement import agrees

KINDS = ("sponge", "tart", "cream", "jelly", "fat")


@pytest.mark.source("guillard-2003", "abstract")
def test_the_rates_of_sponge_are_the_printed_ends() -> None:
    low, _, high = rate("sponge").at(moisture_figure("diffusion-at-c"))
    assert agrees(low / 1e-10, "0.5")
    assert agrees(high / 1e-10, "7.5")


@pytest.mark.source("guillard-2003", "abstract")
def test_the_energy_of_sponge_is_the_middle_of_the_printed_ones() -> None:
    assert agrees(rate("sponge").energy_kj_mol, "106")
    assert rate("sponge").energy_kj_mol == (84 + 128) / 2


@pytest.mark.source("crc-sucrose-diffusion", "as quoted")
def test_no_watery_layer_is_faster_than_sugar_in_water() -> None:
    for kind in ("cream", "jelly"):
        assert agrees(rate(kind).at(20.0)[2] / 1e-10, "5.2")


@pytest.mark.source("jangam-mujumdar", "table 1.6")
def test_the_fastest_base_is_the_slowest_biscuit_of_the_table() -> None:
    assert agrees(rate("tart").at(20.0)[2] / 1e-10, "8.6")


@pytest.mark.parametrize("kind", KINDS)
def test_rates_run_from_slow_to_fast_and_are_slower_in_the_cold(kind: str) -> None:
    low, best, high = rate(kind).at(20.0)
    cold = rate(kind).at(5.0)
    assert 0 < low < best < high
    assert all(a < b for a, b in zip(cold, (low, best, high), strict=True))


def test_a_kind_that_is_not_there_is_no_zero() -> None:
    with pytest.raises(KeyError):
        rate("glass")
