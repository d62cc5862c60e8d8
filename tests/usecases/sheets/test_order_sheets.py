"""An order's sheets in the book's own folder."""

from pathlib import Path

import pytest

from krume.base import NotFoundError
from krume.usecases import (
    Asked,
    load_demo,
    make_order_sheets,
    save_text,
    sheet_bytes,
    sheets_of_order,
    text_now,
)
from krume.usecases.sheets.order_sheets import _folder

_PLAIN = "Order 9\nDate: 2027-06-14\nHand-over: 10:00, pick-up\n\n1 F2\n"


def test_sheets_are_made_listed_opened_and_told_when_they_are_old(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    save_text("order", "9", _PLAIN, asked, seen=None)
    assert sheets_of_order("9", asked) == ()
    assert not make_order_sheets("9", asked).problems
    made = sheets_of_order("9", asked)
    assert {each.kind for each in made} >= {"order-sheet", "bench-card", "timetable"}
    assert all(each.is_fresh for each in made)
    assert sheet_bytes("9", "order-sheet.pdf", asked).data.startswith(b"%PDF")
    now = text_now("formula", "F2", asked)
    save_text("formula", "F2", now.text.replace("130", "131"), asked, seen=now.revision)
    old = {each.kind: each.why for each in sheets_of_order("9", asked) if not each.is_fresh}
    assert "older than its text F2" in old["bench-card"]


def test_a_sheet_that_was_changed_by_hand_says_so(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    save_text("order", "9", _PLAIN, asked, seen=None)
    make_order_sheets("9", asked)
    path = tmp_path / "book" / "sheets" / "9" / "order-sheet.html"
    path.write_text(path.read_text() + "<script>1</script>")
    assert not sheet_bytes("9", "order-sheet.html", asked).is_as_written
    found = next(each for each in sheets_of_order("9", asked) if each.file == path.name)
    assert "changed since it was written" in found.why


def test_a_contradiction_writes_nothing(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    assert make_order_sheets("102", asked).problems[0].code == "diet-contradiction"
    assert sheets_of_order("102", asked) == ()


@pytest.mark.parametrize("file", ["../../krume.db", "sheets.json", "none.pdf", "", ".."])
def test_only_a_listed_sheet_is_opened(tmp_path: Path, file: str) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    save_text("order", "9", _PLAIN, asked, seen=None)
    make_order_sheets("9", asked)
    with pytest.raises(NotFoundError):
        sheet_bytes("9", file, asked)


@pytest.mark.parametrize("name", ["..", ".", "a/b", "a\\b", "../../x", "Ünter"])
def test_the_folder_of_an_order_lies_inside_the_book_whatever_its_name(
    tmp_path: Path, name: str
) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    assert _folder(name, asked).resolve().parent == (tmp_path / "book" / "sheets").resolve()


def test_beside_plain_texts_the_sheets_are_hidden(tmp_path: Path) -> None:
    (tmp_path / "formulas").mkdir()
    assert _folder("9", Asked(book=tmp_path)).parent.name == ".sheets"
