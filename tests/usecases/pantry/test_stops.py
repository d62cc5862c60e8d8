"""What the pantry stops, against the demo's own table of closed gates."""

from pathlib import Path

import pytest

from krume.usecases import Asked, add_row, load_demo, save_text
from krume.usecases.book.rows import save_row, table_now
from krume.usecases.pantry.stops import LOOKED_AT, stops_of


@pytest.fixture
def kept(tmp_path: Path) -> Asked:
    """A demo book with a database, which the test may change."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def test_the_held_order_stands_first_then_the_sentences_that_stay_off(kept: Asked) -> None:
    stops = stops_of(kept).lots
    assert [stop.lot for stop in stops] == ["L-008", "L-004", "L-012", "L-013"]
    assert [stop.state for stop in stops] == ["conflict", "expired", "missing", "missing"]
    assert [(o.name, o.things, o.is_held) for o in stops[0].orders] == [("101", ("T1",), True)]
    assert [(o.name, o.things, o.is_held) for o in stops[1].orders] == [("102", ("T2",), False)]
    assert [(o.name, o.things, o.is_held) for o in stops[2].orders] == [("102", ("TART",), False)]


def test_a_valid_test_of_the_lot_opens_it(kept: Asked) -> None:
    row = next(r for r in table_now("lots.csv", kept).rows if r.get("lot") == "L-008")
    assert row.key is not None
    cells = {"evidence": "lab test", "text": "lab test of the lot", "result_mg_kg": "<5",
             "valid_to": "2028-04-04"}  # fmt: skip
    save_row("lots.csv", row.key, cells, kept, seen=row.revision)
    assert "L-008" not in [stop.lot for stop in stops_of(kept).lots]


def test_an_order_is_judged_on_its_own_day(kept: Asked) -> None:
    row = next(r for r in table_now("lots.csv", kept).rows if r.get("lot") == "L-009")
    assert row.key is not None
    save_row("lots.csv", row.key, {"valid_to": "2027-06-10"}, kept, seen=row.revision)
    found = {stop.lot: stop for stop in stops_of(kept).lots}
    assert found["L-009"].state == "expired"
    assert [order.things for order in found["L-009"].orders] == [("T3",)]


def test_goods_without_a_lot_stop_by_their_name(kept: Asked) -> None:
    text = "Order 7\nDate: 2027-06-20\n\n1 P1\n"
    formula = "Nut cake\nTin: round 20 x 7 cm\nEggs: EU M\n\n100 g ground pistachios\n5 eggs\n"
    save_text("formula", "P1", formula, kept, seen=None)
    save_text("order", "7", text, kept, seen=None)
    bare = [stop for stop in stops_of(kept).lots if stop.lot is None]
    assert [stop.ingredient for stop in bare] == ["ground pistachios"]
    assert bare[0].state == "missing"


def test_what_the_house_has_too_little_of_stops_its_orders(kept: Asked) -> None:
    assert not stops_of(kept).has_stock
    head = ("item", "pack_g", "stock_g", "where")
    add_row("packs.csv", {"item": "ground walnuts", "stock_g": "100"}, kept, head=head)
    add_row("packs.csv", {"item": "buckwheat flour", "stock_g": "5000"}, kept, head=head)
    stops = stops_of(kept)
    assert stops.has_stock
    assert [(s.item, s.need_g, s.short_g) for s in stops.stock] == [("ground walnuts", 115, 15)]
    assert stops.stock[0].orders == ("102",)


def test_stock_that_cannot_be_read_is_not_known(kept: Asked) -> None:
    head = ("item", "stock_g")
    add_row("packs.csv", {"item": "ground walnuts", "stock_g": "some"}, kept, head=head)
    assert stops_of(kept).stock == ()
    assert not stops_of(kept).has_stock


def test_an_order_that_names_nothing_known_is_said_to_be_unread(kept: Asked) -> None:
    save_text("order", "9", "Order 9\nDate: 2027-06-20\n\n1 NOTHERE\n", kept, seen=None)
    stops = stops_of(kept)
    assert stops.unread == ("9",)
    assert [stop.lot for stop in stops.lots] == ["L-008", "L-004", "L-012", "L-013"]


def test_only_the_next_orders_are_looked_at_and_the_rest_counted(kept: Asked) -> None:
    for number in range(LOOKED_AT):
        text = f"Order 2{number:02}\nDate: 2027-07-{number + 1:02}\n\n1 T3\n"
        save_text("order", f"2{number:02}", text, kept, seen=None)
    stops = stops_of(kept)
    assert (stops.orders, stops.later) == (LOOKED_AT, 2)


def test_orders_that_are_over_stop_nothing(kept: Asked) -> None:
    text = "Order 5\nDate: 2027-06-01\n\n1 F2\n"
    save_text("order", "5", text, kept, seen=None)
    assert "L-002" not in [stop.lot for stop in stops_of(kept).lots]


def test_an_empty_book_stops_nothing(bare: Asked) -> None:
    stops = stops_of(bare)
    assert (stops.lots, stops.stock, stops.orders, stops.unread) == ((), (), 0, ())
