"""The order sheet as a leaf: the ruled box, what, cold, who, lots."""

from dataclasses import replace

from krume.publish import Hold, Imprint, Leaf
from krume.usecases import Asked
from krume.usecases.sheets.order_leaf import one_hold, order_leaf
from krume.usecases.sold.order import judge_order
from krume.usecases.sold.papers import papers_of
from krume.usecases.sold.product import sold_of


def _leaf(demo: Asked) -> Leaf:
    read = sold_of("101", demo)
    assert read.order is not None
    judged = judge_order(read, read.order, demo)
    imprint = Imprint(date="2027-06-10", program="1", data="2")
    return order_leaf(read, read.order, judged, papers_of(demo), imprint, cold=("3 to 5 days.",))


def test_the_day_and_the_hour_come_first(demo: Asked) -> None:
    facts = {fact.label: (fact.figure, fact.unit) for fact in _leaf(demo).facts}
    assert facts["hand over on"] == ("2027-06-12", "Saturday")
    assert facts["at"] == ("14:00", "") and facts["for"] == ("14", "people")


def test_the_diet_box_is_ruled_and_the_slices_serve_the_guests(demo: Asked) -> None:
    parts = {part.heading: part for part in _leaf(demo).parts}
    assert parts["Diet and allergies"].boxed
    table = parts["What"].table
    assert table is not None
    assert "12 of 99.6 g or 14 of 85.3 g" in table.rows[0]
    assert parts["Who"].lines[1] == "Telephone: not said"


def test_every_lot_that_needs_a_record_stands_with_its_state(demo: Asked) -> None:
    parts = {part.heading: part for part in _leaf(demo).parts}
    table = parts["Lots that need a gluten record"].table
    assert table is not None
    states = {row[0]: row[2] for row in table.rows}
    assert states["L-008"] == "speaks against it" and states["L-001"] == "good"


def test_several_holds_become_one() -> None:
    assert one_hold(()) is None
    joined = one_hold((Hold("A.", "x."), Hold("B.", "x.")))
    assert joined == Hold("A. B.", "x.")


def test_slices_that_do_not_reach_are_said(demo: Asked) -> None:
    answered = replace(demo, answers=("line 9=Note: 1 T3, left out",))
    read = sold_of("102", answered)
    assert read.order is not None
    judged = judge_order(read, read.order, answered)
    imprint = Imprint(date="2027-06-10", program="1", data="2")
    leaf = order_leaf(read, read.order, judged, papers_of(answered), imprint, cold=())
    (what,) = [part for part in leaf.parts if part.heading == "What"]
    assert what.lines == ("34 slices at most for 40 people: 6 short.",)
    assert what.table is not None and not any(
        "40 of" in cell for r in what.table.rows for cell in r
    )


def test_what_is_shut_in_the_room_stands_with_what_it_needs_and_a_place_to_tick(
    own_demo: Asked,
) -> None:
    assert own_demo.book is not None
    text = "source,state,date,valid_to,text\nsieve,shared,2027-06-01,,\n"
    (own_demo.book / "room.csv").write_text(text, encoding="utf-8")
    part = next(p for p in _leaf(own_demo).parts if p.heading == "Still shut in the room")
    assert len(part.lines) == 10
    sieve = next(line for line in part.lines if line.startswith("sieve: "))
    assert sieve.startswith("sieve: shared since 2027-06-01. A sieve of its own")
    assert sieve.endswith("done ____")
