"""Exact heating: printed values of the series, its limits and an independent sum."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.bake import heating_theta
from krume.base import OutOfRangeError
from tests.agreement import agrees


@pytest.mark.source("reference-book", "bake model, series of slab and cylinder")
@pytest.mark.parametrize(
    ("shape", "biot", "fourier", "printed"),
    [
        ("slab", 1.0, 1.0, "0.5338594014"),
        ("slab", 1.0, 0.5, "0.7725263834"),
        ("slab", 5.0, 0.2, "0.8648814290"),
        ("cylinder", 1.0, 1.0, "0.2493797135"),
        ("cylinder", 1.0, 0.5, "0.5485862039"),
        ("cylinder", 5.0, 0.2, "0.6714184083"),
    ],
)
def test_theta_is_the_printed_one(shape: str, biot: float, fourier: float, printed: str) -> None:
    assert agrees(heating_theta(shape, biot=biot, fourier=fourier), printed)


@settings(max_examples=15)
@given(biot=st.floats(0.01, 50.0), fourier=st.floats(0.01, 5.0))
def test_the_centre_only_warms_and_a_cylinder_warms_faster(biot: float, fourier: float) -> None:
    for shape in ("slab", "cylinder"):
        now = heating_theta(shape, biot=biot, fourier=fourier)
        later = heating_theta(shape, biot=biot, fourier=fourier * 1.2)
        assert -1e-12 <= later <= now <= 1 + 1e-12
    slab, cylinder = (heating_theta(s, biot=biot, fourier=fourier) for s in ("slab", "cylinder"))
    assert cylinder <= slab + 1e-12


def test_a_thin_slab_follows_the_lumped_body() -> None:
    biot = 1e-4
    found = heating_theta("slab", biot=biot, fourier=1000.0)
    assert found == pytest.approx(math.exp(-biot * 1000.0), rel=1e-4)


def test_a_held_surface_follows_the_known_series() -> None:
    fourier = 0.3
    known = sum(
        4 / math.pi * (-1) ** n / (2 * n + 1)
        * math.exp(-(((2 * n + 1) * math.pi / 2) ** 2) * fourier)
        for n in range(40)
    )  # fmt: skip
    assert heating_theta("slab", biot=1e4, fourier=fourier) == pytest.approx(known, abs=2e-4)


def test_nothing_happens_without_time_or_without_heat() -> None:
    assert heating_theta("slab", biot=1.0, fourier=0.0) == 1.0
    assert heating_theta("cylinder", biot=0.0, fourier=3.0) == 1.0


def test_early_and_series_join() -> None:
    assert heating_theta("slab", biot=5.0, fourier=0.00501) == pytest.approx(1.0, abs=1e-12)
    assert heating_theta("cylinder", biot=5.0, fourier=0.00501) == pytest.approx(1.0, abs=1e-12)


def test_what_cannot_be_is_refused() -> None:
    for call in (
        {"shape": "sphere"}, {"biot": -1.0}, {"biot": 1e5}, {"fourier": -1.0},
    ):  # fmt: skip
        values = {"shape": "slab", "biot": 1.0, "fourier": 1.0} | call
        with pytest.raises(OutOfRangeError):
            heating_theta(values["shape"], biot=values["biot"], fourier=values["fourier"])  # type: ignore[arg-type]
