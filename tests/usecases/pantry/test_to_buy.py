"""What must be bought, what stops an order first."""

from pathlib import Path

import pytest

from krume.store import book_at, keep_row
from krume.usecases import Asked, ToBuy, load_demo, orders_of, save_text, standing_of
from krume.usecases.pantry.to_buy import to_buy


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def _list(asked: Asked) -> tuple[ToBuy, ...]:
    return to_buy(tuple(standing_of(row, asked) for row in orders_of(asked)), asked)


def test_the_lot_that_shuts_a_gate_is_first_then_eggs(asked: Asked) -> None:
    found = _list(asked)
    assert (found[0].what, found[0].need, found[0].stops) == (
        "ground hazelnuts, tested lot", "40", ("101",),
    )  # fmt: skip
    assert "L-008" in found[0].house
    eggs = [row for row in found if row.what.startswith("eggs")]
    assert [(row.what, row.buy) for row in eggs] == [("eggs, EU L", "4"), ("eggs, EU M", "17")]


def test_what_the_book_says_no_stock_of_is_not_urgent(asked: Asked) -> None:
    found = {row.what: row for row in _list(asked)}
    assert not found["caster sugar"].is_urgent
    assert found["caster sugar"].house == "not said"


def test_a_stock_that_is_short_is_urgent_and_bought_in_packs(asked: Asked) -> None:
    head = ("item", "pack_g", "where", "stock_g")
    row = ("caster sugar", "1000", "market", "100")
    keep_row(book_at(asked.book), "packs.csv", row, key=None, head=head)
    found = {row.what: row for row in _list(asked)}
    assert found["caster sugar"].is_urgent
    assert (found["caster sugar"].buy, found["caster sugar"].buy_unit) == ("1", "pack")


def test_an_order_that_cannot_be_read_does_not_hide_the_others(asked: Asked) -> None:
    text = "Order 9\nDate: 2027-06-12\nHand-over: 10:00\n\n1 T9\n"
    save_text("order", "9", text, asked, seen=None)
    assert any(row.what == "caster sugar" for row in _list(asked))


def test_no_orders_buy_nothing(asked: Asked) -> None:
    assert to_buy((), asked) == ()
