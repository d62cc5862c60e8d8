"""The bench's oven clock awaits what the oven awaits."""

from pathlib import Path

import pytest

from krume.usecases import (
    Asked,
    BakeWish,
    bake_formula,
    clocks_at_bench,
    load_demo,
    loads_now,
    put_in,
    start_at_bench,
)
from krume.usecases.oven.at_bench import awaited_at_bench, time_at_bench


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    found = Asked(book=tmp_path / "book")
    load_demo(found)
    return found


def test_before_it_is_in_the_clock_awaits_the_formulas_own_minutes(asked: Asked) -> None:
    minutes = bake_formula("F3", BakeWish(), asked).result.minutes
    awaited = awaited_at_bench("F3", "", asked)
    assert minutes is not None and awaited is not None
    assert (awaited.check_min, awaited.latest_min) == (minutes.low, minutes.high)
    assert awaited_at_bench("F7", "", asked) is None
    assert awaited_at_bench("C1", "", asked) is None


def test_a_batter_that_goes_in_from_the_bench_has_its_minutes_at_once(asked: Asked) -> None:
    start_at_bench("F3", "k", asked, kind="oven", client_id="one")
    (load,) = loads_now(asked)
    found = clocks_at_bench("F3", asked)
    assert load.check_min is not None and found.awaited is not None
    assert found.awaited.check_min == load.check_min
    put_in("two", "F3", "", asked)
    moved = clocks_at_bench("F3", asked).awaited
    assert moved is not None
    assert moved.check_min > found.awaited.check_min


def test_a_load_without_minutes_where_it_stands_is_promised_none_of_its_own_oven(
    asked: Asked,
) -> None:
    put_in("one", "F3", "round 2 x 1 cm", asked)
    (load,) = loads_now(asked)
    assert load.check_min is None
    assert awaited_at_bench("F3", "", asked) is not None
    assert awaited_at_bench("F3", "one", asked) is None


def test_what_has_no_minutes_is_in_all_the_same(asked: Asked) -> None:
    start_at_bench("F7", "k", asked, kind="oven", client_id="one")
    assert len(loads_now(asked)) == 1
    assert clocks_at_bench("F7", asked).awaited is None
    time_at_bench("nothing", asked)
