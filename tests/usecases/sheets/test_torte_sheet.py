"""Torte plans among the sheets: of a torte, of each torte of an order, none while one is open."""

import json
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from krume.base import StoreError
from krume.store import Book, add_texts, place_all
from krume.usecases import Asked, make_sheets
from krume.usecases.book.book import demo_files

NO_DIET = "line 6=Note: the walnut one looks nicest"


def plans(folder: Path) -> set[str]:
    return {path.name for path in folder.glob("*torte-plan*")}


def test_a_torte_gives_its_plan_in_three_forms(demo: Asked, tmp_path: Path) -> None:
    answer = make_sheets("T3", demo, out=tmp_path)
    assert plans(tmp_path) == {f"t3-torte-plan.{ending}" for ending in ("pdf", "html", "json")}
    assert "1 torte plan: T3." in answer.result.summary
    plan = json.loads((tmp_path / "t3-torte-plan.json").read_text(encoding="utf-8"))
    assert plan["total"]["grams"] == "1\u202f574.8"
    assert "Gelatine: from beef." in plan["cautions"]
    assert plan["in_time"][0] == "In the cold: borderline. At 25 °C: borderline."
    for ending in ("html", "json"):
        assert "best from then on" in (tmp_path / f"t3-torte-plan.{ending}").read_text("utf-8")


def test_a_plan_tells_what_a_slice_holds_and_never_without_its_caution(
    demo: Asked, tmp_path: Path
) -> None:
    make_sheets("T3", demo, out=tmp_path)
    lines = json.loads((tmp_path / "t3-torte-plan.json").read_text(encoding="utf-8"))["eaten"]
    page = (tmp_path / "t3-torte-plan.html").read_text(encoding="utf-8")
    assert [line[:32] for line in lines[:2]] == [
        "Carbohydrate in 1 of 14 slices (",
        "Carbohydrate in 1 of 16 slices (",
    ]
    assert all(" from " in line and "is not counted" in line for line in lines[:2])
    assert "no dose of insulin rests on it alone" in lines[2]
    assert all(line in page for line in lines)


def test_an_order_gives_a_plan_for_each_of_its_tortes(demo: Asked, tmp_path: Path) -> None:
    make_sheets("102", replace(demo, answers=(NO_DIET,)), out=tmp_path)
    assert {name for name in plans(tmp_path) if name.endswith(".pdf")} == {
        f"{torte}-torte-plan.pdf" for torte in ("t2", "t3", "tart")
    }


def test_a_formula_alone_gives_no_plan(demo: Asked, tmp_path: Path) -> None:
    make_sheets("F1", demo, out=tmp_path)
    assert plans(tmp_path) == set()


def test_a_torte_that_cannot_be_writes_nothing(
    demo: Asked, write: Callable[[str], str], tmp_path: Path
) -> None:
    out = tmp_path / "out"
    answer = make_sheets(write("High\n\n3 layers of F1, 20 mm"), demo, out=out)
    assert answer.exit_code == 4
    assert answer.result.files == ()
    assert not out.exists()


def test_an_open_question_of_a_torte_in_an_order_carries_its_name(tmp_path: Path) -> None:
    book = tmp_path / "book"
    asked = Asked(book=book)
    place_all(asked.book or Path(), demo_files())
    cream = book / "formulas" / "C2.txt"
    text = cream.read_text(encoding="utf-8").replace("Density: 0.72 g/ml (plan)\n", "")
    cream.write_text(text, encoding="utf-8")
    out = tmp_path / "out"
    answer = make_sheets("102", asked, out=out)
    assert answer.exit_code == 3
    wheres = [problem.where for problem in answer.problems]
    assert wheres == ["T2 C2 after line 1", "T3 C2 after line 1"]
    assert not out.exists()
    lines = tuple(f"{where}=Density: 0.72 g/ml" for where in wheres)
    assert make_sheets("102", replace(asked, answers=(NO_DIET, *lines)), out=out).exit_code == 0


def test_gelatine_without_a_lot_says_that_its_animal_is_not_stated(tmp_path: Path) -> None:
    book = tmp_path / "book"
    place_all(book, demo_files())
    (book / "lots.csv").unlink()
    make_sheets("T3", Asked(book=book), out=tmp_path / "out")
    plan = json.loads((tmp_path / "out" / "t3-torte-plan.json").read_text(encoding="utf-8"))
    assert "Gelatine: its animal is not stated." in plan["cautions"]


def test_lots_that_are_no_text_stop_with_what_to_do(tmp_path: Path) -> None:
    book = tmp_path / "book"
    place_all(book, demo_files())
    (book / "lots.csv").write_bytes(b"\xff\xfe\x00lots")
    with pytest.raises(StoreError, match="in UTF-8"):
        make_sheets("T3", Asked(book=book), out=tmp_path / "out")


def test_a_plan_never_overwrites_a_card_of_the_same_name(tmp_path: Path) -> None:
    book = tmp_path / "book"
    place_all(book, demo_files())
    add_texts(Book(book), {"tortes/F4.txt": b"Same\n\n1 layer of formulas/F4.txt, 12 mm"})
    out = tmp_path / "out"
    answer = make_sheets("tortes/F4.txt", Asked(book=book), out=out)
    assert answer.exit_code == 0
    assert len({file.path for file in answer.result.files}) == len(answer.result.files)


def test_an_order_and_its_torte_in_files_get_their_plan(
    book: Path, bare: Asked, tmp_path: Path
) -> None:
    for name in ("F1", "C1", "C5", "S1"):
        (tmp_path / f"{name}.txt").write_bytes((book / "formulas" / f"{name}.txt").read_bytes())
    (tmp_path / "Mine.txt").write_bytes((book / "tortes" / "T1.txt").read_bytes())
    order = (book / "orders" / "101.txt").read_text(encoding="utf-8").replace("T1", "Mine")
    (tmp_path / "order.txt").write_text(order, encoding="utf-8")
    for name in ("order.txt", "Mine.txt"):
        out = tmp_path / "out" / name
        made = make_sheets(str(tmp_path / name), bare, out=out)
        assert made.problems == ()
        assert (out / "mine-torte-plan.pdf").stat().st_size > 1000
