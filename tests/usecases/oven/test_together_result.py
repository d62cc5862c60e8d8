"""The answer of several loads: what is not known is null, never 0."""

import json

from krume.usecases.asking.as_json import plain
from krume.usecases.oven.together_result import TogetherLoad, TogetherResult


def test_unknown_minutes_are_null() -> None:
    load = TogetherLoad(
        "F1", None, None, 1, 0.0, "middle", None, None, None, None, 0.0, 0.0, 0.0, None, None, ""
    )
    result = TogetherResult(
        None, fan=False, tins=1, loads=(load,), last=None, oven_kwh=None, warming_kwh=None, text=""
    )
    found = json.loads(json.dumps(plain(result)))
    assert (found["oven_c"], found["oven_kwh"], found["last"]) == (None, None, None)
    assert found["loads"][0]["minutes"] is None
    assert found["loads"][0]["check_from_min"] is None
