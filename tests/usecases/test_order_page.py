"""One order with its five questions, each answered or not."""

from datetime import date
from pathlib import Path

import pytest

from krume.usecases import Asked, OrderQuestion, day_view, load_demo, order_view, save_text


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def _questions(name: str, asked: Asked) -> dict[str, OrderQuestion]:
    return {each.key: each for each in order_view(name, asked).questions}


def test_the_demo_order_is_sized_and_priced_and_its_diet_is_held(asked: Asked) -> None:
    found = _questions("101", asked)
    assert list(found) == ["sized", "timed", "priced", "diets", "labels"]
    assert found["sized"].is_answered is True
    assert "0.5 C1" in found["sized"].text
    assert found["priced"].is_answered is True
    assert "27.43 for an hour of your work" in found["priced"].text
    assert found["diets"].is_answered is False
    assert "L-008" in found["diets"].opens[0]
    assert found["labels"].is_answered is False
    assert "vanilla extract" in found["labels"].opens[0]


def test_it_is_timed_once_a_plan_was_worked_out(asked: Asked) -> None:
    before = _questions("101", asked)["timed"]
    assert before.is_answered is None
    day_view(date(2027, 6, 11), asked, is_worked=True)
    after = _questions("101", asked)["timed"]
    assert after.is_answered is True
    assert "Saturday 14:00" in after.text


def test_a_walnut_torte_stands_against_no_nuts_and_no_price_is_agreed(asked: Asked) -> None:
    found = _questions("102", asked)
    assert found["diets"].word == "against itself"
    assert found["priced"].is_answered is None
    assert "Full cost 350.24" in found["priced"].text


def test_pieces_have_their_slices_and_guests_count_where_there_is_one_torte(asked: Asked) -> None:
    (piece,) = order_view("101", asked).pieces
    assert [(n, round(mass, 1)) for n, mass in piece.slices] == [(12, 99.6), (14, 85.3)]
    assert [count for count, _ in order_view("102", asked).pieces[0].slices] == [12]


def test_too_few_slices_are_said(asked: Asked) -> None:
    text = "Order 9\nDate: 2027-06-14\nHand-over: 10:00\nFor: 40 people\n\n1 T1\n1 T2\n"
    save_text("order", "9", text, asked, seen=None)
    found = _questions("9", asked)["sized"]
    assert found.is_answered is False
    assert "26 slices at most for 40 people: 14 short" in found.text


def test_an_order_for_something_unknown_waits_for_that(asked: Asked) -> None:
    save_text("order", "9", "Order 9\nDate: 2027-06-14\n\n1 T9\n", asked, seen=None)
    view = order_view("9", asked)
    assert view.answered == 0
    assert "T9" in view.problems[0].ask
    assert view.problems[0].where == "line 4"
    assert view.diet_box == "not read yet"


def test_a_price_below_the_full_cost_is_no_answer(asked: Asked) -> None:
    text = "Order 9\nDate: 2027-06-14\nHand-over: 10:00\nPrice: 70\n\n1 T1\n"
    save_text("order", "9", text, asked, seen=None)
    found = _questions("9", asked)["priced"]
    assert (found.is_answered, found.word) == (False, "below its full cost")
