"""Conductivity, density and heat capacity of a gas-free food, and conductivity of a foam."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from krume.base import OutOfRangeError
from krume.evidence import column, load, optional
from krume.properties.constant_table import constant, within

COMPONENTS = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
PROPERTIES = ("conductivity", "density", "heat-capacity")
COMPONENT_COLUMNS = (
    column("component", "one of", *COMPONENTS),
    column("property", "one of", *PROPERTIES),
    column("constant", "number"),
    column("linear", "number"),
    column("square", "number"),
    column("unit", "unit"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class FoodProperties:
    """What heat meets in a gas-free food."""

    conductivity_w_mk: float
    density_kg_m3: float
    heat_capacity_j_kgk: float


@cache
def _polynomials() -> dict[tuple[str, str], tuple[float, float, float]]:
    names = ("constant", "linear", "square")
    rows = load("components.csv", COMPONENT_COLUMNS, ("component", "property"))
    found = {}
    for row in rows:
        a, b, c = (row.number_of(name) for name in names)
        found[row.text("component"), row.text("property")] = (a, b, c)
    return found


def component_polynomial(name: str, quantity: str) -> tuple[float, float, float]:
    """Constant, linear and square coefficient of one pure component [SI, degC]."""
    return _polynomials()[name, quantity]


def component(name: str, quantity: str, temp_c: float) -> float:
    """Conductivity, density or heat capacity of one pure component at a temperature [SI]."""
    a, b, c = component_polynomial(name, quantity)
    return a + b * temp_c + c * temp_c * temp_c


def food_properties(fractions: Mapping[str, float], *, temp_c: float) -> FoodProperties:
    """Conductivity, density and heat capacity of a food without gas, from its composition.

    1 / rho = sum x_i / rho_i · k = sum k_i x_i rho / rho_i · c = sum x_i c_i

    Parameters
    ----------
    fractions : x_i by component (water, protein, fat, carbohydrate, fibre, ash), sum 1
    temp_c : temperature [degC]

    Returns
    -------
    conductivity [W/(m K)], density [kg/m3], heat capacity [J/(kg K)]

    Raises
    ------
    OutOfRangeError : a fraction is outside 0 to 1, their sum misses 1, or the temperature is
        outside -40 to 150 degC

    Valid for
    ---------
    Unfrozen foods without gas. A foam: see `porous_conductivity_w_mk`.

    Source
    ------
    `choi-okos-1986`

    Examples
    --------
    >>> x = dict(water=0.40, protein=0.06, fat=0.10, carbohydrate=0.42, fibre=0.01, ash=0.01)
    >>> round(food_properties(x, temp_c=20.0).conductivity_w_mk, 4)
    0.4013
    """
    low_c, high_c = constant("component-least"), constant("component-most")
    within("temp_c", temp_c, low_c, high_c, "C")
    shares = {name: within(name, fractions.get(name, 0.0), 0.0, 1.0) for name in COMPONENTS}
    _check_sum(sum(shares.values()))
    density = {name: component(name, "density", temp_c) for name in COMPONENTS}
    rho = 1 / sum(x / density[name] for name, x in shares.items())
    return FoodProperties(
        conductivity_w_mk=sum(
            component(name, "conductivity", temp_c) * x * rho / density[name]
            for name, x in shares.items()
        ),
        density_kg_m3=rho,
        heat_capacity_j_kgk=sum(
            x * component(name, "heat-capacity", temp_c) for name, x in shares.items()
        ),
    )


def _check_sum(total: float) -> None:
    if abs(total - 1) > constant("fractions-off"):
        raise OutOfRangeError(
            f"The mass fractions add up to {total:.3f}. Type fractions of 1, all six of them: "
            "water, protein, fat, carbohydrate, fibre, ash.",
            field="fractions", got=f"{total:.3f}", want="a sum of 1",
        )  # fmt: skip


def porous_conductivity_w_mk(solid_w_mk: float, *, gas_w_mk: float, pore_fraction: float) -> float:
    """Conductivity of a foam whose liquid is continuous.

    k = k_s (1 - 2 phi beta) / (1 + phi beta), beta = (k_s - k_g) / (2 k_s + k_g)

    Parameters
    ----------
    solid_w_mk : k_s, of the gas-free batter [W/(m K)]
    gas_w_mk : k_g, of what fills the pores [W/(m K)]
    pore_fraction : phi, gas volume over whole volume, 0 to 1

    Returns
    -------
    conductivity [W/(m K)]

    Raises
    ------
    OutOfRangeError : a conductivity is not above 0, or the porosity is outside 0 to 1

    Valid for
    ---------
    Closed pores in a continuous liquid; an open crumb conducts less.

    Source
    ------
    `eucken-1940`

    Examples
    --------
    >>> round(porous_conductivity_w_mk(0.42, gas_w_mk=0.03, pore_fraction=0.65), 6)
    0.135701
    """
    within("porosity", pore_fraction, 0.0, 1.0)
    for name, value in (("solid", solid_w_mk), ("gas", gas_w_mk)):
        if not 0 < value < math.inf:
            raise OutOfRangeError(
                f"{name} is {value:g} W/mK; a conductivity is above 0.",
                field=name, got=f"{value:g}", want="more than 0",
            )  # fmt: skip
    beta = (solid_w_mk - gas_w_mk) / (2 * solid_w_mk + gas_w_mk)
    return solid_w_mk * (1 - 2 * pore_fraction * beta) / (1 + pore_fraction * beta)
