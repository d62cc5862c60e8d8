"""Orders become a timetable, a question at the right place, or the limit that forbids them."""

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime
from pathlib import Path

import icalendar
import pytest

from krume.usecases import Answer, Asked, PlanResult, PlanWish, QuestionError, plan_orders

COVERS = ("gathered", "kitchen", "result", "shopping")
TWELVE = """\
Order 12
Customer: a café
Date: Saturday 2027-06-12
Hand-over: 09:00, pick-up

12 T1
"""


def plan(asked: Asked, *names: str, **wish: object) -> Answer[PlanResult]:
    return plan_orders(names, PlanWish(**wish), asked)  # type: ignore[arg-type]


@pytest.fixture
def wide(book: Path, tmp_path: Path) -> Asked:
    """The demo book with twelve places in its fridge."""
    import shutil

    copy = tmp_path / "wide"
    shutil.copytree(book, copy)
    settings = copy / "studio.toml"
    text = settings.read_text(encoding="utf-8").replace("cake_places = 8", "cake_places = 12")
    settings.write_text(text, encoding="utf-8")
    return Asked(book=copy)


@pytest.mark.parametrize("name", ["101", "102"])
def test_a_demo_order_is_planned(demo: Asked, name: str) -> None:
    answer = plan(demo, name)
    assert answer.exit_code == 0
    result = answer.result
    assert result.tasks and result.proven and result.assumes is None
    assert result.last_out is not None and result.tightest is not None
    assert result.last_out == max(load.out for load in result.loads)
    ready = result.orders[0].ready
    assert max(task.end for task in result.tasks) <= ready
    assert str(ready.utcoffset()) == "2:00:00"
    assert {task.who for task in result.tasks} == {"Oda Renn", None}


def test_two_orders_are_planned_together(demo: Asked) -> None:
    result = plan(demo, "101", "102").result
    assert [order.name for order in result.orders] == ["101", "102"]
    assert {load.of for load in result.loads} == {"F1", "F3", "F4", "F7"}
    assert {task.order for task in result.tasks if task.step == "box"} == {"101", "102"}


def test_twelve_tortes_are_eight_too_many_for_nothing_but_the_fridge(
    demo: Asked, write: Callable[[str], str]
) -> None:
    answer = plan(demo, write(TWELVE))
    assert answer.exit_code == 4
    (problem,) = answer.problems
    assert problem.read == "fridge: 8 of 12" and problem.where == "line 6"
    assert problem.ask.startswith("8 of 12 fit in the fridge")
    assert [(o.label, o.line) for o in problem.options] == [("take 8", "8 T1")]
    assert [way.kind for way in answer.result.ways_out] == ["borrow", "evening", "morning"]
    assert answer.result.assumes == "12 places in the fridge"
    assert answer.result.fits == "8 of 12"
    assert answer.result.eggs[0].count == 90


def test_with_twelve_places_the_last_cake_is_out_on_thursday_by_13_34(
    wide: Asked, write: Callable[[str], str]
) -> None:
    result = plan(wide, write(TWELVE)).result
    assert result.last_out is not None
    assert result.last_out <= datetime.fromisoformat("2027-06-10T13:34:00+02:00")
    loads = [(load.load_min, load.bake_min, load.recover_min) for load in result.loads]
    assert loads == [(2, 38, 5)] * 6
    waits = [load.foam_waits_min for load in result.loads]
    assert all(wait is not None and wait <= 10 for wait in waits)
    assert result.ways_out == () and result.assumes is None


def test_the_line_of_a_clash_is_answered_by_its_option(
    demo: Asked, write: Callable[[str], str]
) -> None:
    answer = plan(replace(demo, answers=("line 6=8 T1",)), write(TWELVE))
    assert answer.exit_code == 0
    assert answer.result.fridge is not None and answer.result.fridge.takes == 8.0


def test_the_shopping_list_holds_whole_batches_and_eggs(demo: Asked) -> None:
    result = plan(demo, "101").result
    needs = {row.name: row.need_g for row in result.shopping}
    assert needs["buckwheat flour"] == pytest.approx(50.0)
    assert needs["caster sugar"] == pytest.approx(135 + 40 + 95 + 100)
    assert needs["whole milk"] == pytest.approx(200.0)
    assert not any("egg" in name and "pasteurised" not in name for name in needs)
    assert [(eggs.label, eggs.count) for eggs in result.eggs] == [("EU M", 8)]
    white = next(spare for spare in result.spare_eggs if spare.part == "white")
    assert (white.mass_g, white.offered_to, white.heat_c) == (100.5, "C5", 71.0)
    assert white.wants_g == pytest.approx(44.4, abs=0.05)


def test_packs_and_stock_of_the_book_are_used(wide: Asked) -> None:
    path = (wide.book or Path()) / "packs.csv"
    path.write_text("item,pack_g,stock_g,where\ncaster sugar,1000,,mill\nbutter,,500,\n", "utf-8")
    rows = {row.name: row for row in plan(wide, "101").result.shopping}
    assert (rows["caster sugar"].packs, rows["caster sugar"].where) == (1, "mill")
    assert "butter" not in rows


def test_one_yolk_of_the_chiffon_is_offered_to_a_custard_of_the_book(
    demo: Asked, write: Callable[[str], str]
) -> None:
    result = plan(demo, write(TWELVE.replace("12 T1", "1 F5"))).result
    (spare,) = result.spare_eggs
    assert (spare.part, spare.count, spare.offered_to) == ("yolk", 1.0, "C1")


@pytest.mark.parametrize(
    ("old", "new", "code", "where"),
    [
        ("Hand-over: 09:00, pick-up\n", "", "time-missing", "after line 1"),
        ("Date: Saturday 2027-06-12\n", "", "date-missing", "after line 1"),
        ("12 T1", "", "empty", "after line 1"),
        ("12 T1", "2 T9", "not-found", "line 6"),
        ("2027-06-12", "2026-06-13", "order-past", "line 3"),
    ],
)
def test_what_is_missing_is_asked_at_its_line(
    demo: Asked, write: Callable[[str], str], old: str, new: str, code: str, where: str
) -> None:
    answer = plan(demo, write(TWELVE.replace(old, new)))
    assert answer.exit_code == 3
    assert [(p.code, p.where) for p in answer.problems] == [(code, where)]
    assert answer.result.tasks == ()


def test_an_order_named_twice_is_asked(demo: Asked) -> None:
    answer = plan(demo, "101", "101")
    assert answer.exit_code == 3
    assert [p.code for p in answer.problems] == ["order-twice"]


def test_a_class_asks_when_its_cakes_stand_ready_and_offers_its_end(demo: Asked) -> None:
    answer = plan(demo, "CLASS7")
    (problem,) = answer.problems
    assert [(o.label, o.line) for o in problem.options] == [
        ("13:30, when it ends", "Hand-over: 13:30, pick-up")
    ]
    asked = replace(demo, answers=(f"{problem.where}={problem.options[0].line}",))
    result = plan(asked, "CLASS7").result
    assert [(o.name, o.what) for o in result.orders] == [("CLASS7", "10 F3")]
    assert len(result.loads) == 5


@pytest.mark.parametrize("name", ["T1", "F1"])
def test_what_is_no_order_is_said(demo: Asked, name: str) -> None:
    with pytest.raises(QuestionError) as error:
        plan(demo, name)
    assert error.value.problem.code == "no-order"


def test_a_plan_begins_no_earlier_than_it_is_told(demo: Asked) -> None:
    start = datetime(2027, 6, 10, 11)  # noqa: DTZ001
    result = plan(demo, "101", start=start).result
    assert result.first_start == datetime.fromisoformat("2027-06-10T11:00:00+02:00")


def test_the_day_asked_for_moves_the_clock(demo: Asked) -> None:
    result = plan(replace(demo, on=date(2027, 6, 1)), "101").result
    assert result.first_start == datetime.fromisoformat("2027-06-10T07:30:00+02:00")


def test_a_delivery_leaves_before_its_drive(demo: Asked, write: Callable[[str], str]) -> None:
    text = TWELVE.replace("12 T1", "1 T1").replace("pick-up", "delivery, 35 minutes' drive")
    assert plan(demo, write(text)).result.orders[0].ready.isoformat() == "2027-06-12T08:25:00+02:00"


def test_a_cake_that_cannot_rest_is_told(demo: Asked) -> None:
    codes = {notice.code: notice.text for notice in plan(demo, "102").notices}
    assert "F4 is cut for T3" in codes["not-rested"]
    assert "not-rested" not in {notice.code for notice in plan(demo, "101").notices}


def test_the_calendar_file_holds_the_work_and_reads_back(demo: Asked, tmp_path: Path) -> None:
    path = tmp_path / "plan.ics"
    result = plan(demo, "101", ics=path).result
    assert result.ics == str(path)
    events = icalendar.Calendar.from_ical(path.read_bytes()).walk("VEVENT")
    hands = [task for task in result.tasks if task.who is not None or "oven" in task.uses]
    assert [str(e["SUMMARY"]) for e in events] == [task.name for task in hands]
    assert [e.decoded("DTSTART") for e in events] == [task.start for task in hands]
    assert len({str(e["UID"]) for e in events}) == len(events)


def test_no_calendar_file_is_written_while_a_question_is_open(
    demo: Asked, write: Callable[[str], str], tmp_path: Path
) -> None:
    path = tmp_path / "plan.ics"
    plan(demo, write(TWELVE.replace("2027-06-12", "2026-06-13")), ics=path)
    assert not path.exists()


def test_the_same_request_gives_the_same_answer(demo: Asked) -> None:
    assert plan(demo, "102") == plan(demo, "102")


def test_a_formula_without_minutes_takes_those_of_the_model_or_asks(
    wide: Asked, write: Callable[[str], str]
) -> None:
    path = (wide.book or Path()) / "formulas" / "F2.txt"
    text = re.sub(r"Bake 32 to 38 minutes.*\n", "", path.read_text(encoding="utf-8"))
    path.write_text(text, encoding="utf-8")
    answer = plan(wide, write(TWELVE.replace("12 T1", "1 F2")))
    assert answer.exit_code == 0
    assert "bake-modelled" in {notice.code for notice in answer.notices}
    path.write_text(text.replace("Oven: 170 C, no fan\n", ""), encoding="utf-8")
    asked = plan(wide, write(TWELVE.replace("12 T1", "1 F2")))
    assert asked.exit_code == 3
    assert "bake-minutes-missing" in {problem.code for problem in asked.problems}
