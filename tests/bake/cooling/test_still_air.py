"""Films of still air, radiation, and water that leaves a face."""

import numpy as np
import pytest

from krume.bake.cooling.rows import cooling_value
from krume.bake.cooling.still_air import (
    Film,
    crust_resistance_s_m,
    film_resistance_s_m,
    radiation,
    still_film,
    vapour_from,
)
from tests.agreement import agrees


def _at(film: Film, difference_k: float) -> float:
    return float(film.at(np.array(difference_k)))


def test_a_film_grows_with_the_fourth_root_of_the_difference() -> None:
    film = still_film("up", 0.05)
    assert _at(film, 64.0) == pytest.approx(2 * _at(film, 4.0), rel=1e-12)


def test_a_face_looking_down_has_half_the_film_of_one_looking_up() -> None:
    assert _at(still_film("down", 0.05), 40) == pytest.approx(_at(still_film("up", 0.05), 40) / 2)


def test_an_upright_wall_keeps_a_film_without_any_difference() -> None:
    wall = still_film("wall", 0.05)
    assert _at(wall, 0.0) > 0
    assert _at(wall, 40.0) == pytest.approx(7.3, abs=0.3)


@pytest.mark.source("churchill-chu-1975", "laminar form, its constant 0.670 at Pr 0.705")
def test_the_wall_has_the_slope_of_the_correlation() -> None:
    slope = 0.670 / (1 + (0.492 / 0.705) ** (9 / 16)) ** (4 / 9)
    assert agrees(slope, "0.514")
    assert cooling_value("wall-slope") == 0.514


def test_a_longer_plate_has_a_weaker_film() -> None:
    assert _at(still_film("up", 0.1), 40) < _at(still_film("up", 0.05), 40)


def test_radiation_is_the_law_of_the_fourth_power_over_the_difference() -> None:
    hot, cold = np.array(350.0), np.array(294.0)
    exact = 0.9 * 5.670374419e-8 * (350.0**4 - 294.0**4) / (350.0 - 294.0)
    assert float(radiation(0.9, hot, cold)) == pytest.approx(exact, rel=1e-12)


def test_no_water_leaves_into_air_wetter_than_the_face() -> None:
    cold = np.array([[285.0]])
    found = vapour_from(cold, np.array([[200.0]]), 0.9, np.array([[2500.0]]), 101325.0)
    assert float(found.flux[0, 0]) == 0.0
    assert float(found.slope[0, 0]) == 0.0


def test_the_slope_of_the_vapour_is_its_slope() -> None:
    def flux(temp: float) -> float:
        resist = np.array([[400.0]])
        return float(vapour_from(np.array([[temp]]), resist, 0.9, np.array([[1200.0]]),
                                 101325.0).flux[0, 0])  # fmt: skip

    at = vapour_from(np.array([[340.0]]), np.array([[400.0]]), 0.9, np.array([[1200.0]]), 101325.0)
    assert float(at.slope[0, 0]) == pytest.approx((flux(340.2) - flux(339.8)) / 0.4, rel=2e-3)


def test_a_millimetre_of_crust_holds_back_more_than_the_film_does() -> None:
    assert float(crust_resistance_s_m(np.array(1e-3))) > float(film_resistance_s_m(np.array(5.0)))
