"""Batches of an order: cakes apart, creams together, unknown is not judged."""

from collections.abc import Callable

import pytest

from krume.usecases import Asked
from krume.usecases.sheets.order_batches import OrderBatch, batch_check, batch_table, order_batches
from krume.usecases.sold.product import sold_of


def _batches(own_demo: Asked, lines: str) -> dict[str, OrderBatch]:
    assert own_demo.book is not None
    text = f"Order 9\nCustomer: A\nDate: Saturday 2027-06-12\nHand-over: 14:00\n\n{lines}\n"
    (own_demo.book / "orders" / "9.txt").write_text(text, encoding="utf-8")
    found = order_batches(sold_of("9", own_demo), own_demo)
    assert len({each.name for each in found}) == len(found)
    return {each.name: each for each in found}


def test_one_torte_takes_whole_cakes_and_half_creams(demo: Asked) -> None:
    found = {each.name: each for each in order_batches(sold_of("101", demo), demo)}
    assert {name: each.batches for name, each in found.items()} == {
        "F1": 1.0, "S1": 1.0, "C1": 0.5, "C5": 0.5,
    }  # fmt: skip
    assert found["C1"].needed_g == pytest.approx(448.0, abs=0.05)
    assert found["F1"].over_g == pytest.approx(482.0 - 384.9, abs=0.05)


def test_twelve_tortes_take_twelve_cakes_and_creams_made_together(own_demo: Asked) -> None:
    found = _batches(own_demo, "12 T1")
    assert {name: each.batches for name, each in found.items()} == {
        "F1": 12.0, "S1": 8.0, "C1": 6.0, "C5": 5.0,
    }  # fmt: skip
    assert found["C1"].needed_g == pytest.approx(5376, abs=1)


def test_a_formula_of_two_tortes_stands_once_with_both_needs(own_demo: Asked) -> None:
    both = _batches(own_demo, "1 T1\n1 T3")["S1"]
    one, other = (_batches(own_demo, f"1 {name}")["S1"] for name in ("T1", "T3"))
    assert one.needed_g is not None
    assert other.needed_g is not None
    assert both.needed_g == pytest.approx(one.needed_g + other.needed_g)


def test_a_cake_ordered_bare_counts_as_itself(own_demo: Asked) -> None:
    assert _batches(own_demo, "3 F2")["F2"].batches == 3.0


def test_what_is_not_known_is_a_word_and_not_judged() -> None:
    found = (OrderBatch("X", "A cream", "cream", 100.0, None, None),)
    assert batch_table(found).rows[0][3:] == ("not known", "not known", "not known")
    check = batch_check(found)
    assert check.passed is None
    assert "X not known" in check.text


def test_known_batches_are_a_check_that_holds(demo: Asked) -> None:
    check = batch_check(order_batches(sold_of("101", demo), demo))
    assert check.passed is True
    assert "C1 0.5" in check.text


def test_the_orders_of_a_file_are_batched_too(demo: Asked, write: Callable[[str], str]) -> None:
    path = write("Order 8\nDate: 2027-06-12\nCustomer: B\n\n2 T2\n")
    found = order_batches(sold_of(path, demo), demo)
    assert next(each for each in found if each.kind == "cake").batches == 2.0
