"""Energy and salt: printed values, and each unit from the grams."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.label import atwater_kcal, eu_energy, salt_g
from tests.agreement import agrees

GRAMS = st.floats(0.0, 100.0)


@pytest.mark.source("eu-1169-2011", "annex XIV: R08, R09")
def test_eu_energy_is_the_printed_one() -> None:
    cake = eu_energy({"fat": 18.0, "carbohydrate": 45.0, "fibre": 2.0, "protein": 6.0})
    assert agrees(cake.energy_kj, "1549") and agrees(cake.energy_kcal, "370")
    fat = eu_energy({"fat": 100.0})
    assert agrees(fat.energy_kj, "3700") and agrees(fat.energy_kcal, "900")


@pytest.mark.source("eu-1169-2011", "annex I no. 11: R10")
def test_salt_is_the_printed_one() -> None:
    assert agrees(salt_g(250.0), "0.63")


@pytest.mark.source("usda-sr28", "items 01123 to 01125: R07, R42")
@pytest.mark.parametrize(
    ("grams", "factors", "specific", "general"),
    [
        ((12.56, 9.51, 0.72), (4.36, 9.02, 3.68), "143.2", "138.7"),
        ((10.90, 0.17, 0.73), (4.36, 9.02, 3.68), "51.7", "48.1"),
        ((15.86, 26.54, 3.59), (4.36, 9.02, 3.68), "321.8", "316.7"),
    ],
)
def test_egg_energy_is_the_printed_one(
    grams: tuple[float, float, float],
    factors: tuple[float, float, float],
    specific: str,
    general: str,
) -> None:
    assert agrees(atwater_kcal(*grams, factors_kcal_g=factors), specific)
    assert agrees(atwater_kcal(*grams), general)


@given(fat=GRAMS, carbohydrate=GRAMS, share=st.floats(0.0, 1.0))
def test_polyols_count_less_than_the_carbohydrate_they_belong_to(
    fat: float, carbohydrate: float, share: float
) -> None:
    plain = eu_energy({"fat": fat, "carbohydrate": carbohydrate})
    with_polyols = eu_energy(
        {"fat": fat, "carbohydrate": carbohydrate, "polyols": share * carbohydrate}
    )
    assert with_polyols.energy_kj == pytest.approx(plain.energy_kj - 7 * share * carbohydrate)
    assert with_polyols.energy_kcal == pytest.approx(plain.energy_kcal - 1.6 * share * carbohydrate)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="polyols"):
        eu_energy({"carbohydrate": 5.0, "polyols": 6.0})
    with pytest.raises(OutOfRangeError):
        eu_energy({"fat": -1.0})
    with pytest.raises(OutOfRangeError):
        salt_g(-1.0)
    with pytest.raises(OutOfRangeError):
        atwater_kcal(-1.0, 0.0, 0.0)
