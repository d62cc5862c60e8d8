"""The files of an order: its sheet in three forms, what was checked, its price, its labels."""

from pathlib import Path

from krume.publish import Imprint
from krume.store import book_at, studio_of
from krume.usecases import Asked, TraceWish, load_demo, make_sheets, trace_of
from krume.usecases.sheets.imprint import imprint_of
from krume.usecases.sheets.order_files import label_files, order_files, price_check
from krume.usecases.sold.order import judge_order
from krume.usecases.sold.product import sold_of
from tests.usecases.conftest import Made


def _order(book: Path, name: str, text: str) -> str:
    path = book / "orders" / f"{name}.txt"
    path.write_text(text, encoding="utf-8")
    return str(path)


def test_an_orders_sheets_carry_its_hold_and_name_what_opens_it(sheets_101: Made) -> None:
    answer = sheets_101.answer
    assert answer.exit_code == 0
    kinds = {file.kind for file in answer.result.files}
    assert {
        "order-sheet",
        "torte-plan",
        "bench-card",
        "blend-card",
        "cold-log",
        "gluten-page",
        "index",
    } <= kinds
    (hold,) = answer.result.held
    assert "L-008" in hold.opens
    for file in answer.result.files:
        if file.format == "html":
            assert "L-008" in Path(file.path).read_text(encoding="utf-8"), file.path


def test_the_order_sheet_has_room_for_a_lot_code_until_one_is_given(
    sheets_101: Made, tmp_path: Path
) -> None:
    (sheet,) = sheets_101.folder.glob("order-sheet.html")
    assert "T1: ____________" in sheet.read_text(encoding="utf-8")
    own = Asked(book=tmp_path / "book")
    load_demo(own)
    trace_of("101", TraceWish(is_kept=True), own)
    read, order = sold_of("101", own), sold_of("101", own).order
    assert order is not None
    files = order_files("101", judge_order(read, order, own), own, _imprint(own), "a4")
    _, data = files["order-sheet.html"]
    assert b"T1: L270610-1" in data


def _imprint(asked: Asked) -> Imprint:
    return imprint_of(studio_of(book_at(asked.book)), asked, is_of_book=True)


def test_a_contradiction_writes_nothing(demo: Asked, tmp_path: Path) -> None:
    answer = make_sheets("102", demo, out=tmp_path / "out")
    assert answer.exit_code == 3
    assert [problem.code for problem in answer.problems] == ["diet-contradiction"]
    assert not (tmp_path / "out").exists()


def test_the_checks_say_what_was_judged(sheets_101: Made) -> None:
    checks = {c.name: c for c in sheets_101.answer.result.checks}
    assert checks["diet"].passed is False
    assert checks["cold"].passed is True


def test_the_price_is_held_against_the_full_cost(sheets_101: Made) -> None:
    check = next(c for c in sheets_101.answer.result.checks if c.name == "price")
    assert check.passed is True
    for figure in ("96.00", "62.63", "88.46", "7.9 %"):
        assert figure in check.text, figure


def test_a_price_below_the_full_cost_fails_and_none_agreed_is_not_judged(
    own_demo: Asked,
) -> None:
    book = own_demo.book
    assert book is not None
    text = (book / "orders" / "101.txt").read_text(encoding="utf-8")
    _order(book, "low", text.replace("96.00", "80.00"))
    _order(book, "free", text.replace("Price: 96.00\n", ""))
    assert price_check("low", own_demo).passed is False
    free = price_check("free", own_demo)
    assert free.passed is None
    assert "126.37" in free.text


def test_a_cost_with_a_price_missing_is_not_judged(own_demo: Asked) -> None:
    assert own_demo.book is not None
    path = own_demo.book / "prices.csv"
    kept = [row for row in path.read_text("utf-8").splitlines() if "butter" not in row]
    path.write_text("\n".join(kept) + "\n", encoding="utf-8")
    check = price_check("101", own_demo)
    assert check.passed is None
    assert "butter" in check.text


def test_a_held_order_gets_no_label_and_an_open_list_is_named(
    sheets_101: Made, own_demo: Asked
) -> None:
    held = next(c for c in sheets_101.answer.result.checks if c.name == "label")
    assert held.passed is False
    assert "L-008" in held.text
    assert not list(sheets_101.folder.glob("*label*"))
    files, check = label_files("101", None, own_demo)
    assert (files, check.passed) == ({}, False)
    assert "vanilla extract" in check.text


def test_labels_are_printed_when_nothing_keeps_them_from_it(own_demo: Asked) -> None:
    assert own_demo.book is not None
    path = own_demo.book / "lots.csv"
    head, *rows = path.read_text("utf-8").splitlines()
    told = [row + (",vanilla; alcohol; water" if row.startswith("L-016") else ",") for row in rows]
    path.write_text("\n".join([f"{head},ingredients", *told]) + "\n", encoding="utf-8")
    files, check = label_files("101", None, own_demo)
    assert check.passed is True, check.text
    assert {kind for kind, _ in files.values()} == {("label", "T1")}
    assert any(data.startswith(b"%PDF") for _, data in files.values())


def test_a_class_has_its_sheets_and_no_price(demo: Asked, tmp_path: Path) -> None:
    answer = make_sheets("CLASS7", demo, out=tmp_path / "class")
    assert answer.exit_code == 0
    assert {"order-sheet", "bench-card", "blend-card"} <= {f.kind for f in answer.result.files}
    price = price_check("CLASS7", demo)
    assert (price.passed, "by the seat" in price.text) == (None, True)
