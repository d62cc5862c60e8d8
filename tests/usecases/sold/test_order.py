"""An order judged: diets, contradictions, holds, and the sentence said back."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from krume.usecases import Answer, Asked, make_sheets
from krume.usecases.keep.keep import keep_of
from krume.usecases.label.label import LabelWish, label_of
from krume.usecases.plan.plan import PlanWish, plan_orders
from krume.usecases.sold.order import OrderJudgement, judge_order
from krume.usecases.sold.product import sold_of


def _judged(name: str, asked: Asked) -> OrderJudgement:
    read = sold_of(name, asked)
    assert read.order is not None
    return judge_order(read, read.order, asked)


def test_a_guest_with_coeliac_disease_holds_a_torte_whose_gate_is_shut(demo: Asked) -> None:
    judged = _judged("101", demo)
    (hold,) = judged.holds
    assert judged.problems == ()
    assert "L-008" in hold.text and "may contain wheat" in hold.text
    assert "L-008" in hold.opens and "cleaning record" in hold.opens
    assert judged.confirmation.startswith("Not to be confirmed while it is held")
    assert judged.diet_box == "without gluten: “One guest has coeliac disease.”"


def test_no_nuts_stops_a_walnut_torte_with_one_question(demo: Asked) -> None:
    judged = _judged("102", demo)
    (problem,) = judged.problems
    assert problem.where == "line 9" and problem.read == "1 T3"
    for word in ("walnut", "TART", "hazelnut"):
        assert word in problem.ask
    assert [option.label for option in problem.options] == ["Leave T3 out"]
    for option in problem.options:
        answered = replace(demo, answers=(f"line 9={option.line}",))
        assert _judged("102", answered).problems == ()


def test_what_may_hold_nuts_stays_a_hold_when_the_torte_is_left_out(demo: Asked) -> None:
    judged = _judged("102", replace(demo, answers=("line 9=Note: 1 T3, left out",)))
    assert any("TART may contain nuts" in hold.text for hold in judged.holds)
    assert any("Made where nuts are used" in said for said in judged.cautions)


PLAIN = """\
Order 7
Date: 2027-06-12
Hand-over: 14:00, pick-up
For: 10 people
{notes}
1 T1
"""


def test_no_diet_is_said_to_be_none_stated_and_never_left_empty(
    write: Callable[[str], str], demo: Asked
) -> None:
    judged = _judged(write(PLAIN.format(notes="")), demo)
    assert judged.diet_box == "none stated"
    assert "Diet: none stated" in judged.confirmation
    assert judged.holds == () and judged.problems == ()


def test_flowers_are_asked_and_come_off_before_eating(
    write: Callable[[str], str], demo: Asked
) -> None:
    judged = _judged(write(PLAIN.format(notes="Notes: fresh flowers on top\n")), demo)
    assert any("Remove before eating" in said for said in judged.cautions)
    assert judged.diet_box.startswith("none stated. The notes say:")


@pytest.mark.parametrize("word", ["2027-06-12 at 14:00", "Price 96.00", "5 °C", "coeliac"])
def test_the_sentence_said_back_repeats_day_price_cold_and_diet(word: str, demo: Asked) -> None:
    assert word in _judged("101", demo).confirmation


def test_an_answer_to_the_order_touches_no_other_text(demo: Asked, tmp_path: Path) -> None:
    answered = replace(demo, answers=("line 9=Note: 1 T3, left out",))
    answer = make_sheets("102", answered, out=tmp_path / "out")
    assert answer.exit_code == 0, answer.problems
    assert not any("T3" in file.of for file in answer.result.files)


def test_notes_that_name_no_diet_stand_in_the_box_to_be_read(
    write: Callable[[str], str], demo: Asked
) -> None:
    judged = _judged(write(PLAIN.format(notes="Notes: write Anna on it\n")), demo)
    assert judged.diet_box == "none stated. The notes say: “write Anna on it”"


def test_an_order_for_a_day_that_is_over_is_asked(write: Callable[[str], str], demo: Asked) -> None:
    past = PLAIN.format(notes="").replace("2027-06-12", "2027-06-09")
    (problem,) = _judged(write(past), demo).problems
    assert (problem.code, problem.where) == ("order-past", "line 2")


@pytest.mark.parametrize("question", [keep_of, label_of])
def test_what_stops_an_order_is_said_beside_every_answer_about_it(
    question: Callable[..., Answer[object]], demo: Asked
) -> None:
    wish = (LabelWish(),) if question is label_of else ()
    codes = {notice.code for notice in question("102", *wish, demo).notices}
    assert "order-stops" in codes
    held = {notice.code for notice in question("101", *wish, demo).notices}
    assert "order-held" in held and "order-stops" not in held


@pytest.mark.parametrize(
    ("notes", "is_clear"),
    [
        ("", True),
        ("Notes: sans noix\n", None),
        ("Notes: low sugar\n", None),
        ("Notes: coeliac\n", False),
        ("Notes: pregnant guests, no raw egg\n", True),
    ],
)
def test_a_tick_is_given_only_where_everything_was_understood(
    write: Callable[[str], str], demo: Asked, notes: str, is_clear: bool | None
) -> None:
    assert _judged(write(PLAIN.format(notes=notes)), demo).is_diet_clear is is_clear


def test_nuts_in_the_kitchen_are_said_back_and_never_ticked(
    write: Callable[[str], str], demo: Asked
) -> None:
    text = PLAIN.format(notes="Notes: nut allergy\n").replace("1 T1", "1 T2")
    judged = _judged(write(text), demo)
    assert judged.problems == () and judged.is_diet_clear is None
    assert "Made where nuts are used: hazelnut, walnut" in judged.confirmation


def test_a_plan_of_an_order_that_stops_says_so(demo: Asked) -> None:
    notices = plan_orders(("102",), PlanWish(), demo).notices
    assert "order-stops" in {notice.code for notice in notices}
