"""A plan is checked again from outside: hands, oven, mixer, fridge, clocks and sums."""

from collections import defaultdict
from datetime import datetime, timedelta
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from tests.contract.conftest import Many, Said
from tests.contract.shape import local_time

ORDERS = {
    "six.txt": "Order 6\nDate: Monday 2027-06-14\nHand-over: 12:00, pick-up\n"
               "For: 60 people\n\n3 T1\n2 T3\n",
    "rolls.txt": "Order 7\nDate: Saturday 2027-06-12\nHand-over: 16:00, pick-up\n"
                 "For: 30 people\n\n3 T2\n1 TART\n",
}  # fmt: skip
PLANS = {
    "101": ["101"],
    "101 102": ["101", "102"],
    "six": ["six.txt"],
    "rolls": ["rolls.txt"],
    "all": ["101", "rolls.txt", "six.txt"],
}
CALENDAR: dict[str, bytes] = {}
TINS_PER_LOAD, FRIDGE_PLACES, FOAM_MIN = 2, 8, 10


@pytest.fixture(scope="module")
def said(many: Many, book: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Said]:
    """Every plan of this page, in one process."""
    folder = tmp_path_factory.mktemp("plans")
    for name, text in ORDERS.items():
        (folder / name).write_text(text, encoding="utf-8")
    calls = [["plan", *names, "--json", "--book", str(book)] for names in PLANS.values()]
    calls.append(["plan", "101", "--ics", "101.ics", "--json", "--book", str(book)])
    said = dict(zip([*PLANS, "ics"], many(calls, cwd=folder), strict=True))
    CALENDAR["bytes"] = (folder / "101.ics").read_bytes()
    return said


@pytest.fixture(params=PLANS)
def plan(request: pytest.FixtureRequest, said: dict[str, Said]) -> dict[str, Any]:
    """One plan's result."""
    one = said[request.param]
    assert one.code == 0, one.stdout[:2000] + one.stderr
    result: dict[str, Any] = one.answer["result"]
    return result


def _span(task: dict[str, Any]) -> tuple[datetime, datetime]:
    return local_time(task["start"]), local_time(task["end"])


def test_one_pair_of_hands_does_one_thing_at_a_time(plan: dict[str, Any]) -> None:
    spans = sorted(_span(task) for task in plan["tasks"] if task["who"])
    assert spans
    assert all(before[1] <= after[0] for before, after in pairwise(spans))


def test_one_mixer_whips_one_thing_at_a_time(plan: dict[str, Any]) -> None:
    spans = sorted(_span(task) for task in plan["tasks"] if "mixer" in task["uses"])
    assert spans
    assert all(before[1] <= after[0] for before, after in pairwise(spans))


def test_the_oven_holds_one_load_of_two_tins_and_heats_back(plan: dict[str, Any]) -> None:
    spans = sorted((local_time(x["start"]), local_time(x["oven_free"])) for x in plan["loads"])
    assert all(before[1] <= after[0] for before, after in pairwise(spans))
    for load in plan["loads"]:
        assert 1 <= load["count"] <= TINS_PER_LOAD
        start, out = local_time(load["start"]), local_time(load["out"])
        planned = timedelta(minutes=load["load_min"] + load["bake_min"])
        assert out - start == planned
        assert start < local_time(load["first_check"]) <= out <= local_time(load["latest_out"])
    last = max(local_time(load["out"]) for load in plan["loads"])
    assert local_time(plan["last_out"]) == last


def test_no_foam_waits_longer_than_ten_minutes(plan: dict[str, Any]) -> None:
    waits = {load["of"]: load["foam_waits_min"] for load in plan["loads"]}
    assert {name for name, wait in waits.items() if wait is None} <= {"F7"}
    assert all(wait <= FOAM_MIN for wait in waits.values() if wait is not None)
    foams = sorted(_span(t)[1] for t in plan["tasks"] if t["step"] == "foam")
    starts = [local_time(load["start"]) for load in plan["loads"]]
    for end in foams:
        later = [start - end for start in starts if start >= end]
        assert later
        assert min(later) <= timedelta(minutes=FOAM_MIN)


def test_everything_stands_ready_at_its_hour(plan: dict[str, Any]) -> None:
    ready = {order["name"]: local_time(order["ready"]) for order in plan["orders"]}
    boxes = defaultdict(list)
    for task in plan["tasks"]:
        if task["order"] is not None:
            assert _span(task)[1] <= ready[task["order"]], task["name"]
        if task["step"] == "box":
            boxes[task["order"]].append(task)
    assert set(boxes) == set(ready)
    assert plan["fridge"]["takes"] <= FRIDGE_PLACES


def test_nothing_starts_before_the_books_hour(plan: dict[str, Any]) -> None:
    first = min(_span(task)[0] for task in plan["tasks"])
    assert first == local_time(plan["first_start"])
    assert first >= local_time("2027-06-10T08:00:00+02:00")


def test_a_cake_is_filled_only_after_it_is_cold(plan: dict[str, Any]) -> None:
    cold: dict[str, datetime] = {}
    for task in plan["tasks"]:
        if task["step"] == "cool" and task["of"].startswith("F"):
            end = _span(task)[1]
            cold[task["of"]] = min(cold.get(task["of"], end), end)
    used = {"T1": "F1", "T2": "F3", "T3": "F4"}
    for task in plan["tasks"]:
        if task["step"] == "build" and task["of"] in used:
            assert _span(task)[0] >= cold[used[task["of"]]], task["name"]


def test_the_shopping_of_101_is_the_sum_of_its_batches(said: dict[str, Said]) -> None:
    result = said["101"].answer["result"]
    need = {row["ingredient"]: row["need_g"] for row in result["shopping"]}
    names = {row["name"]: row["need_g"] for row in result["shopping"]}
    assert names["caster sugar"] == pytest.approx(135 + 80 / 2 + 190 / 2 + 100)
    assert names["butter"] == pytest.approx(40 / 2 + 300 / 2)
    assert names["whole milk"] == pytest.approx(400 / 2)
    assert names["buckwheat flour"] == pytest.approx(50)
    assert len(need) >= 10
    assert [(egg["size"], egg["count"]) for egg in result["eggs"]] == [("eu-m", 8)]


def test_the_eggs_of_both_orders_are_those_of_their_formulas(said: dict[str, Said]) -> None:
    result = said["101 102"].answer["result"]
    eggs = {egg["size"]: egg["count"] for egg in result["eggs"]}
    assert eggs == {"eu-m": 8 + 9, "eu-l": 4}


def test_a_calendar_file_has_short_lines_and_every_task(said: dict[str, Said]) -> None:
    result = said["ics"].answer["result"]
    raw = CALENDAR["bytes"]
    lines = raw.split(b"\r\n")
    assert lines[0] == b"BEGIN:VCALENDAR"
    assert lines[-2:] == [b"END:VCALENDAR", b""]
    assert all(len(line) <= 75 for line in lines)
    assert raw.count(b"BEGIN:VEVENT") >= len([t for t in result["tasks"] if t["who"]])
