"""The lot code of a label is the one that was written down, or there is none."""

from krume.usecases import Asked, TraceWish, lot_code, lot_codes, trace_of
from krume.usecases.book.book import init_book

WRITE = TraceWish(is_kept=True)


def test_nothing_written_down_has_no_code(own: Asked, bare: Asked) -> None:
    assert lot_codes("101", own) == {}
    assert lot_code("101", "T1", own) is None
    assert lot_codes("101", bare) == {}
    init_book(bare)
    assert lot_codes("101", bare) == {}


def test_each_thing_of_an_order_has_its_code(own: Asked) -> None:
    trace_of("102", WRITE, own)
    codes = {"T2": "L270610-1", "T3": "L270610-2", "TART": "L270610-3"}
    assert lot_codes("102", own) == codes
    assert lot_codes("orders/102.txt", own) == codes
    assert lot_code("102", "T3", own) == "L270610-2"


def test_a_torte_for_no_order_has_its_last_code(own: Asked) -> None:
    trace_of("T1", WRITE, own)
    trace_of("T1", WRITE, own)
    assert lot_codes("T1", own) == {"T1": "L270610-2"}
