"""Every sum of the table is declared, answers its own example, and says where it comes from."""

import json

import pytest

from krume.calc import SUMS, answer, describe
from krume.evidence import source

TABLE = (
    "convert tin-volume tin-factor roll eggs-shelled egg-count soda-co2 powder-co2 bloom "
    "specific-gravity overrun aw-sucrose aw-glycerol aw-mix mould-free-days tcs lethality cooling "
    "us-amount us-daily-value us-servings slice-carbohydrate eu-energy salt atwater "
    "gluten-mix quid allergens "
    "boiling-point vapour-pressure food-properties porous-conductivity heating-series browning "
    "dial triangle-test pace round-to-scale blend-composition eggs-to-crack slip-factor "
    "egg-heat freezing-point dew-point "
    "cool-down cake-cooling custard-cooling fan layers dome spiral leaves spirit "
    "label-letters "
    "cream-carries cream-edge water-held"
).split()


def test_every_sum_of_the_table_is_there() -> None:
    assert set(TABLE) == set(SUMS)


@pytest.mark.parametrize("name", TABLE)
def test_a_sum_answers_its_own_example_in_plain_json(name: str) -> None:
    found = answer(name, dict(SUMS[name].example))
    assert json.loads(json.dumps(found.values, allow_nan=False)) == found.values
    declared = {output.name for output in SUMS[name].outputs}
    assert set(found.values) - {"interval", "ingredient"} <= declared
    assert found.sources
    for key in found.sources:
        assert source(key).title


@pytest.mark.parametrize("name", TABLE)
def test_a_sum_tells_its_meaning_and_each_input(name: str) -> None:
    told = describe(name)
    assert str(told["meaning"]).endswith(".")
    assert json.dumps(told)
    names = [item.name for item in SUMS[name].inputs]
    assert len(names) == len(set(names))
    for item in SUMS[name].inputs:
        assert item.meaning
        assert (item.kind == "choice") == bool(item.choices)
