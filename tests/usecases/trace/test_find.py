"""What a typed name means: a code, a lot, a text; never a guess."""

import pytest

from krume.store import book_at, keep_text
from krume.usecases import Asked, QuestionError
from krume.usecases.trace.bags import BagsSaid
from krume.usecases.trace.find import meant_by
from krume.usecases.trace.record import making_of, write_making


@pytest.mark.parametrize(
    ("typed", "kind", "name"),
    [
        ("l270610-1", "cake", "L270610-1"),
        ("B270610-1", "batch", "B270610-1"),
        ("l-008", "lot", "L-008"),
        ("Lot L-008", "lot", "L-008"),
        ("gone-1", "lot", "GONE-1"),
        ("101", "text", "101"),
        ("order 101", "text", "101"),
        ("CLASS7", "text", "CLASS7"),
        ("torte T1", "text", "T1"),
    ],
)
def test_a_name_means_one_thing(own: Asked, typed: str, kind: str, name: str) -> None:
    said = {"F1": BagsSaid(lots={"eggs": ("GONE-1",)})}
    write_making(making_of("101", own, said=said), own)
    meant = meant_by(typed, "", own)
    assert (meant.kind, meant.name) == (kind, name)


def test_an_unknown_name_is_asked_with_the_nearest_lots(own: Asked) -> None:
    with pytest.raises(QuestionError) as caught:
        meant_by("L-08", "", own)
    problem = caught.value.problem
    assert problem.code == "lot-unknown"
    assert "lot L-008" in [option.line for option in problem.options]


def test_an_unwritten_lot_may_be_asked_for_by_its_ingredient(own: Asked) -> None:
    meant = meant_by("7781", "ground hazelnuts", own)
    assert (meant.kind, meant.name, meant.lots) == ("lot", "7781", ())


def test_a_name_of_two_things_is_asked_and_answered(own: Asked) -> None:
    keep_text(
        book_at(own.book), "orders/L-008.txt", b"Order\nDate: 2027-06-12\n\n1 T1\n", seen=None
    )
    with pytest.raises(QuestionError) as caught:
        meant_by("L-008", "", own)
    assert caught.value.problem.code == "name-twice"
    answered = Asked(book=own.book, answers=("NAME=lot L-008",))
    assert meant_by("L-008", "", answered).kind == "lot"
    assert meant_by("L-008", "hazelnuts", own).kind == "lot"
