"""What the lots declare stands on every card and plan, as it stands on the label."""

import json
from pathlib import Path

import pytest

from krume.usecases import Asked, LabelWish, init_book, label_of, make_sheets
from krume.usecases.sold.declared import declared_of_all


@pytest.mark.parametrize("sheet", ["tart-torte-plan", "c3-bench-card"])
def test_the_ganaches_soya_and_nuts_stand_on_its_card_and_on_the_tarts_plan(
    demo: Asked, tmp_path: Path, sheet: str
) -> None:
    make_sheets("TART", demo, out=tmp_path)
    said = json.loads((tmp_path / f"{sheet}.json").read_text(encoding="utf-8"))["cautions"]
    assert "soybean" in said[0]
    assert said[1] == "May contain nuts."
    assert not any("dark chocolate" in text for text in said)


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART", "F1", "C3"])
def test_a_sheet_says_every_allergen_the_label_says(demo: Asked, tmp_path: Path, name: str) -> None:
    label = label_of(name, LabelWish(market="eu"), demo).result
    make_sheets(name, demo, out=tmp_path)
    kind = "torte-plan" if label.kind == "torte" else "bench-card"
    sheet = tmp_path / f"{name.lower()}-{kind}.json"
    said = json.loads(sheet.read_text(encoding="utf-8"))["cautions"]
    contains = next(text for text in said if text.startswith("Contains "))
    assert set(label.contains) == set(contains[9:-1].split(", "))
    may = [text for text in said if text.startswith("May contain ")]
    assert may == ([f"May contain {', '.join(label.may_contain)}."] if label.may_contain else [])


def test_a_lot_that_warns_of_wheat_is_said_on_its_card(demo: Asked) -> None:
    assert declared_of_all("F1", demo, "us")["F1"].may_contain == ("wheat",)


def test_a_book_without_lots_declares_nothing(tmp_path: Path) -> None:
    empty = Asked(book=tmp_path / "book")
    init_book(empty)
    text = tmp_path / "f.txt"
    text.write_text("Sponge\n\n100 g white rice flour\n", encoding="utf-8")
    assert declared_of_all(str(text), empty, "eu") == {}
