"""Custard in trays, bowls and cups."""

import math

import numpy as np
import pytest

from krume.bake.cooling.body import Face, Stage, Surroundings, body_of, even_stuff
from krume.bake.cooling.falling import cool_down
from krume.bake.cooling.still_air import still_film
from krume.bake.cooling.vessel import Cold, cold, vessel, vessel_hours, vessels
from krume.bake.grid import Cells, Footprint, grid_of
from krume.base import NotFoundError, OutOfRangeError
from tests.agreement import agrees


def _hours(key: str, *depths: float, **places: float) -> np.ndarray:
    return vessel_hours(
        vessel(key), depths, cold(**places), from_c=57.0, to_c=(21.0, 5.0), count=16
    )


def test_a_deeper_layer_takes_longer_in_both_stages() -> None:
    hours = _hours("tray-fan", 1.0, 2.0, 3.0)
    assert (np.diff(hours[:, :, 0], axis=1) > 0).all()
    assert (hours[1] > hours[0]).all()


def test_two_depths_asked_together_are_the_two_asked_alone() -> None:
    both = _hours("tray-fridge", 1.0, 2.0)
    alone = np.concatenate([_hours("tray-fridge", 1.0), _hours("tray-fridge", 2.0)], axis=1)
    assert both == pytest.approx(alone, rel=0.02)


def test_ice_under_the_tray_and_a_fan_are_faster_than_still_air() -> None:
    still, fan, ice = (_hours(key, 2.0)[:, 0, 0] for key in ("tray-fridge", "tray-fan", "tray-ice"))
    assert (ice < fan).all()
    assert (fan < still).all()


def test_a_stirred_bowl_in_ice_follows_newtons_law() -> None:
    hours = _hours("bowl-ice", 4.0)[0, 0, 0]
    wetted = 1 / 0.04 + 4 / 0.20
    exact = math.log(56 / 20) * 1080 * 3360 / (150 * wetted) / 3600
    assert hours == pytest.approx(exact, rel=1e-9)


def test_a_thin_layer_cools_as_one_lump() -> None:
    """A layer of 4 mm is even inside: Newton's law with the films of both faces brackets it."""
    hours = _hours("tray-fan", 0.4, stand_min=0.0)[0, 0, 0]
    store = 1080 * 3360 * 0.004
    quick, slow = (store * math.log((57 - air) / (21 - air)) / film / 3600
                   for air, film in ((3.0, 2 * 15 + 8), (6.0, 2 * 15)))  # fmt: skip
    assert quick < hours < slow


def test_a_colder_fridge_and_a_colder_pour_are_faster() -> None:
    assert _hours("tray-fridge", 1.5, fridge_c=1.0)[1, 0, 0] < _hours("tray-fridge", 1.5)[1, 0, 0]


def test_a_fridge_as_warm_as_the_goal_never_gets_there() -> None:
    assert np.isinf(_hours("tray-fridge", 1.0, fridge_c=5.0)[1, 0, 0])


@pytest.mark.source("dickerson-read-1973", "abstract: 8 gallons of white sauce, 105 to 57 F")
def test_eight_gallons_of_white_sauce_take_more_than_a_day() -> None:
    """A round as high as wide in a fridge of 4 °C; container and air are not in the abstract."""
    volume, draws = 8 * 3.785411784e-3, np.ones((1, 1))
    across = (4 * volume / math.pi) ** (1 / 3)
    grid = grid_of(Footprint(math.pi * across**2 / 4, across / 2), Cells())
    body = body_of(grid, even_stuff(0.52, 3750.0), mass_kg=np.array([1040 * volume]),
                   height_m=np.array([across]))  # fmt: skip
    around = Surroundings(277.15 * draws, 0 * draws, draws)
    looks = (("up", across / 4, 0.9), ("down", across / 4, 0.3), ("wall", across, 0.3))
    up, down, wall = (Face(still_film(way, length), shine) for way, length, shine in looks)
    start, goal = (105 + 459.67) / 1.8, (57 + 459.67) / 1.8
    course = cool_down(body, np.full(body.cell_mass.shape, start),
                       [Stage(4e5, around, up, down, wall)], goal_k=goal)  # fmt: skip
    hours = float(course.reached_s(goal)[0]) / 3600
    assert agrees(hours, "25", within="8", why="container and fridge are not in the abstract")


def test_every_vessel_has_rising_depths_that_the_model_answers() -> None:
    for each in vessels().values():
        assert list(each.depths_cm) == sorted(set(each.depths_cm))
        assert (each.diameter_cm is None) == (each.kind == "layer")


def test_what_is_not_said_is_the_row_with_more_doubt() -> None:
    assert cold() == Cold(21.0, 3.0, 10.0, 90.0, 1.0)
    assert cold(fridge_c=3.0).fridge_doubt_k == 0.5


@pytest.mark.parametrize(
    ("places", "field"),
    [
        ({"room_c": 60.0}, "room_c"),
        ({"fridge_c": -9.0}, "fridge_c"),
        ({"start_c": 40.0}, "start_c"),
        ({"stand_min": -1.0}, "stand_min"),
    ],
)
def test_a_place_that_cannot_be_is_refused(places: dict[str, float], field: str) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        cold(**places)
    assert refused.value.field == field


@pytest.mark.parametrize("depth", [0.0, -1.0, 80.0])
def test_no_depth_and_an_absurd_one_are_refused(depth: float) -> None:
    with pytest.raises(OutOfRangeError, match="A depth"):
        _hours("tray-fridge", depth)


def test_an_unknown_vessel_is_answered_with_those_known() -> None:
    with pytest.raises(NotFoundError, match="tray-fridge"):
        vessel("thimble")
