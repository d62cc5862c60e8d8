"""Orders as a person types them."""

import datetime
from decimal import Decimal
from importlib.resources import files

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.build import Order, formula_names, read_order, read_torte


def demo_text(folder: str, name: str) -> str:
    return files("krume").joinpath("data", "demo", folder, f"{name}.txt").read_text("utf-8")


def demo(name: str) -> Order:
    read = read_order(demo_text("orders", name))
    assert read.problems == ()
    assert read.notices == ()
    return read.value


def test_an_order_says_who_when_how_and_what() -> None:
    order = demo("101")
    assert (order.name, order.customer) == ("Order 101", "M. Tarrow")
    assert order.date == datetime.date(2027, 6, 12)
    assert order.hand_over is not None
    assert order.hand_over.time == datetime.time(14, 0)
    assert (order.hand_over.way, order.hand_over.drive_min) == ("pick-up", 35.0)
    assert (order.people, order.price) == (14, Decimal("96.00"))
    assert order.notes == ("One guest has coeliac disease.",)
    assert [(line.count, line.what) for line in order.lines] == [(1, "T1")]


def test_an_order_without_a_price_has_none() -> None:
    order = demo("102")
    assert order.price is None
    assert order.people == 40
    assert [(line.count, line.what) for line in order.lines] == [(2, "T2"), (1, "T3"), (1, "TART")]
    assert order.hand_over is not None
    assert order.hand_over.read == "10:30, delivery, room without a fridge until 13:00"
    assert (order.hand_over.way, order.hand_over.drive_min) == ("delivery", None)


def test_an_order_leads_to_its_formulas() -> None:
    (line,) = demo("101").lines
    torte = read_torte(demo_text("tortes", line.what)).value
    assert formula_names(torte) == ("F1", "C1", "C5", "S1")


def test_a_class_is_read_as_an_order_of_kits() -> None:
    read = read_order(demo_text("classes", "CLASS7"))
    assert read.problems == ()
    assert [(line.count, line.what) for line in read.value.lines] == [(10, "F3")]
    assert read.value.keys["learners"] == "8"


def with_key(words: str) -> Order:
    read = read_order(f"Order 9\nDate: 2027-06-12\n{words}\n\n1 T1")
    assert read.problems == ()
    return read.value


@pytest.mark.parametrize(
    ("words", "price", "currency"),
    [
        ("Price: 96", "96", ""),
        ("Price: 96,50", "96.50", ""),
        ("Price: € 96.50", "96.50", "€"),
        ("Price: 96.50 crowns", "96.50", "crowns"),
    ],
)
def test_a_price_keeps_its_cents_and_its_sign(words: str, price: str, currency: str) -> None:
    order = with_key(words)
    assert (order.price, order.currency) == (Decimal(price), currency)


@pytest.mark.parametrize(
    ("words", "code", "where", "options"),
    [
        (
            "Date: 03/04/27",
            "date-ambiguous",
            "line 2",
            ["Date: Saturday 2027-04-03", "Date: Thursday 2027-03-04"],
        ),
        ("Date: 31/02/27", "date-unread", "line 2", []),
        ("Date: soon", "date-unread", "line 2", []),
        ("Date: Sunday 2027-06-12", "weekday-differs", "line 2", ["Date: Saturday 2027-06-12"]),
        ("For: 10-12 people", "people-unread", "line 2", ["For: 10 people", "For: 12 people"]),
        ("For: the family", "people-unread", "line 2", []),
        ("Price: a fair one", "price-unread", "line 2", []),
        ("Price: -4", "price-unread", "line 2", []),
        ("Hand-over: in the afternoon", "time-missing", "line 2", []),
        ("Hand-over: 24:00", "time-missing", "line 2", []),
    ],
)
def test_what_an_order_leaves_open_is_asked(
    words: str, code: str, where: str, options: list[str]
) -> None:
    date = "" if words.startswith("Date") else "Date: 2027-06-12\n"
    (problem,) = read_order(f"Order 9\n{words}\n{date}\n1 T1").problems
    assert (problem.code, problem.where, problem.read) == (code, where, words)
    assert [option.line for option in problem.options] == options


def test_a_date_in_doubt_is_not_taken() -> None:
    assert read_order("Order 9\nDate: 03/04/27\n\n1 T1").value.date is None
    assert read_order("Order 9\nDate: Sunday 2027-06-12\n\n1 T1").value.date is None


def test_an_order_without_a_date_is_asked_for_one() -> None:
    (problem,) = read_order("Order 9\n\n1 T1").problems
    assert (problem.code, problem.where) == ("date-missing", "after line 1")


@pytest.mark.parametrize(
    ("words", "count", "what"),
    [("2 x T2", 2, "T2"), ("2x T2", 2, "T2"), ("3 Orl hazel torte", 3, "Orl hazel torte")],
)
def test_how_many_of_what(words: str, count: int, what: str) -> None:
    (line,) = read_order(f"Order 9\nDate: 2027-06-12\n\n{words}").value.lines
    assert (line.count, line.what, line.read) == (count, what, words)


def test_a_bare_name_is_one_and_it_is_said() -> None:
    read = read_order("Order 9\nDate: 2027-06-12\n\nT1")
    assert [(line.count, line.what) for line in read.value.lines] == [(1, "T1")]
    assert [notice.code for notice in read.notices] == ["one-taken"]


@pytest.mark.parametrize("words", ["please with candles", "0 T1", "99999999999 T1", "1e9 T1"])
def test_a_line_that_is_no_order_is_asked_and_may_be_a_note(words: str) -> None:
    read = read_order(f"Order 9\nDate: 2027-06-12\n\n1 T1\n{words}")
    (problem,) = read.problems
    assert problem.code == "order-line-unread"
    assert len(read.value.lines) == 1
    answered = read_order(f"Order 9\nDate: 2027-06-12\n\n1 T1\n{problem.options[0].line}")
    assert answered.problems == ()
    assert answered.value.notes == (words,)


@given(st.text(max_size=300))
def test_no_text_makes_the_reader_raise_and_no_line_is_lost(text: str) -> None:
    kept = [line.text for line in read_order(text).value.source_lines]
    assert kept == [line.strip() for line in text.lstrip("\ufeff").splitlines()]
