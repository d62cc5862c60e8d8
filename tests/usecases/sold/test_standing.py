"""How each order of a book stands, the one missing thing first."""

from pathlib import Path

import pytest

from krume.usecases import Asked, OrderStanding, load_demo, orders_of, save_text, standing_of


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def _standing(name: str, asked: Asked) -> OrderStanding:
    return standing_of(next(row for row in orders_of(asked) if row.name == name), asked)


def test_orders_come_by_date_and_say_what_they_are(asked: Asked) -> None:
    rows = orders_of(asked)
    assert [(row.name, row.what) for row in rows] == [
        ("102", "2 T2, 1 T3, 1 TART"),
        ("101", "1 T1"),
    ]
    assert rows[1].customer == "M. Tarrow"
    assert rows[1].state is None


def test_a_guest_with_coeliac_disease_holds_an_order_with_an_untested_lot(asked: Asked) -> None:
    found = _standing("101", asked)
    assert found.state == "held"
    assert "gate shut" in found.missing
    assert "L-008" in found.more


def test_no_nuts_and_a_walnut_torte_stand_against_each_other(asked: Asked) -> None:
    found = _standing("102", asked)
    assert found.state == "against itself"
    assert "T3 with walnut" in found.missing


def test_a_torte_that_is_not_in_the_book_is_asked_about(asked: Asked) -> None:
    save_text("order", "9", "Order 9\nDate: 2027-06-14\n\n1 T9\n", asked, seen=None)
    found = _standing("9", asked)
    assert found.state == "asked"
    assert "T9" in found.missing


def test_what_is_over_is_past_and_not_judged(asked: Asked) -> None:
    save_text("order", "8", "Order 8\nDate: 2027-06-09\n\n1 T1\n", asked, seen=None)
    assert _standing("8", asked).state == "past"


def test_an_open_line_is_a_question_and_an_empty_order_asks_what(asked: Asked) -> None:
    save_text("order", "7", "Order 7\nDate: some day\n\n1 F2\n", asked, seen=None)
    save_text("order", "6", "Order 6\nDate: 2027-06-14\n", asked, seen=None)
    assert _standing("7", asked).missing == "1 question is open"
    assert "1 T1" in _standing("6", asked).more


def test_an_order_without_a_diet_and_a_question_is_stopped_by_nothing(asked: Asked) -> None:
    text = "Order 5\nDate: 2027-06-14\nHand-over: 10:00, pick-up\n\n1 T1\n"
    save_text("order", "5", text, asked, seen=None)
    assert _standing("5", asked).state == "ready"
