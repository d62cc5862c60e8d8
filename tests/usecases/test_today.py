"""Today: the next thing with a clock on it, then what is held, then what to buy."""

from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from krume.store import KeptWeighing, begin_weighing, book_at, end_weighing, keep_row, start_clock
from krume.usecases import Asked, day_view, load_demo, save_text, today_of


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def test_an_empty_book_is_empty_and_nothing_is_next(tmp_path: Path) -> None:
    found = today_of(Asked(book=tmp_path / "none"))
    assert found.is_empty
    assert found.next.kind == "nothing"
    assert found.buy == ()


def test_without_a_plan_the_next_hand_over_is_next(asked: Asked) -> None:
    found = today_of(asked)
    assert (found.next.kind, found.next.figure, found.next.unit) == ("hand-over", "1", "day")
    assert found.next.name == "102"
    assert [row.name for row in found.held] == ["102", "101"]


def test_with_a_plan_its_next_start_is_next(asked: Asked) -> None:
    day_view(date(2027, 6, 10), asked, is_worked=True)
    found = today_of(asked).next
    assert (found.kind, found.figure) == ("start", "now")
    assert "8:00" in found.what
    assert found.tasks


def test_a_running_clock_goes_before_everything(asked: Asked) -> None:
    book = book_at(asked.book)
    begin_weighing(book, KeptWeighing("k", "formulas/F2.txt", 1, "2027-06-10", 1.0, "open"))
    assert today_of(asked).next.what == "Go on weighing F2"
    began = (datetime.now(UTC) - timedelta(minutes=3.5)).isoformat()
    start_clock(book, "c", kind="foam", weighing="k", at=began)
    found = today_of(asked).next
    assert (found.kind, found.figure, found.name) == ("foam", "3", "F2")
    end_weighing(book, "k", state="aside")
    assert today_of(asked).next.kind == "foam"


def test_only_the_nearest_orders_are_judged_and_the_others_counted(asked: Asked) -> None:
    for number in range(21):
        text = f"Order {number}\nDate: 2027-07-{number + 1:02d}\n\n1 F2\n"
        save_text("order", f"x{number}", text, asked, seen=None)
    found = today_of(asked)
    assert found.orders == 23
    assert found.later == 3
    assert len(found.held) + len(found.ready) == 20


def test_a_damaged_table_takes_nothing_else_of_the_day_away(asked: Asked) -> None:
    head = ("item", "pack_g", "where", "stock_g")
    keep_row(
        book_at(asked.book), "packs.csv", ("caster sugar", "much", "", ""), key=None, head=head
    )
    found = today_of(asked)
    assert found.buy == ()
    assert "much is no mass" in found.trouble
    assert [row.name for row in found.held] == ["102", "101"]
