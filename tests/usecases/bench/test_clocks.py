"""Clocks and the cup at the bench."""

from pathlib import Path

import pytest

from krume.base import InputError
from krume.store import book_at, clocks_of, start_clock
from krume.usecases import Asked, load_demo
from krume.usecases.bench.bench import begin_at_bench, bench_of
from krume.usecases.bench.clocks import (
    REASONS,
    clocks_at_bench,
    minutes_between,
    start_at_bench,
    stop_at_bench,
)
from krume.usecases.bench.cup import cup_at_bench, judged, keep_cup

COVERS = ("cup",)


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    """A demo book of its own."""
    found = Asked(book=tmp_path / "book")
    load_demo(found)
    return found


def test_a_family_has_its_own_limits_and_an_unknown_one_none(asked: Asked) -> None:
    found = clocks_at_bench("F2", asked)
    assert (found.whites_min, found.batter_min, found.clocks, found.busy) == (5, 10, (), None)
    assert clocks_at_bench("C1", asked).batter_min is None


def test_a_foam_beside_an_occupied_oven_needs_a_reason(asked: Asked) -> None:
    start_at_bench("F1", "one", asked, kind="oven", client_id="1")
    with pytest.raises(InputError, match="occupied"):
        start_at_bench("F2", "two", asked, kind="foam", client_id="2")
    assert clocks_at_bench("F2", asked).running("foam") is None
    start_at_bench("F2", "two", asked, kind="foam", client_id="2", reason=REASONS[0])
    running = clocks_at_bench("F2", asked).running("foam")
    assert running is not None
    assert running.reason == REASONS[0]


def test_the_oven_ends_the_foam_and_sent_twice_is_one(asked: Asked) -> None:
    for _ in range(2):
        start_at_bench("F2", "k", asked, kind="foam", client_id="1")
    start_at_bench("F2", "k", asked, kind="oven", client_id="2")
    found = clocks_at_bench("F2", asked)
    assert [c.kind for c in found.clocks] == ["foam", "oven"]
    assert found.running("foam") is None
    assert found.running("oven") is not None
    stop_at_bench("F2", asked, kind="oven")
    stop_at_bench("F2", asked, kind="oven")
    assert clocks_at_bench("F2", asked).busy is None


def test_minutes_run_from_the_start_to_the_stop(asked: Asked) -> None:
    key = begin_at_bench("F2", "k", asked)
    book = book_at(asked.book)
    start_clock(book, "1", kind="oven", weighing=key, at="2027-06-10T06:00:00+00:00")
    assert clocks_of(book, key)[0].stopped_at is None
    assert minutes_between("2027-06-10T06:00:00+00:00", "2027-06-10T06:35:30+00:00") == 35.5
    assert minutes_between("2027-06-10T06:01:00+00:00", "2027-06-10T06:00:00+00:00") == 0


def test_a_clock_nobody_knows_is_refused(asked: Asked) -> None:
    with pytest.raises(InputError):
        start_at_bench("F2", "k", asked, kind="moon", client_id="1")


def test_the_cup_is_remembered_and_its_batter_judged(asked: Asked) -> None:
    keep_cup("F2", "k", asked, client_id="1", empty_g=100, water_g=340, batter_g=215.2)
    cup = cup_at_bench(bench_of("F2", asked), asked)
    assert cup.sg == pytest.approx(0.48)
    assert (cup.place, cup.low, cup.high) == ("inside", 0.46, 0.5)
    other = cup_at_bench(bench_of("F1", asked), asked)
    assert (other.empty_g, other.water_g, other.batter_g, other.sg) == (100, 340, None, None)


@pytest.mark.parametrize(
    ("sg", "place"), [(0.45, "light"), (0.46, "inside"), (0.5, "inside"), (0.51, "heavy")]
)
def test_a_batter_stands_below_inside_or_above_its_band(sg: float, place: str) -> None:
    assert judged(sg, 0.46, 0.5)[0] == place
    assert judged(sg, None, None)[0] == "not known"
    assert judged(None, 0.46, 0.5) == ("", "")


@pytest.mark.parametrize(
    ("empty", "water", "batter", "field"),
    [(0, 340, 200, "empty"), (100, 90, 200, "water"), (100, 340, 100, "batter")],
)
def test_a_cup_that_cannot_be_is_refused(
    asked: Asked, empty: float, water: float, batter: float, field: str
) -> None:
    with pytest.raises(InputError) as refusal:
        keep_cup("F2", "k", asked, client_id="1", empty_g=empty, water_g=water, batter_g=batter)
    assert refusal.value.field == field
    assert bench_of("F2", asked).key == ""
