"""Component properties and the conductivity of a foam: printed values, bounds and limits."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.properties import COMPONENTS, component, food_properties, porous_conductivity_w_mk
from tests.agreement import agrees

BATTER = {"water": 0.40, "protein": 0.06, "fat": 0.10, "carbohydrate": 0.42, "fibre": 0.01,
          "ash": 0.01}  # fmt: skip


@pytest.mark.source("reference-book", "bake model, Choi-Okos check")
def test_a_batter_has_the_printed_properties() -> None:
    found = food_properties(BATTER, temp_c=20.0)
    assert agrees(found.conductivity_w_mk, "0.4013377")
    assert agrees(found.density_kg_m3, "1202.3864")
    assert agrees(found.heat_capacity_j_kgk, "2689.7933")


@pytest.mark.source("reference-book", "bake model, Maxwell-Eucken check")
def test_a_foam_has_the_printed_conductivity() -> None:
    assert agrees(porous_conductivity_w_mk(0.42, gas_w_mk=0.03, pore_fraction=0.65), "0.135700935")


@pytest.mark.parametrize("name", COMPONENTS)
def test_a_pure_component_is_itself(name: str) -> None:
    found = food_properties({name: 1.0}, temp_c=60.0)
    assert found.conductivity_w_mk == pytest.approx(component(name, "conductivity", 60.0))
    assert found.density_kg_m3 == pytest.approx(component(name, "density", 60.0))
    assert found.heat_capacity_j_kgk == pytest.approx(component(name, "heat-capacity", 60.0))


def test_fat_conducts_at_every_temperature_of_an_oven() -> None:
    assert component("fat", "conductivity", 150.0) > 0


@given(solid=st.floats(0.1, 1.0), gas=st.floats(0.01, 0.09), pores=st.floats(0.0, 1.0))
def test_a_foam_lies_between_layers_across_and_along(
    solid: float, gas: float, pores: float
) -> None:
    found = porous_conductivity_w_mk(solid, gas_w_mk=gas, pore_fraction=pores)
    along = (1 - pores) * solid + pores * gas
    across = 1 / ((1 - pores) / solid + pores / gas)
    assert across * (1 - 1e-9) <= found <= along * (1 + 1e-9)


def test_without_pores_it_is_the_batter_and_with_nothing_else_the_gas() -> None:
    assert porous_conductivity_w_mk(0.4, gas_w_mk=0.03, pore_fraction=0.0) == pytest.approx(0.4)
    assert porous_conductivity_w_mk(0.4, gas_w_mk=0.03, pore_fraction=1.0) == pytest.approx(0.03)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="add up to"):
        food_properties({"water": 0.5}, temp_c=20.0)
    with pytest.raises(OutOfRangeError):
        food_properties(BATTER, temp_c=200.0)
    with pytest.raises(OutOfRangeError):
        food_properties(BATTER | {"ash": -0.01}, temp_c=20.0)
    with pytest.raises(OutOfRangeError):
        porous_conductivity_w_mk(0.0, gas_w_mk=0.03, pore_fraction=0.5)
    with pytest.raises(OutOfRangeError):
        porous_conductivity_w_mk(0.4, gas_w_mk=0.03, pore_fraction=1.5)
