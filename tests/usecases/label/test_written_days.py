"""The date of a label from what was written down: of the whole, of its parts, or not at all."""

from datetime import date
from pathlib import Path

import pytest

from krume.store import KeptBatch, KeptCake, KeptPart, book_at, keep_made
from krume.usecases import Asked, LabelOf, LabelWish, label_of, load_demo
from krume.usecases.label.durability import MadeOn
from krume.usecases.label.written_days import written_days

EU = LabelWish(market="eu")
TART = {"F7": "2027-06-08", "C3": "2027-06-09"}


@pytest.fixture
def own(tmp_path: Path) -> Asked:
    """A demo book that a test may change."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def write(asked: Asked, made_on: str, parts: dict[str, str], key: str = "k") -> None:
    """Write a tart down for order 102, its parts by their days; an empty day is no batch."""
    batches = [
        KeptBatch(f"{key}-{name}", name, name, day, (), chain=f"{key}-{name}")
        for name, day in parts.items()
        if day
    ]
    kept = tuple(KeptPart(name, f"{key}-{name}" if day else "") for name, day in parts.items())
    cake = KeptCake(key, "TART", "Tart", 1, made_on, kept, order_name="102", chain=key)
    keep_made(book_at(asked.book), batches, [cake])


def tart(asked: Asked, wish: LabelWish = EU) -> LabelOf:
    """The label of the tart of order 102."""
    return next(each for each in label_of("102", wish, asked).result.labels if each.name == "TART")


def test_nothing_written_down_leaves_a_blank(own: Asked) -> None:
    assert written_days("102", own) == {}
    assert tart(own).durability.use_by is None


def test_the_days_of_parts_give_the_date_of_the_label(own: Asked) -> None:
    write(own, "2027-06-10", TART)
    assert written_days("orders/102.txt", own)["TART"].day == date(2027, 6, 10)
    by_hand = LabelWish(
        market="eu", made=date(2027, 6, 10),
        made_parts=tuple((name, date.fromisoformat(day)) for name, day in TART.items()),
    )  # fmt: skip
    alone = label_of("TART", by_hand, own).result.labels[0].durability
    assert tart(own).durability == alone
    assert alone.use_by == "2027-06-13"


def test_what_is_typed_goes_before_what_was_written(own: Asked) -> None:
    write(own, "2027-06-10", TART)
    typed = tart(own, LabelWish(market="eu", made=date(2027, 6, 11))).durability
    assert typed.use_by == "2027-06-15"


@pytest.mark.parametrize(
    "parts",
    [{**TART, "C3": ""}, {"F7": "2027-06-08"}, {**TART, "S1": "2027-06-08"},
     {**TART, "C3": "2027-06-11"}],
)  # fmt: skip
def test_a_part_that_is_not_known_leaves_a_blank(own: Asked, parts: dict[str, str]) -> None:
    write(own, "2027-06-10", parts)
    assert tart(own).durability.use_by is None


def test_of_two_makings_the_earlier_counts(own: Asked) -> None:
    write(own, "2027-06-10", TART)
    write(own, "2027-06-11", {"F7": "2027-06-07", "C3": "2027-06-10"}, key="again")
    days = written_days("102", own)["TART"]
    assert days == MadeOn(date(2027, 6, 10), (("C3", date(2027, 6, 9)), ("F7", date(2027, 6, 7))))


def test_one_making_that_is_not_known_takes_the_date_of_all(own: Asked) -> None:
    write(own, "2027-06-10", TART)
    write(own, "2027-06-11", {**TART, "C3": ""}, key="again")
    assert "TART" not in written_days("102", own)
