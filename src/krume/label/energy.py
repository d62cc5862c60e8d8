"""Energy of a food by the EU's and the general factors, and salt from sodium."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from krume.base import OutOfRangeError
from krume.properties import constants, within

EU_PARTS = ("fat", "carbohydrate", "polyols", "fibre", "protein", "alcohol", "organic-acids")
US_PARTS = ("protein", "fat", "carbohydrate", "alcohol")


@dataclass(frozen=True, slots=True)
class Energy:
    """Energy, each unit computed from the grams, never one from the other."""

    energy_kj: float
    energy_kcal: float


def eu_energy(parts_g: Mapping[str, float]) -> Energy:
    """Energy of a food by the factors of the EU.

    E = sum of grams x factor; carbohydrate counts without its polyols

    Parameters
    ----------
    parts_g : fat, carbohydrate (polyols included), polyols, fibre, protein, alcohol,
        organic-acids [g]

    Returns
    -------
    energy [kJ] and [kcal], not rounded

    Raises
    ------
    OutOfRangeError : a mass is negative, or there are more polyols than carbohydrate

    Valid for
    ---------
    Foods without salatrims and erythritol.

    Source
    ------
    `eu-1169-2011`, annex XIV

    Examples
    --------
    >>> eu_energy({"fat": 18.0, "carbohydrate": 45.0, "fibre": 2.0, "protein": 6.0})
    Energy(energy_kj=1549.0, energy_kcal=370.0)
    """
    grams = {name: within(name, parts_g.get(name, 0.0), 0.0, math.inf, "g") for name in EU_PARTS}
    if grams["polyols"] > grams["carbohydrate"]:
        raise OutOfRangeError(
            f"polyols {grams['polyols']:g} g are more than the carbohydrate "
            f"{grams['carbohydrate']:g} g they belong to. Declare them in the carbohydrate too.",
            field="polyols", got=f"{grams['polyols']:g}", want="at most the carbohydrate",
        )  # fmt: skip
    grams["carbohydrate"] -= grams["polyols"]
    factors = constants("declared.csv")
    kj, kcal = (
        math.fsum(mass_g * factors[f"eu-{name}-{unit}"] for name, mass_g in grams.items())
        for unit in ("kj", "kcal")
    )
    return Energy(kj, kcal)


def atwater_kcal(
    protein_g: float,
    fat_g: float,
    carbohydrate_g: float,
    *,
    factors_kcal_g: tuple[float, float, float] | None = None,
) -> float:
    """Energy by general factors (4, 9, 4), or by the factors of one food.

    E = a protein + b fat + c carbohydrate

    Parameters
    ----------
    protein_g : protein [g]
    fat_g : fat [g]
    carbohydrate_g : carbohydrate by difference, fibre included [g]
    factors_kcal_g : factors of protein, fat and carbohydrate of this food; None takes 4, 9, 4

    Returns
    -------
    energy [kcal]

    Raises
    ------
    OutOfRangeError : a mass is negative

    Valid for
    ---------
    Foods without alcohol.

    Source
    ------
    `us-21-cfr-101-9`, (c)(1)(i)

    Examples
    --------
    >>> round(atwater_kcal(12.56, 9.51, 0.72, factors_kcal_g=(4.36, 9.02, 3.68)), 1)
    143.2
    """
    table = constants("declared.csv")
    names = ("protein", "fat", "carbohydrate")
    used = factors_kcal_g or tuple(table[f"atwater-{name}"] for name in names)
    grams = zip(names, (protein_g, fat_g, carbohydrate_g), strict=True)
    masses = [within(name, mass_g, 0.0, math.inf, "g") for name, mass_g in grams]
    return math.fsum(mass * factor for mass, factor in zip(masses, used, strict=True))


def us_energy_kcal(parts_g: Mapping[str, float]) -> float:
    """Calories of a food with its alcohol, by the general factors and that of alcohol.

    E = 4 protein + 9 fat + 4 carbohydrate + 7 alcohol

    Parameters
    ----------
    parts_g : protein, fat, carbohydrate (fibre included), alcohol [g]

    Returns
    -------
    energy [kcal]

    Raises
    ------
    OutOfRangeError : a mass is negative

    Valid for
    ---------
    Any food; the rule itself names no factor of alcohol.

    Source
    ------
    `us-21-cfr-101-9`, (c)(1)(i)(B); alcohol by common practice

    Examples
    --------
    >>> us_energy_kcal({"protein": 5.0, "fat": 10.0, "carbohydrate": 30.0, "alcohol": 2.0})
    244.0
    """
    alcohol_g = within("alcohol", parts_g.get("alcohol", 0.0), 0.0, math.inf, "g")
    eaten = [parts_g.get(name, 0.0) for name in ("protein", "fat", "carbohydrate")]
    return atwater_kcal(*eaten) + constants("declared.csv")["atwater-alcohol"] * alcohol_g


def salt_g(sodium_mg: float) -> float:
    """Salt as the EU declares it, from sodium.

    salt = 2.5 sodium

    Parameters
    ----------
    sodium_mg : all sodium of the food [mg]

    Returns
    -------
    salt [g], not rounded

    Raises
    ------
    OutOfRangeError : sodium_mg is negative

    Valid for
    ---------
    All sodium, also from baking powder.

    Source
    ------
    `eu-1169-2011`, annex I no. 11

    Examples
    --------
    >>> salt_g(250.0)
    0.625
    """
    within("sodium", sodium_mg, 0.0, math.inf, "mg")
    return constants("declared.csv")["salt-per-sodium"] * sodium_mg / 1000
