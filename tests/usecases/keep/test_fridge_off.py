"""The fridge was off: hours, components, the orders that stop, what is made anew by when."""

from datetime import datetime

import pytest

from krume.base import InputError
from krume.usecases import Asked, FridgeWish, fridge_off

COVERS = ["fridge_result"]


def test_a_night_without_current_throws_the_creams_away_and_keeps_the_plain_cakes(
    demo: Asked,
) -> None:
    found = fridge_off(FridgeWish(since="22:30"), demo).result
    assert found.hours == 9.5
    words = {part.name: part.verdict for part in found.components}
    assert {words[name] for name in ("C1", "C2", "C3", "C4", "C5", "S1")} == {"discard"}
    assert {words[name] for name in ("F1", "F3", "F4", "F7")} == {"keep"}
    assert {thing.verdict for thing in found.things} == {"discard"}


def test_the_orders_it_stops_are_named_with_what_is_made_anew_and_by_when(demo: Asked) -> None:
    found = fridge_off(FridgeWish(("T1",), since="22:30"), demo).result
    (order,) = found.orders
    assert (order.name, order.stops) == ("101", True)
    (remake,) = order.remake
    assert [use.name for use in remake.formulas] == ["F1", "C1", "C5", "S1"]
    assert remake.formulas[1].mass_g == pytest.approx(448.0, abs=0.1)
    assert order.ready is not None
    assert order.begin_by is not None
    assert order.begin_by < order.ready
    assert "begin by" in order.text


def test_a_cream_alone_is_all_that_is_made_anew(demo: Asked) -> None:
    found = fridge_off(FridgeWish(("C2",), since="22:30"), demo).result
    (order,) = found.orders
    assert order.name == "102"
    assert {use.name for each in order.remake for use in each.formulas} == {"C2"}
    assert sum(use.mass_g or 0 for each in order.remake for use in each.formulas) == pytest.approx(
        1519.0, abs=0.2
    )


def test_a_cold_reading_of_each_keeps_all_and_stops_no_order(demo: Asked) -> None:
    wish = FridgeWish(("101",), since="22:30", product_c=4.6)
    found = fridge_off(wish, demo).result
    assert found.verdict == "keep"
    assert [order.stops for order in found.orders] == [False]
    assert found.orders[0].text == "Nothing of it is lost."


def test_a_reading_of_one_component_is_for_that_one_alone(demo: Asked) -> None:
    wish = FridgeWish(("T1",), since="05:00", until="08:00", readings=("c1=4.6", "C1=4.9"))
    words = {p.name: p.verdict for p in fridge_off(wish, demo).result.components}
    assert words["C1"] == "keep"
    assert words["C5"] == "not-shown"


def test_without_a_moment_and_without_a_reading_it_is_asked_and_nothing_is_kept(
    demo: Asked,
) -> None:
    answer = fridge_off(FridgeWish(("C2",)), demo)
    assert answer.exit_code == 3
    assert answer.problems[0].code == "fridge-unread"
    assert answer.result.verdict == "not-shown"
    assert answer.result.orders[0].stops


def test_a_reading_of_what_did_not_stand_there_is_asked(demo: Asked) -> None:
    answer = fridge_off(FridgeWish(("C2",), since="22:30", readings=("C9=4",)), demo)
    assert [problem.code for problem in answer.problems] == ["reading-of-nothing"]


def test_every_rule_says_whose_it_is_and_nothing_is_called_safe(demo: Asked) -> None:
    answer = fridge_off(FridgeWish(since="22:30"), demo)
    found = answer.result
    assert {rule.place for rule in found.rules} == {"us", "uk", "eu", "advice"}
    texts = [
        *(part.text + part.why + part.opens for part in found.components),
        *(order.text for order in found.orders),
        *(rule.words for rule in found.rules),
        *found.cautions,
        *(notice.text for notice in answer.notices),
    ]
    assert "safe" not in " ".join(texts).casefold()
    assert found.cautions[-1].startswith("Your local law")


def test_too_late_says_to_tell_the_customer(demo: Asked) -> None:
    when = fridge_off(FridgeWish(("102",), since="22:30"), demo).result.orders[0]
    assert when.ready is not None
    late = Asked(book=demo.book, on=datetime(2027, 6, 11).date())  # noqa: DTZ001
    found = fridge_off(FridgeWish(("102",), since="06:00"), late).result.orders[0]
    assert found.is_late
    assert "tell the customer now" in found.text


@pytest.mark.parametrize(
    ("wish", "words"),
    [
        (FridgeWish(since="late"), "is no moment"),
        (FridgeWish(since="2027-06-11 09:00"), "is later than now"),
        (FridgeWish(since="22:30", until="2027-06-01 10:00"), "is before"),
        (FridgeWish(readings=("C1",)), "is no reading"),
        (FridgeWish(since="22:30", product_c=300.0), "no figure of a fridge"),
    ],
)
def test_what_cannot_be_is_refused_in_words(demo: Asked, wish: FridgeWish, words: str) -> None:
    with pytest.raises(InputError, match=words):
        fridge_off(wish, demo)


def test_an_empty_book_has_nothing_in_its_fridge(bare: Asked) -> None:
    answer = fridge_off(FridgeWish(since="2020-01-01 10:00", until="2020-01-01 12:00"), bare)
    assert answer.exit_code == 0
    assert answer.result.components == ()
