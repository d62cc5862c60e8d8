"""Timetable and shopping list of an order, and a plan that cannot be."""

import json

from krume.publish import Imprint
from krume.usecases import Asked
from krume.usecases.sheets.order_plan import plan_sheets
from tests.usecases.conftest import Made

IMPRINT = Imprint(date="2027-06-10", program="1", data="2")


def test_the_timetable_is_written_and_its_tightest_gap_is_the_check(sheets_101: Made) -> None:
    check = next(c for c in sheets_101.answer.result.checks if c.name == "timetable")
    assert check.passed is True
    sheet = json.loads((sheets_101.folder / "order-timetable.json").read_text("utf-8"))
    assert sheet["tightest"] in check.text
    assert "L-008" in sheet["hold"]["opens"]


def test_both_are_named_by_their_order(sheets_101: Made) -> None:
    of = {f.kind: f.of for f in sheets_101.answer.result.files}
    assert of["timetable"] == of["shopping-list"] == "Order 101"


def test_the_shopping_list_has_every_good_of_the_order_its_eggs_and_its_lots(
    sheets_101: Made,
) -> None:
    sheet = json.loads((sheets_101.folder / "shopping-list.json").read_text("utf-8"))
    rows = [row for part in sheet["parts"] if part["table"] for row in part["table"]["rows"]]
    by_name = {row[1]: row for row in rows}
    assert by_name["eggs EU M"][0] == "8"
    assert by_name["ground hazelnuts"] == [
        "40 g",
        "ground hazelnuts",
        "L-008, grams not said",
        "F1",
    ]
    assert by_name["butter"][2] == "not said"


def test_what_is_in_the_house_and_the_place_it_is_bought_are_the_books_own(
    own_demo: Asked,
) -> None:
    assert own_demo.book is not None
    packs = "item,pack_g,where,stock_g\nbuckwheat flour,500,mill,20\n"
    (own_demo.book / "packs.csv").write_text(packs, encoding="utf-8")
    files, _, _ = plan_sheets("101", None, own_demo, IMPRINT, "a5")
    sheet = json.loads(files["shopping-list.json"][1])
    mill = next(part for part in sheet["parts"] if part["heading"] == "mill")
    assert mill["table"]["rows"] == [["1 × 500 g", "buckwheat flour", "20 g, L-003", "F1"]]


def test_an_order_that_does_not_fit_has_a_list_but_no_timetable(own_demo: Asked) -> None:
    assert own_demo.book is not None
    path = own_demo.book / "orders" / "101.txt"
    path.write_text(
        path.read_text("utf-8").replace("1 T1", "12 T1").replace("14:00", "09:00"), encoding="utf-8"
    )
    files, (check,), _ = plan_sheets("101", None, own_demo, IMPRINT, "letter")
    assert check.passed is False
    assert "8 of 12" in check.text
    assert {kind for (kind, _), _ in files.values()} == {"shopping-list"}
