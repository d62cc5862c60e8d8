"""Quick sums on what a mixture is like: gas, gelatine, foam, heat."""

from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.properties import (
    COMPONENTS,
    bloom_swap,
    food_properties,
    overrun_pct,
    porous_conductivity_w_mk,
    powder_gas_ml,
    soda_gas_ml,
    specific_gravity,
)


def _soda(given: Given) -> Values:
    with_acid = given.yes("acid", default=True)
    return {
        "volume_ml": soda_gas_ml(
            given.number("mass"), temp_c=given.number("temp"), with_acid=with_acid
        )
    }


def _powder(given: Given) -> Values:
    return {
        "volume_ml": powder_gas_ml(
            given.number("mass"),
            available_pct=given.number("available_pct"),
            temp_c=given.number("temp"),
        )
    }


def _bloom(given: Given) -> Values:
    found = bloom_swap(
        given.number("mass"), from_bloom=given.number("from"), to_bloom=given.number("to")
    )
    given.note("two-rules", "Both rules are in use and disagree: say which one you took.")
    return {"by_root_g": found.by_root_g, "by_ratio_g": found.by_ratio_g}


def _gravity(given: Given) -> Values:
    return {
        "specific_gravity": specific_gravity(
            given.number("empty"), water_g=given.number("water"), batter_g=given.number("batter")
        )
    }


def _overrun(given: Given) -> Values:
    return {"overrun_pct": overrun_pct(given.number("before"), after_g=given.number("after"))}


def _food(given: Given) -> Values:
    fractions = {name: given.or_zero(name) for name in COMPONENTS}
    found = food_properties(fractions, temp_c=given.number("temp"))
    return {
        "conductivity_w_mk": found.conductivity_w_mk,
        "density_kg_m3": found.density_kg_m3,
        "heat_capacity_j_kgk": found.heat_capacity_j_kgk,
    }


def _porous(given: Given) -> Values:
    return {
        "conductivity_w_mk": porous_conductivity_w_mk(
            given.number("solid"),
            gas_w_mk=given.number("gas"),
            pore_fraction=given.number("porosity"),
        )
    }


_FRACTIONS = tuple(
    Input(name, f"mass fraction of {name}, 0 to 1", required=name == "water") for name in COMPONENTS
)

MIXTURE_SUMS = (
    Sum(
        "soda-co2",
        "Gas that baking soda gives, dry, at 101 325 Pa.",
        (
            Input("mass", "baking soda", "g"),
            Input("temp", "temperature of the gas", "c"),
            Input("acid", "enough acid is there (yes unless said)", kind="yes-no", required=False),
        ),
        (Output("volume_ml", "carbon dioxide, an upper estimate"),),
        _soda,
        ("ciaaw-atomic-weights", "codata-2018"),
        (("mass", "1"), ("temp", "25")),
    ),
    Sum(
        "powder-co2",
        "Gas that baking powder gives, dry, at 101 325 Pa.",
        (
            Input("mass", "baking powder", "g"),
            Input("available_pct", "available carbon dioxide by mass", "pct"),
            Input("temp", "temperature of the gas", "c"),
        ),
        (Output("volume_ml", "carbon dioxide, an upper estimate"),),
        _powder,
        ("ciaaw-atomic-weights", "codata-2018"),
        (("mass", "1"), ("available_pct", "12"), ("temp", "25")),
        "12 % is a trade figure; Canada requires 10 % or more.",
    ),
    Sum(
        "bloom",
        "Gelatine of another strength, by the two rules in use.",
        (
            Input("mass", "gelatine of the formula", "g"),
            Input("from", "its bloom number", "bloom"),
            Input("to", "bloom number at hand", "bloom"),
        ),
        (
            Output("by_root_g", "by the square-root rule"),
            Output("by_ratio_g", "by the ratio rule"),
        ),
        _bloom,
        ("common-practice",),
        (("mass", "10"), ("from", "160"), ("to", "200")),
    ),
    Sum(
        "specific-gravity",
        "Specific gravity of a batter from one cup weighed three times.",
        (
            Input("empty", "the cup alone", "g"),
            Input("water", "the cup full of water", "g"),
            Input("batter", "the cup full of batter", "g"),
        ),
        (Output("specific_gravity", "batter over water"),),
        _gravity,
        ("mathematics",),
        (("empty", "82"), ("water", "318"), ("batter", "195.3")),
    ),
    Sum(
        "overrun",
        "Volume gained by whipping, from one volume weighed twice.",
        (
            Input("before", "unwhipped, without the cup", "g"),
            Input("after", "whipped, the same volume, without the cup", "g"),
        ),
        (Output("overrun_pct", "volume gained"),),
        _overrun,
        ("mathematics",),
        (("before", "1005"), ("after", "505")),
    ),
    Sum(
        "food-properties",
        "Conductivity, density and heat capacity of a gas-free food.",
        (*_FRACTIONS, Input("temp", "temperature", "c")),
        (
            Output("conductivity_w_mk", "thermal conductivity"),
            Output("density_kg_m3", "density without gas"),
            Output("heat_capacity_j_kgk", "specific heat capacity"),
        ),
        _food,
        ("choi-okos-1986",),
        (
            ("water", "0.40"), ("protein", "0.06"), ("fat", "0.10"), ("carbohydrate", "0.42"),
            ("fibre", "0.01"), ("ash", "0.01"), ("temp", "20"),
        ),
    ),
    Sum(
        "porous-conductivity",
        "Conductivity of a foam from its liquid and its gas.",
        (
            Input("solid", "conductivity of the gas-free batter", "w_mk"),
            Input("gas", "conductivity of what fills the pores", "w_mk"),
            Input("porosity", "gas volume over whole volume, 0 to 1"),
        ),
        (Output("conductivity_w_mk", "thermal conductivity of the foam"),),
        _porous,
        ("eucken-1940",),
        (("solid", "0.42"), ("gas", "0.03"), ("porosity", "0.65")),
    ),
)  # fmt: skip
