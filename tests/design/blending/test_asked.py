"""What is no task at all is refused by name, before anything is solved."""

from dataclasses import replace
from math import inf, nan
from typing import Any

import pytest

from krume.base import InputError
from krume.design import BlendLimit, BlendTask, PropertyLimit, solve_blend

COVERS = ("task",)

TASK = BlendTask(
    names=("rice", "starch"),
    composition=((6.0, 1.4), (0.0, 0.0)),
    properties=("protein", "fat"),
    target=(3.0, 0.7),
    total_g=10.0,
)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"names": (), "composition": ()}, "names"),
        ({"total_g": 0.0}, "total"),
        ({"total_g": -10.0}, "total"),
        ({"total_g": nan}, "total"),
        ({"total_g": inf}, "total"),
        ({"step_g": 0.0}, "total"),
        ({"composition": ((6.0, 1.4),)}, "composition"),
        ({"properties": (), "target": (), "composition": ((), ())}, "composition"),
        ({"composition": ((6.0, 1.4), (0.0, nan))}, "starch"),
        ({"composition": ((6.0,), (0.0, 0.0))}, "rice"),
        ({"composition": ((6.0, -1.0), (0.0, 0.0))}, "rice"),
        ({"target": (3.0,)}, "target"),
        ({"target": (3.0, nan)}, "target"),
        ({"limits": (BlendLimit("teff", (2,), 10.0),)}, "teff"),
        ({"property_limits": (PropertyLimit("ash", (1.0,), None, 2.0),)}, "ash"),
        ({"property_limits": (PropertyLimit("ash", (1.0, nan), None, 2.0),)}, "ash"),
        ({"most_g": (1.0,)}, "stock"),
        ({"most_g": (None, -1.0)}, "stock"),
        ({"price_per_kg": (1.0, nan), "most_price_per_kg": 3.0}, "price"),
    ],
)
def test_what_cannot_be_worked_on_is_refused_by_name(change: dict[str, Any], field: str) -> None:
    with pytest.raises(InputError) as refused:
        solve_blend(replace(TASK, **change))
    assert refused.value.field == field
    assert refused.value.message.endswith(".")


def test_a_task_of_numbers_is_worked_on() -> None:
    solve_blend(replace(TASK, most_g=(None, 5.0), limits=(BlendLimit("starch", (1,), 10.0),)))
