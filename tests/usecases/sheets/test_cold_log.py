"""The cold log of a torte or an order: which creams, which limits, which logs, which hours."""

import pytest

from krume.properties import constants
from krume.usecases import Asked
from krume.usecases.sheets.cold_log import book_logs, cold_log_of, cooling_limits
from krume.usecases.sold.order import judge_order
from krume.usecases.sold.product import sold_of
from tests.agreement import reads


def test_the_limits_are_those_of_the_table() -> None:
    rows, limits = constants("keeping.csv"), cooling_limits()
    assert limits.start_c == rows["cooling-start"]
    assert limits.middle_c == rows["cooling-middle"]
    assert limits.end_c == rows["cooling-end"]
    assert limits.first_h == rows["cooling-first-h"]
    assert limits.total_h == rows["cooling-total-h"]
    assert "3-501.14" in limits.rule


@pytest.mark.source("fda-food-code-2022", "3-501.14")
def test_the_two_stages_are_the_codes_own() -> None:
    limits = cooling_limits()
    stages = f"{limits.start_c:g} to {limits.middle_c:g} in {limits.first_h:g}"
    assert reads(f"{stages}, to {limits.end_c:g} in {limits.total_h:g}", "57 to 21 in 2, to 5 in 6")


def test_cakes_are_not_logged_and_every_cream_is(demo: Asked) -> None:
    log = cold_log_of(sold_of("T1", demo), None, demo)
    assert log is not None
    said = [text.partition(" ")[0] for text in (*log.cooked, *log.raw)]
    assert sorted(said) == ["C1", "C5", "S1"]
    assert log.cooked[0] == "C1 Vanilla custard cream"


def test_a_cream_of_which_no_step_says_how_hot_it_gets_is_logged_as_cooked(demo: Asked) -> None:
    log = cold_log_of(sold_of("T3", demo), None, demo)
    assert log is not None
    assert "C4 Blackcurrant jelly" in log.cooked
    assert log.raw == ("C2 Set yoghurt cream",)


def test_a_log_of_custard_says_which_depth_is_predicted_and_that_it_shows_nothing(
    demo: Asked,
) -> None:
    log = cold_log_of(sold_of("T1", demo), None, demo)
    assert log is not None
    assert log.predicted.startswith(
        "C1, predicted to cool in time with room to spare, no evidence:"
    )
    assert "metal tray in the fridge up to 1.5 cm" in log.predicted
    jelly = cold_log_of(sold_of("T3", demo), None, demo)
    assert jelly is not None
    assert jelly.predicted == ""


def test_a_formula_alone_has_no_log(demo: Asked) -> None:
    assert cold_log_of(sold_of("C1", demo), None, demo) is None


def test_the_hours_are_the_orders_own_and_none_are_made_up(demo: Asked) -> None:
    read = sold_of("102", demo)
    assert read.order is not None
    log = cold_log_of(read, judge_order(read, read.order, demo), demo)
    assert log is not None
    assert "2.5 of 4" in log.warm[0]
    alone = cold_log_of(sold_of("T1", demo), None, demo)
    assert alone is not None
    assert "no way is said" in alone.warm[0]


def test_the_books_logs_are_judged_and_only_those_of_its_creams_are_told(demo: Asked) -> None:
    log_t1 = cold_log_of(sold_of("T1", demo), None, demo)
    log_t3 = cold_log_of(sold_of("T3", demo), None, demo)
    assert log_t1 is not None
    assert log_t3 is not None
    assert [(each.log, each.verdict) for each in log_t1.earlier] == [("A", "pass"), ("B", "fail")]
    assert log_t3.earlier == ()


@pytest.mark.parametrize(
    "rows",
    [
        "A,C1,0,57,x\n",
        "A,C1,0,57,x\nA,C1,warm,20,x\n",
        "A,C1,0,57,x\nA,C1,1,,x\n",
        "A,C1,2,57,x\nA,C1,1,20,x\n",
        "A,C1,0,57,x\nA,C1,1,9000,x\n",
        "A,C1\n",
    ],
)
def test_a_log_that_cannot_be_read_shows_nothing(own_demo: Asked, rows: str) -> None:
    assert own_demo.book is not None
    head = "log,formula,time_h,temp_c,status\n"
    (own_demo.book / "cooling.csv").write_text(head + rows, encoding="utf-8")
    (log,) = book_logs(own_demo)
    assert (log.verdict, log.reason, log.stage_1_h) == ("fail", "not-shown", None)


def test_no_table_of_logs_is_no_log(bare: Asked) -> None:
    assert book_logs(bare) == ()
