"""The list on paper: who is to be told, harmless in every format whatever a name holds."""

import csv
import io
import json
from pathlib import Path

import pypdf
import pytest

from krume.store import KeptBatch, KeptCake, KeptLot, KeptPart, book_at, keep_made
from krume.usecases import Asked, TraceWish, load_demo, trace_of
from krume.usecases.sheets.trace_lists import list_bytes, trace_lists

EVIL = '=HYPERLINK("x")<script>alert(1)</script>\x1b[31m'


@pytest.fixture
def evil(tmp_path: Path) -> Asked:
    """A book in which a customer, a torte, a lot and a supplier have hostile names."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    lot = KeptLot(f"nuts {EVIL}", "", "+1-800", f"@{EVIL}")
    keep_made(
        book_at(asked.book),
        [KeptBatch("b", "F1", EVIL, "2027-06-01", (lot,))],
        [KeptCake("c", "T1", EVIL, 1, "2027-06-01", (KeptPart("F1", "b"),), customer=f"-{EVIL}")],
    )
    return asked


@pytest.mark.parametrize("name", ["lot +1-800", "L270601-1", "B270601-1"])
def test_hostile_names_come_out_harmless_in_every_format(
    evil: Asked, name: str, tmp_path: Path
) -> None:
    answer = trace_lists(name, TraceWish(), evil, out=tmp_path / "out")
    files = {Path(each.path).suffix: Path(each.path).read_bytes() for each in answer.result.files}
    assert set(files) == {".pdf", ".html", ".csv", ".json"}
    rows = list(csv.reader(io.StringIO(files[".csv"].decode("utf-8-sig"))))
    assert len(rows) >= 2
    assert not any(cell.startswith(("=", "+", "-", "@", "\t")) for row in rows for cell in row)
    assert not any("\x1b" in cell for row in rows for cell in row)
    page = files[".html"].decode()
    assert "<script" not in page
    assert "&lt;script&gt;" in page
    assert "\x1b" not in page
    assert EVIL in json.dumps(json.loads(files[".json"]), ensure_ascii=False).replace(
        "\\u001b", "\x1b"
    ).replace('\\"', '"')
    assert b"\x1b" not in files[".json"]
    words = "".join(p.extract_text() for p in pypdf.PdfReader(io.BytesIO(files[".pdf"])).pages)
    assert "alert(1)" in words
    assert "\x1b" not in words


def test_the_recall_list_says_whom_to_call_first_and_why(evil: Asked) -> None:
    trace_of("101", TraceWish(is_kept=True), evil)
    answer = trace_of("L-008", TraceWish(), evil)
    words = "".join(
        page.extract_text()
        for page in pypdf.PdfReader(io.BytesIO(list_bytes(answer, evil, ending="pdf"))).pages
    )
    for word in ("recall list", "call these first", "M. Tarrow", "L270610-1", "told", "2027-06-12"):
        assert word in words
    assert "local authority" in " ".join(words.split())
    assert "not baked" not in words


def test_the_table_of_a_cake_has_a_row_for_each_lot(evil: Asked) -> None:
    trace_of("101", TraceWish(is_kept=True), evil)
    data = list_bytes(trace_of("L270610-1", TraceWish(), evil), evil, ending="csv")
    rows = list(csv.DictReader(io.StringIO(data.decode("utf-8-sig"))))
    nuts = next(row for row in rows if row["ingredient"] == "ground hazelnuts")
    assert (nuts["lot"], nuts["supplier"], nuts["customer"]) == ("L-008", "not known", "M. Tarrow")
    assert {row["formula"] for row in rows} == {"F1", "C1", "C5", "S1"}


def test_an_open_question_writes_nothing(evil: Asked, tmp_path: Path) -> None:
    from krume.usecases import add_row

    add_row("lots.csv", {"lot": "L-9", "ingredient": "ground hazelnuts"}, evil, head=())
    answer = trace_lists("101", TraceWish(is_kept=True), evil, out=tmp_path / "out")
    assert answer.problems
    assert not (tmp_path / "out").exists()
