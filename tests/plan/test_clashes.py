"""Why a plan cannot be made: the smallest set of limits, by name and number; and the ways out."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from krume.base import Infeasible
from krume.plan import Asking, WayOut, how_many_fit, timetable, ways_out, why_not
from tests.plan.kitchens import FORMULAS, NOW, SATURDAY, T2, kitchen, order

COVERS = ("ways",)


def asking(count: int, places: float = 8.0, now: datetime = NOW) -> Asking:
    return Asking((order(count),), FORMULAS, kitchen(places), now)


@pytest.fixture(scope="module")
def twelve() -> tuple[Infeasible, tuple[WayOut, ...]]:
    clash = why_not(asking(12))
    return clash, ways_out(asking(12), clash)


def test_twelve_tortes_clash_with_the_fridge_alone(
    twelve: tuple[Infeasible, tuple[WayOut, ...]],
) -> None:
    (clash,) = twelve[0].clashes
    assert (clash.name, clash.has, clash.needs) == ("fridge", "8", "12")
    assert how_many_fit(asking(12)) == (8, 12)


def test_the_places_named_are_the_fewest_that_do(
    twelve: tuple[Infeasible, tuple[WayOut, ...]],
) -> None:
    need = float(twelve[0].clashes[0].needs)
    assert timetable((order(12),), FORMULAS, kitchen(need), NOW) is not None
    assert timetable((order(12),), FORMULAS, kitchen(need - 1), NOW) is None


def test_each_way_out_is_whole(twelve: tuple[Infeasible, tuple[WayOut, ...]]) -> None:
    ways = {way.kind: way for way in twelve[1]}
    assert list(ways) == ["borrow", "evening", "morning"]
    assert ways["borrow"].planned and ways["borrow"].count == 4
    assert ways["borrow"].plan is not None and ways["borrow"].plan.places == 12.0
    assert ways["evening"].planned and "Friday at 18:00" in ways["evening"].text
    morning = ways["morning"]
    assert not morning.planned
    assert "4 × 30 min, done 08:30" in morning.text and "from 06:30" in morning.text
    assert "20 min cold, 10 min free" in morning.text


def test_two_rolls_stand_in_one_place() -> None:
    rolls = Asking((order(9, T2),), FORMULAS, kitchen(4.0), NOW)
    assert how_many_fit(rolls) == (8, 9)
    (clash,) = why_not(rolls).clashes
    assert (clash.name, clash.has, clash.needs) == ("fridge", "4", "4.5")


def test_an_order_that_is_too_near_names_the_latest_start_and_a_later_hour() -> None:
    late = asking(2, now=SATURDAY - timedelta(hours=2, minutes=30))
    clash = why_not(late)
    (one,) = clash.clashes
    assert one.name == "start"
    assert one.has == "Saturday 2027-06-12 06:30"
    assert one.needs.startswith("a start by Friday 2027-06-11")
    (way,) = ways_out(late, clash)
    assert way.kind == "later" and way.planned
    earlier = datetime.fromisoformat(one.needs[-16:].replace(" ", "T"))
    assert timetable((order(2),), FORMULAS, kitchen(), earlier) is not None


def test_a_day_that_is_too_short_for_the_hands_is_named() -> None:
    short = replace(kitchen(), opens_min=480, begins_min=480, closes_min=490)
    clash = why_not(Asking((order(1),), FORMULAS, short, NOW))
    assert [one.name for one in clash.clashes] == ["working hours"]
    assert clash.clashes[0].has == "08:00 to 08:10"
