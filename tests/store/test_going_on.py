"""Weighings that go on, whatever they are of."""

from pathlib import Path

from krume.store import (
    KeptWeighing,
    add_texts,
    begin_weighing,
    book_at,
    end_weighing,
    open_weighings,
)


def test_only_what_goes_on_is_named_and_the_last_begun_first(tmp_path: Path) -> None:
    book = book_at(tmp_path / "book")
    assert open_weighings(book) == ()
    add_texts(book, {"formulas/F1.txt": b"F1\n", "formulas/F2.txt": b"F2\n"})
    for number, name in enumerate(("F1", "F2"), start=1):
        place = f"formulas/{name}.txt"
        begin_weighing(book, KeptWeighing(f"k{number}", place, 1, "2027-06-10", 1.0, "open"))
    assert [each.key for each in open_weighings(book)] == ["k2", "k1"]
    end_weighing(book, "k2", state="done")
    assert [each.place for each in open_weighings(book)] == ["formulas/F1.txt"]
