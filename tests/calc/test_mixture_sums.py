"""Sums on mixtures as people and checks call them."""

import pytest

from krume.base import InputError, OutOfRangeError
from krume.calc import run
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R34, R63, R65, R69, R70 as quick sums")
@pytest.mark.parametrize(
    ("name", "inputs", "key", "printed"),
    [
        ("soda-co2", {"mass": 1, "temp": 25}, "volume_ml", "291.2"),
        ("soda-co2", {"mass": 1, "temp": "77F"}, "volume_ml", "291.2"),
        ("soda-co2", {"mass": 1, "temp": 25, "acid": "no"}, "volume_ml", "145.6"),
        ("soda-co2", {"mass": 1, "temp": 100}, "volume_ml", "364.5"),
        ("powder-co2", {"mass": 1, "available_pct": 12, "temp": 25}, "volume_ml", "66.7"),
        ("powder-co2", {"mass": 1, "available": "10%", "temp": 25}, "volume_ml", "55.6"),
        ("bloom", {"mass": 10, "from": 160, "to": 200}, "by_root_g", "8.94"),
        ("bloom", {"mass": 10, "from": 160, "to": 200}, "by_ratio_g", "8.00"),
        ("specific-gravity", {"empty": 82, "water": 318, "batter": 195.3}, "specific_gravity",
         "0.480"),
        ("overrun", {"before": 1005, "after": 505}, "overrun_pct", "99.0"),
        ("overrun", {"before": 236, "after": 124}, "overrun_pct", "90.3"),
        ("porous-conductivity", {"solid": 0.42, "gas": 0.03, "porosity": 0.65},
         "conductivity_w_mk", "0.135700935"),
    ],
)  # fmt: skip
def test_sums_are_the_printed_ones(
    name: str, inputs: dict[str, object], key: str, printed: str
) -> None:
    assert agrees(run(name, **inputs)[key], printed)  # type: ignore[arg-type]


def test_a_weaker_gelatine_takes_more_by_either_rule() -> None:
    found = run("bloom", mass=8, **{"from": 200, "to": 160})
    assert found["by_root_g"] == pytest.approx(80**0.5)
    assert found["by_ratio_g"] == pytest.approx(10.0)


@pytest.mark.source("reference-book", "bake model, Choi-Okos check as a quick sum")
def test_food_properties_are_the_printed_ones() -> None:
    found = run(
        "food-properties", water=0.40, protein=0.06, fat=0.10, carbohydrate=0.42, fibre=0.01,
        ash=0.01, temp=20,
    )  # fmt: skip
    assert agrees(found["conductivity_w_mk"], "0.4013377")  # type: ignore[arg-type]
    assert agrees(found["density_kg_m3"], "1202.3864")  # type: ignore[arg-type]
    assert agrees(found["heat_capacity_j_kgk"], "2689.7933")  # type: ignore[arg-type]


def test_fractions_that_do_not_add_up_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="add up"):
        run("food-properties", water=0.5, temp=20)


def test_a_missing_or_wrong_input_is_named() -> None:
    with pytest.raises(InputError, match="temp"):
        run("soda-co2", mass=1)
    with pytest.raises(InputError, match="volume"):
        run("soda-co2", mass="1 ml", temp=25)
