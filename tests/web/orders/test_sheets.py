"""Sheets in the order of the work, each once with its formats."""

from krume.usecases import KeptSheet
from krume.web.orders.sheets import grouped_sheets


def _sheet(file: str, kind: str, of: str, why: str = "") -> KeptSheet:
    return KeptSheet(file, kind, of, file.rpartition(".")[2], not why, why)


def test_formats_stand_together_and_files_for_machines_are_left_out() -> None:
    sheets = (
        _sheet("f1-bench-card.html", "bench-card", "F1"),
        _sheet("f1-bench-card.json", "bench-card", "F1"),
        _sheet("f1-bench-card.pdf", "bench-card", "F1", "older than its text F1"),
        _sheet("order-sheet.pdf", "order-sheet", "Order 9"),
        _sheet("index.html", "index", "Order 9"),
        _sheet("odd.pdf", "odd-thing", "x"),
    )
    found = grouped_sheets(sheets)
    assert [(g.kind, [f.word for f in g.files]) for g in found] == [
        ("All of them on one page", ["page"]),
        ("Order sheet", ["PDF"]),
        ("Bench card", ["PDF", "page"]),
        ("odd thing", ["PDF"]),
    ]
    assert found[2].why == "older than its text F1"


def test_two_cards_of_one_kind_stay_two() -> None:
    sheets = (_sheet("a.pdf", "bench-card", "F1"), _sheet("b.pdf", "bench-card", "F2"))
    assert [group.of for group in grouped_sheets(sheets)] == ["F1", "F2"]
