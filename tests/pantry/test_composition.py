"""Composition: unknown stays unknown, and the two meanings of carbohydrate are never mixed."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import DataError
from krume.pantry import QUANTITIES, Composition

grams = st.floats(0, 40)
basis = st.sampled_from(["by_difference", "available"])


@given(grams, grams, basis)
def test_net_and_total_carbohydrate_are_one_fibre_apart(
    carbohydrate: float, fibre: float, carbohydrate_basis: str
) -> None:
    made = Composition(
        carbohydrate_g=carbohydrate + fibre, fibre_g=fibre, carbohydrate_basis=carbohydrate_basis
    )
    net, total = made.carbohydrate_net_g, made.carbohydrate_total_g
    assert net is not None
    assert total is not None
    assert total - net == pytest.approx(fibre, abs=1e-9)


def test_carbohydrate_without_its_fibre_is_unknown_when_fibre_is() -> None:
    made = Composition(carbohydrate_g=80.0, carbohydrate_basis="by_difference")
    assert made.carbohydrate_net_g is None
    assert made.carbohydrate_total_g == 80.0


def test_available_carbohydrate_gives_no_total_when_fibre_is_unknown() -> None:
    made = Composition(carbohydrate_g=80.0, carbohydrate_basis="available")
    assert made.carbohydrate_total_g is None
    assert made.parts_g is None


@given(grams, grams, st.floats(0, 10), st.floats(0, 10))
def test_the_parts_of_a_whole_add_up_on_either_basis(
    water: float, carbohydrate: float, fibre: float, ash: float
) -> None:
    known: dict[str, Any] = {
        "water_g": water,
        "protein_g": 1.0,
        "fat_g": 2.0,
        "ash_g": ash,
        "fibre_g": fibre,
    }
    inside = Composition(
        **known, carbohydrate_g=carbohydrate + fibre, carbohydrate_basis="by_difference"
    )
    outside = Composition(**known, carbohydrate_g=carbohydrate, carbohydrate_basis="available")
    assert inside.parts_g == pytest.approx(outside.parts_g, abs=1e-9)


@pytest.mark.parametrize("missing", ["water_g", "protein_g", "fat_g", "carbohydrate_g", "ash_g"])
def test_the_sum_of_the_parts_is_unknown_when_one_of_them_is(missing: str) -> None:
    full: dict[str, Any] = dict.fromkeys(
        ("water_g", "protein_g", "fat_g", "carbohydrate_g", "ash_g"), 1.0
    )
    whole = Composition(**full, carbohydrate_basis="by_difference")
    assert whole.parts_g == 5.0
    del full[missing]
    assert Composition(**full, carbohydrate_basis="by_difference").parts_g is None


def test_a_composition_of_nothing_known_is_not_complete() -> None:
    assert not Composition().is_complete
    core: dict[str, Any] = dict.fromkeys(
        ("water_g", "protein_g", "fat_g", "carbohydrate_g", "fibre_g", "ash_g"), 0.0
    )
    assert Composition(**core).is_complete


def test_amounts_are_asked_by_the_name_of_their_field() -> None:
    assert Composition(fat_g=82.9).amount("fat_g") == 82.9
    assert Composition().amount("fat_g") is None
    with pytest.raises(DataError, match="'butterfat' is no quantity"):
        Composition().amount("butterfat")


def test_quantities_are_the_fields_that_hold_an_amount() -> None:
    assert {"water_g", "energy_kcal", "sodium_mg", "vitamin_d_ug"} <= set(QUANTITIES)
    assert "carbohydrate_basis" not in QUANTITIES
