"""Sheets: all files or none, safe names, sums that agree, and no claim that is not judged."""

import errno
import json
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pypdf
import pytest

from krume.base import StoreError
from krume.usecases import Asked, make_sheets
from tests.usecases.conftest import PLAIN, Made

ENDINGS = ("pdf", "html", "json")
ANSWERED = PLAIN.replace("5 eggs", "5 eggs, EU M")


def test_a_formula_becomes_one_card_in_three_forms(demo: Asked, tmp_path: Path) -> None:
    out = tmp_path / "new" / "out"
    answer = make_sheets("F1", demo, out=out)
    assert answer.exit_code == 0
    cards = [f for f in answer.result.files if f.kind != "manifest"]
    assert {(f.kind, f.format, f.of) for f in cards} == {
        (kind, ending, "F1")
        for kind in ("bench-card", "blend-card")
        for ending in ("pdf", "html", "json")
    }
    assert {f.path for f in answer.result.files} == {str(path) for path in out.iterdir()}
    assert {path.name for path in out.iterdir()} == {
        "sheets.json",
        *(f"f1-{kind}.{end}" for kind in ("bench-card", "blend-card") for end in ENDINGS),
    }
    text = "".join(page.extract_text() for page in pypdf.PdfReader(out / "f1-bench-card.pdf").pages)
    assert "Orl hazel sponge" in text
    assert "not baked" in text


def test_the_three_forms_of_a_card_say_the_same_sum(demo: Asked, tmp_path: Path) -> None:
    make_sheets("F1", demo, out=tmp_path)
    card = json.loads((tmp_path / "f1-bench-card.json").read_text(encoding="utf-8"))
    assert card["total_g"] == pytest.approx(542.0)
    assert "542" in (tmp_path / "f1-bench-card.html").read_text(encoding="utf-8")


def test_an_order_becomes_its_own_sheets_the_cards_of_its_formulas_and_a_page_over_them(
    sheets_101: Made,
) -> None:
    answer = sheets_101.answer
    pdfs = [Path(f.path).name for f in answer.result.files if f.format == "pdf"]
    cards = [f"{name}-bench-card.pdf" for name in ("f1", "c1", "c5", "s1")]
    own = ["order-sheet.pdf", "order-timetable.pdf", "shopping-list.pdf"]
    rest = ["f1-blend-card.pdf", "cold-log.pdf", "gluten-page.pdf"]
    assert pdfs == [*own, "t1-torte-plan.pdf", *cards, *rest]
    index = (sheets_101.folder / "index.html").read_text(encoding="utf-8")
    assert all(name.replace(".pdf", ".html") in index for name in (*own, *rest))
    assert all(f"{name}-bench-card.html" in index for name in ("f1", "c1", "c5", "s1"))
    assert "t1-torte-plan.html" in index
    assert answer.result.summary[0].startswith("Order 101: 1 T1, Saturday 2027-06-12, 14:00")


def test_the_displays_add_up_to_the_formula_on_every_card(demo: Asked, tmp_path: Path) -> None:
    for name in ("T2", "T3", "TART", "F5", "F6"):
        checks = make_sheets(name, demo, out=tmp_path / name).result.checks
        sums = [check for check in checks if check.name.startswith("sum of")]
        assert sums
        assert all(check.passed for check in sums), name


def test_every_check_of_the_order_is_judged_and_no_claim_is_printed(sheets_101: Made) -> None:
    checks = {check.name: check.passed for check in sheets_101.answer.result.checks}
    assert {"diet", "cold", "price", "batches", "timetable", "label"} <= set(checks)
    assert None not in checks.values()
    pages = list(sheets_101.folder.glob("*.html"))
    assert pages
    for path in pages:
        assert "gluten-free" not in path.read_text(encoding="utf-8").casefold(), path.name


def test_a_torte_has_a_cold_log_and_the_blend_cards_of_its_cakes_alone(
    demo: Asked, tmp_path: Path
) -> None:
    answer = make_sheets("T1", demo, out=tmp_path)
    of = {(f.kind, f.of) for f in answer.result.files if f.kind in ("blend-card", "cold-log")}
    assert of == {("blend-card", "F1"), ("cold-log", "Orl hazel torte")}


def test_nothing_is_written_while_a_question_is_open(
    bare: Asked, write: Callable[[str], str], tmp_path: Path
) -> None:
    answer = make_sheets(write(PLAIN), bare, out=tmp_path / "out")
    assert answer.exit_code == 3
    assert answer.result.files == ()
    assert not (tmp_path / "out").exists()


def test_an_answer_opens_the_way(bare: Asked, write: Callable[[str], str], tmp_path: Path) -> None:
    asked = replace(bare, answers=("line 5=5 eggs, EU M",), on=date(2027, 6, 10))
    answer = make_sheets(write(PLAIN), asked, out=tmp_path / "out")
    assert answer.exit_code == 0
    assert next(Path(f.path).name for f in answer.result.files) == "plain-sponge-bench-card.pdf"


def test_the_notes_of_the_studio_stay_off_another_persons_text(
    demo: Asked, write: Callable[[str], str], tmp_path: Path
) -> None:
    make_sheets(write(ANSWERED), demo, out=tmp_path / "out")
    card = json.loads((tmp_path / "out" / "plain-sponge-bench-card.json").read_text("utf-8"))
    assert card["imprint"]["notes"] == []


def test_the_same_request_writes_the_same_bytes(demo: Asked, tmp_path: Path) -> None:
    for out in ("a", "b"):
        make_sheets("F2", demo, out=tmp_path / out)
    for path in (tmp_path / "a").iterdir():
        assert path.read_bytes() == (tmp_path / "b" / path.name).read_bytes(), path.name


def test_a_day_asked_for_stands_on_the_card(demo: Asked, tmp_path: Path) -> None:
    make_sheets("F2", replace(demo, on=date(2027, 7, 1)), out=tmp_path)
    card = json.loads((tmp_path / "f2-bench-card.json").read_text(encoding="utf-8"))
    assert card["imprint"]["date"] == "2027-07-01"


def test_the_dial_allows_for_an_oven_that_reads_low(demo: Asked, tmp_path: Path) -> None:
    make_sheets("F1", demo, out=tmp_path)
    card = json.loads((tmp_path / "f1-bench-card.json").read_text(encoding="utf-8"))
    assert "182" in {fact["figure"] for fact in card["facts"]}


@pytest.mark.parametrize("broken_move", [1, 2, 3])
def test_a_run_that_breaks_off_leaves_the_earlier_sheets_whole(
    demo: Asked, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, broken_move: int
) -> None:
    out = tmp_path / "out"
    make_sheets("F1", demo, out=out)
    before = {path.name: path.read_bytes() for path in out.iterdir()}
    move, moves = Path.replace, 0

    def breaking(self: Path, target: Path) -> Path:
        nonlocal moves
        moves += 1
        if moves == broken_move:
            raise OSError(errno.ENOSPC, "full")
        return move(self, target)

    monkeypatch.setattr(Path, "replace", breaking)
    with pytest.raises(StoreError, match="Make room"):
        make_sheets("F1", replace(demo, on=date(2027, 7, 1)), out=out)
    assert {path.name: path.read_bytes() for path in out.iterdir()} == before
    assert [path.name for path in tmp_path.iterdir()] == ["out"]


@pytest.mark.parametrize("name", ["../../etc/passwd", "CON", "a/b\\c", "שלום"])
def test_a_hostile_name_stays_inside_the_folder(
    bare: Asked, write: Callable[[str], str], tmp_path: Path, name: str
) -> None:
    out = tmp_path / "deep" / "out"
    text = ANSWERED.replace("Plain sponge", name)
    answer = make_sheets(write(text), bare, out=out)
    assert answer.exit_code == 0, answer.problems
    assert all(Path(f.path).parent == out for f in answer.result.files)
    assert [path.name for path in (tmp_path / "deep").iterdir()] == ["out"]
    assert not any(sign.isspace() for f in answer.result.files for sign in Path(f.path).name)
