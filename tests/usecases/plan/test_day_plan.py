"""The plan of the open orders, worked out only when asked, and its days."""

from datetime import date, timedelta
from pathlib import Path

import pytest

from krume.usecases import Asked, day_view, load_demo, plan_day_today, save_text
from krume.usecases.plan.day_plan import plan_today, planned_at

_THURSDAY = date(2027, 6, 10)


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def test_before_it_is_worked_out_a_day_names_its_orders_only(asked: Asked) -> None:
    view = day_view(_THURSDAY, asked)
    assert [row.name for row in view.orders] == ["102", "101"]
    assert view.plan is None
    assert view.planned is None
    assert plan_today(asked) is None


def test_worked_out_once_every_day_of_it_is_there(asked: Asked) -> None:
    view = day_view(_THURSDAY, asked, is_worked=True)
    assert view.planned is not None
    assert view.planned.svg.startswith("<svg")
    assert {task.start.date() for task in view.planned.tasks} == {_THURSDAY}
    friday = day_view(_THURSDAY + timedelta(days=1), asked)
    assert friday.plan is view.plan
    assert friday.planned is not None
    assert friday.planned.tasks
    assert plan_today(asked) is view.plan
    assert planned_at("101", asked) is view.plan


def test_an_edit_of_the_book_forgets_it(asked: Asked) -> None:
    day_view(_THURSDAY, asked, is_worked=True)
    text = "Order 9\nDate: 2027-06-12\nHand-over: 10:00, pick-up\n\n1 TART\n"
    save_text("order", "9", text, asked, seen=None)
    assert day_view(_THURSDAY, asked).plan is None


def test_an_order_that_cannot_be_planned_is_left_out_by_name(asked: Asked) -> None:
    text = "Order 9\nDate: 2027-06-12\nHand-over: 10:00, pick-up\n\n1 T9\n"
    save_text("order", "9", text, asked, seen=None)
    view = day_view(_THURSDAY, asked, is_worked=True)
    assert view.plan is not None
    assert [each.name for each in view.plan.left_out] == ["9"]
    assert "T9" in view.plan.left_out[0].why
    assert view.plan.answer.is_answered


def test_twelve_tortes_in_eight_places_name_the_limit_and_the_ways_out(asked: Asked) -> None:
    text = "Order 9\nDate: 2027-06-12\nHand-over: 9:00, pick-up\n\n12 T1\n"
    save_text("order", "9", text, asked, seen=None)
    view = day_view(_THURSDAY, asked, is_worked=True)
    assert view.plan is not None
    assert not view.plan.answer.is_possible
    assert "fridge" in view.plan.answer.problems[0].ask


def test_a_day_that_is_over_and_one_without_orders_have_no_work(asked: Asked) -> None:
    assert day_view(date(2027, 6, 1), asked, is_worked=True).orders == ()
    assert day_view(date(2027, 9, 1), asked).orders == ()
    assert plan_day_today(asked) == _THURSDAY
