"""What a name means as something to sell, and the day it is judged on."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from krume.base import KrumeError
from krume.store import place_all
from krume.usecases import Asked, LabelWish, keep_of, label_of
from krume.usecases.book.book import demo_files
from krume.usecases.sold.product import sold_of


def test_a_formula_a_torte_and_an_order_are_told_apart(demo: Asked) -> None:
    kinds = {name: sold_of(name, demo).kind for name in ("F1", "T1", "102")}
    assert kinds == {"F1": "formula", "T1": "torte", "102": "order"}
    assert [each.name for each in sold_of("102", demo).sold] == ["T2", "T3", "TART"]
    assert [each.count for each in sold_of("102", demo).sold] == [2, 1, 1]


def test_an_order_is_judged_on_its_own_day_unless_another_is_asked(demo: Asked) -> None:
    assert sold_of("102", demo).on == date(2027, 6, 11)
    assert sold_of("102", replace(demo, on=date(2027, 1, 2))).on == date(2027, 1, 2)
    assert sold_of("T1", demo).on == date(2027, 6, 10)


def test_a_class_is_its_kits_on_its_day(demo: Asked) -> None:
    read = sold_of("CLASS7", demo)
    assert [(each.name, each.count) for each in read.sold] == [("F3", 10)]
    assert read.on == date(2027, 6, 19)


def test_a_line_of_an_order_that_nobody_knows_is_named(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    place_all(asked.book or Path(), demo_files())
    order = tmp_path / "book" / "orders" / "103.txt"
    order.write_text("Order 103\nCustomer: X\nDate: 2027-06-12\n\n1 T9\n", encoding="utf-8")
    with pytest.raises(KrumeError, match="T9"):
        sold_of("103", asked)


@pytest.mark.parametrize("line", ["Lots: L-019", "lot: L-019, L-003", "LOTS:L-019"])
def test_lots_that_a_text_names_are_the_ones_in_use(
    bare: Asked, write: Callable[[str], str], line: str
) -> None:
    text = f"Sponge\n{line}\nTin: round 20 x 5 cm\n\n100 g potato starch\n"
    assert "L-019" in sold_of(write(text), bare).sold[0].chosen


def test_a_torte_that_cannot_be_is_no_answer_and_names_its_limit(
    demo: Asked, tmp_path: Path
) -> None:
    text = tmp_path / "high.txt"
    text.write_text("High\n\n3 layers of F1, 20 mm\n", encoding="utf-8")
    read = sold_of(str(text), demo)
    assert not read.is_possible
    assert [p.code for p in read.problems] == ["limits-clash"]
    assert label_of(str(text), LabelWish(), demo).exit_code == 4
    assert keep_of(str(text), demo).exit_code == 4
