"""A day's plan as a page, worked out only when that is asked."""

import pytest
from starlette.testclient import TestClient

from krume.usecases import Asked, save_text


@pytest.mark.parametrize(
    "date", ["x", "2027-6-10", "2027-13-01", "20270610", "2027-06-31", "9999-12-31", "0001-01-01"]
)
def test_a_bad_date_is_no_page(client: TestClient, date: str) -> None:
    assert client.get(f"/plan/{date}").status_code == 404


def test_before_it_is_worked_out_it_says_which_orders_have_work(own: TestClient) -> None:
    text = own.get("/plan/2027-06-10").text
    assert "Work out the day" in text
    assert "2 T2, 1 T3, 1 TART" in text
    assert '<svg viewBox="0 0 205' not in text


def test_worked_out_it_has_lanes_tasks_and_the_tightest_gap(own: TestClient) -> None:
    text = own.get("/plan/2027-06-10", params={"work": "1"}).text
    assert "first start" in text
    assert "Three lanes" in text or 'role="img"' in text
    assert "foam and fold: F1" in text
    assert "cannot move" in text
    assert "Tightest: hands" in text
    again = own.get("/plan/2027-06-11").text
    assert "stack and fill: T1" in again
    assert "Work out the day" not in again


def test_the_short_address_goes_to_the_books_today(client: TestClient) -> None:
    assert client.get("/plan").url.path == "/plan/2027-06-10"


def test_a_day_that_is_over_and_one_without_work_say_so(client: TestClient) -> None:
    assert "The day is over" in client.get("/plan/2027-06-01").text
    assert "No order needs work" in client.get("/plan/2027-09-01").text


def test_an_empty_book_has_a_plan_page_too(bare: TestClient) -> None:
    assert bare.get("/plan/2027-06-10").status_code == 200
    assert bare.get("/plan").status_code == 200


def test_what_does_not_fit_names_the_limit_and_the_ways_out(own: TestClient) -> None:
    asked: Asked = own.app.state.asked  # type: ignore[attr-defined]
    text = "Order 9\nDate: 2027-06-12\nHand-over: 9:00, pick-up\n\n12 T1\n"
    save_text("order", "9", text, asked, seen=None)
    text = own.get("/plan/2027-06-10", params={"work": "1"}).text
    assert "fit in the fridge" in text
    assert 'class="ways"' in text


def test_an_order_that_cannot_be_planned_is_named(own: TestClient) -> None:
    asked: Asked = own.app.state.asked  # type: ignore[attr-defined]
    text = "Order 9\nDate: 2027-06-12\nHand-over: 9:00, pick-up\n\n1 T9\n"
    save_text("order", "9", text, asked, seen=None)
    assert "9 is left out" in own.get("/plan/2027-06-10", params={"work": "1"}).text
