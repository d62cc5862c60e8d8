"""A day's plan: the demo's twelve tortes, clocks that hold, and laws of moving and of room."""

from dataclasses import replace
from datetime import datetime, timedelta
from itertools import pairwise

import pytest

from krume.base import Interval
from krume.plan import Promise, Task, Timetable, timetable
from tests.plan.kitchens import FORMULAS, NOW, SATURDAY, T2, kitchen, order

COVERS = ("cakes", "creams", "tortes", "draft", "days", "project")


def planned(*promises: Promise, places: float | None = 8.0, now: datetime = NOW) -> Timetable:
    found = timetable(promises, FORMULAS, kitchen(places), now)
    assert found is not None
    return found


@pytest.fixture(scope="module")
def twelve() -> Timetable:
    return planned(order(12), places=12.0)


def by_hand(plan: Timetable) -> list[Task]:
    return sorted((task for task in plan.tasks if task.by_hand), key=lambda task: task.start)


def test_twelve_tortes_are_six_loads_of_45_minutes_out_by_13_34_on_thursday(
    twelve: Timetable,
) -> None:
    assert [load.count for load in twelve.loads] == [2] * 6
    assert {load.cycle_min for load in twelve.loads} == {45}
    assert twelve.last_out is not None
    assert twelve.last_out <= datetime(2027, 6, 10, 13, 34)  # noqa: DTZ001
    assert twelve.proven
    assert twelve.places == 12.0


def test_no_foam_waits_longer_than_its_clock(twelve: Timetable) -> None:
    waits = [load.foam_waits_min for load in twelve.loads]
    assert all(wait is not None and 0 <= wait <= 10 for wait in waits)


def test_one_pair_of_hands_does_one_thing_at_a_time(twelve: Timetable) -> None:
    tasks = by_hand(twelve)
    assert len(tasks) > 60
    for before, after in pairwise(tasks):
        assert after.start >= before.end, (before.name, after.name)


def test_the_oven_holds_one_load_at_a_time_and_gets_its_heat_back(twelve: Timetable) -> None:
    for before, after in pairwise(twelve.loads):
        assert after.start >= before.free


def test_hands_rest_at_night_and_nothing_begins_before_now(twelve: Timetable) -> None:
    for task in by_hand(twelve):
        opens = task.start.replace(hour=6, minute=0)
        assert opens <= task.start and task.end <= task.start.replace(hour=21, minute=0)
    assert min(task.start for task in twelve.tasks) >= NOW


def test_every_torte_is_boxed_by_the_hand_over_and_has_set_four_hours(twelve: Timetable) -> None:
    boxes = [task for task in twelve.tasks if task.step == "box"]
    fills = [task for task in twelve.tasks if task.name.startswith("stack and fill")]
    assert len(boxes) == len(fills) == 12
    assert max(task.end for task in boxes) == SATURDAY
    last_fill = max(task.end for task in fills)
    assert min(task.start for task in boxes) - last_fill >= timedelta(hours=4)


def test_a_torte_waits_for_its_cake_its_cream_and_its_coat() -> None:
    plan = planned(order(1))
    ends = {task.name.partition(":")[0]: task.end for task in plan.tasks}
    starts = {task.name.partition(":")[0]: task.start for task in plan.tasks}
    assert starts["stack and fill"] >= ends["wrap"]
    assert starts["stack and fill"] >= ends["whip and fold"] >= ends["cool to 20 C"]
    assert starts["coat"] >= ends["heat and beat buttercream"]
    assert starts["coat"] >= ends["chill"] >= ends["stack and fill"] + timedelta(minutes=30)


def test_a_sheet_is_rolled_warm_and_its_cream_is_used_within_its_clock() -> None:
    plan = planned(order(2, T2))
    (load,) = plan.loads
    turned = next(task for task in plan.tasks if task.name.startswith("turn"))
    assert timedelta(0) <= turned.start - load.out <= timedelta(minutes=3)
    folded = max(task.end for task in plan.tasks if task.name.startswith("melt gelatine"))
    for task in plan.tasks:
        if task.name.startswith("fill and roll"):
            assert timedelta(0) <= task.start - folded <= timedelta(minutes=15)
    assert plan.places == 1.0


def test_eight_places_do_not_hold_twelve_tortes() -> None:
    assert timetable((order(12),), FORMULAS, kitchen(8.0), NOW) is None


@pytest.mark.parametrize("places", [8.0, 9.0, None])
def test_more_room_in_the_fridge_is_never_worse(places: float | None) -> None:
    assert planned(order(8), places=places).last_out == planned(order(8)).last_out


@pytest.mark.parametrize("days", [1, 7])
def test_moving_the_hand_over_by_days_moves_the_plan(days: int) -> None:
    later = timedelta(days=days)
    plan = planned(order(3))
    moved = planned(order(3, ready=SATURDAY + later), now=NOW + later)
    assert [(t.name, t.start + later) for t in plan.tasks] == [
        (t.name, t.start) for t in moved.tasks
    ]


def test_the_same_orders_give_the_same_plan() -> None:
    assert planned(order(3)) == planned(order(3))


def test_work_for_an_order_that_is_far_off_is_left_until_its_days() -> None:
    plan = planned(order(1, ready=SATURDAY + timedelta(days=30)))
    assert min(task.start for task in plan.tasks).date() == (SATURDAY + timedelta(days=28)).date()
    assert min(task.start for task in plan.tasks).time().isoformat() == "07:30:00"


def test_two_orders_share_the_oven_and_the_hands() -> None:
    rolls = Promise("rolls", SATURDAY - timedelta(hours=22), ((T2, 2),))
    plan = planned(order(1), rolls)
    assert {load.of for load in plan.loads} == {"F1", "F3"}
    tasks = by_hand(plan)
    assert all(a.end <= b.start for a, b in pairwise(tasks))
    assert {task.order for task in plan.tasks if task.step == "box"} == {"order", "rolls"}


def test_slack_is_room_that_is_really_there() -> None:
    plan = planned(order(1))
    for task in plan.tasks:
        assert task.slack_min >= 0
        if task.step == "box":
            assert task.slack_min == 0
    coat = next(task for task in plan.tasks if task.name.startswith("coat"))
    boxed = next(task for task in plan.tasks if task.step == "box")
    closes = coat.end.replace(hour=21, minute=0)
    assert coat.end + timedelta(minutes=coat.slack_min) <= min(closes, boxed.start)


def test_a_cake_alone_is_baked_the_day_before() -> None:
    from krume.plan import PlannedTorte

    cake = PlannedTorte("F1", "hazel sponge", "plain", (("F1", 1),))
    plan = planned(Promise("cake", SATURDAY, ((cake, 1),)))
    assert [load.start.date() for load in plan.loads] == [(SATURDAY - timedelta(days=1)).date()]
    assert [task.step for task in plan.tasks if task.step == "build"] == []


def test_a_cakes_own_minutes_of_cooling_take_the_place_of_the_usual_ones() -> None:
    own = replace(FORMULAS["F1"], cool_min=Interval(75, 92, 110.5))
    found = timetable((order(1),), {**FORMULAS, "F1": own}, kitchen(8.0), NOW)
    assert found is not None
    for plan, minutes, status in ((planned(order(1)), 90, "assumed"), (found, 111, "declared")):
        cooled = next(task for task in plan.tasks if task.step == "cool" and task.of == "F1")
        assert cooled.end - cooled.start == timedelta(minutes=minutes)
        assert cooled.status == status


def test_an_hour_before_the_working_day_is_boxed_the_evening_before_and_keeps_its_place() -> None:
    plan = planned(order(2, ready=SATURDAY.replace(hour=5)))
    boxes = [task for task in plan.tasks if task.step == "box"]
    assert {task.start.date() for task in boxes} == {(SATURDAY - timedelta(days=1)).date()}
    early = timetable((order(9, ready=SATURDAY.replace(hour=5)),), FORMULAS, kitchen(8.0), NOW)
    assert early is None
