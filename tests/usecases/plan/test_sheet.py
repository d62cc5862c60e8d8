"""The timetable of a plan: a day a page, nothing of the plan lost on the way to paper."""

import io
import json

import pytest
from pypdf import PdfReader

from krume.publish import Imprint
from krume.usecases import Asked, PlanResult, PlanWish, plan_orders
from krume.usecases.plan.sheet import timetable_files, timetable_sheet

IMPRINT = Imprint("2027-06-10", "0.1.0", "abc", notes=("balanced on paper, not baked",))


def planned(asked: Asked, *names: str) -> PlanResult:
    return plan_orders(names, PlanWish(), asked).result


@pytest.mark.parametrize("names", [("101",), ("101", "102")])
def test_every_task_by_hand_and_every_load_is_in_its_lane(
    demo: Asked, names: tuple[str, ...]
) -> None:
    plan = planned(demo, *names)
    sheet = timetable_sheet(plan, IMPRINT)
    tasks = [task for day in sheet.days for task in day.tasks]
    hands = [(task.start, task.words) for task in tasks if task.lane == "hands"]
    assert hands == [(t.start, t.name) for t in plan.tasks if t.who is not None]
    loads = [task for task in tasks if task.lane == "oven" and task.bold]
    assert len(loads) == len(plan.loads)
    marks = [mark.at for day in sheet.days for mark in day.marks]
    assert sorted(marks) == sorted(
        [m for load in plan.loads for m in (load.first_check, load.latest_out)]
    )


def test_solid_is_what_cannot_move(demo: Asked) -> None:
    plan = planned(demo, "101")
    looks = {t.words: t.look for d in timetable_sheet(plan, IMPRINT).days for t in d.tasks}
    assert looks["foam and fold: F1"] == "solid"
    assert looks["weigh and line: F1"] == "hatched"


def test_racks_do_not_stand_in_one_another(demo: Asked) -> None:
    for day in timetable_sheet(planned(demo, "101", "102"), IMPRINT).days:
        racks = [task for task in day.tasks if task.lane == "rack"]
        for one in racks:
            for other in racks:
                if one is not other and one.place == other.place:
                    assert one.end <= other.start or other.end <= one.start


def test_the_tortes_of_a_night_are_counted_against_the_places(demo: Asked) -> None:
    days = timetable_sheet(planned(demo, "101", "102"), IMPRINT).days
    counted = [None if day.places is None else (day.places.takes, day.places.has) for day in days]
    assert counted == [(4, 8), (1, 8), None]


def test_the_list_holds_everything_to_buy_eggs_first(demo: Asked) -> None:
    plan = planned(demo, "101")
    (group,) = timetable_sheet(plan, IMPRINT).groups
    assert group.rows[0].name == "eggs EU M" and group.rows[0].amount == "8"
    assert [row.name for row in group.rows[1:]] == [row.name for row in plan.shopping]


def test_a_plan_that_rests_on_what_is_not_there_says_so(demo: Asked) -> None:
    text = "Order 12\nDate: Saturday 2027-06-12\nHand-over: 09:00\n\n12 T1\n"
    asked = Asked(book=demo.book, typed=text.encode())
    (warning,) = timetable_sheet(planned(asked, "-"), IMPRINT).warnings
    assert warning.startswith("8 of 12 fit in the fridge.")
    assert "This is no plan before 12 places" in warning


def test_the_files_are_a_pdf_a_page_and_json(demo: Asked) -> None:
    sheet = timetable_sheet(planned(demo, "101"), IMPRINT)
    files = timetable_files(sheet, "101", "a5")
    assert list(files) == [f"101-timetable.{end}" for end in ("pdf", "html", "json")]
    assert len(PdfReader(io.BytesIO(files["101-timetable.pdf"])).pages) == 3
    assert json.loads(files["101-timetable.json"])["days"][0]["name"] == "Thursday 10 June"
