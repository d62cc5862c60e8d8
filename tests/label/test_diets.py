"""Diets: read in a customer's words, held against what is in it; unknown is never fine."""

from dataclasses import replace
from datetime import date

import pytest

from krume.label import (
    Diet,
    GlutenGate,
    Piece,
    Product,
    Statement,
    Unknown,
    Used,
    diet_rules,
    gluten_gate,
    is_illness,
    judge_diets,
    read_diets,
)
from krume.label.diets import _opens
from krume.pantry import read_room
from tests.label.studio import lots, product

DAY = date(2027, 6, 12)


def _diets(*texts: str) -> tuple[Diet, ...]:
    return read_diets(list(enumerate(texts, start=1)))


@pytest.mark.parametrize(
    ("text", "keys"),
    [
        ("One guest has coeliac disease.", ["gluten"]),
        ("my sister is a celiac", ["gluten"]),
        ("bitte glutenfrei", ["gluten"]),
        ("No nuts please, one colleague is allergic!! the walnut one looks nicest", ["nuts"]),
        ("nut-free, dairy free and egg-free", ["nuts", "milk", "egg"]),
        ("peanut allergy in class", ["peanut"]),
        ("two vegetarians, one pregnant, many kids", ["vegetarian", "pregnant", "children"]),
        ("halal, no alcohol", ["faith", "alcohol"]),
        ("fresh flowers on top", ["flowers"]),
        ("allergic to walnuts", ["nuts"]),
        ("my boss can’t have nuts", ["nuts"]),
        ("nut alergy", ["nuts"]),
        ("she reacts to hazelnuts", ["nuts"]),
        ("ohne Nüsse", ["nuts"]),
        ("keine Eier", ["egg"]),
        ("GF please", ["gluten"]),
        ("intolerant to gluten", ["gluten"]),
        ("buckwheat allergy", ["buckwheat"]),
        ("no pork", ["gelatine"]),
        ("allergic to kiwi", ["unclear"]),
        ("no cinnamon", ["unclear"]),
        ("the walnut one looks nicest", []),
        ("No allergies. Nobody minds.", []),
        ("no known allergies", []),
        ("", []),
    ],
)
def test_a_diet_is_read_in_the_customers_words(text: str, keys: list[str]) -> None:
    assert {diet.key for diet in _diets(text)} == set(keys)


def test_a_diet_said_twice_stands_once_at_its_first_line() -> None:
    (diet,) = _diets("hello", "No nuts", "really no nuts")
    assert (diet.line, diet.read) == (2, "No nuts")


def test_every_kind_of_diet_says_what_it_avoids_or_cautions() -> None:
    for rule in diet_rules():
        assert rule.avoids or rule.caution, rule.key


def _gate(*missing: str) -> GlutenGate:
    return GlutenGate("eu", DAY, (), missing, None, None if missing else "Gluten-free", (), ())


def _piece(
    contains: tuple[str, ...] = (),
    traces: tuple[str, ...] = (),
    unknown: tuple[Unknown, ...] = (),
    goods: tuple[Used, ...] = (),
    gate: GlutenGate | None = None,
    told: tuple[str, ...] = (),
) -> Piece:
    product = Product("Cake", "torte", goods, 1000.0, "assumed", {})
    said = Statement("eu", (), "", contains, traces, (), unknown)
    return Piece("T9", 9, "1 T9", product, (said,), gate or _gate(), told)


def test_what_somebody_must_not_eat_stands_against_the_order() -> None:
    (found,) = judge_diets(_diets("no nuts"), [_piece(("egg", "nuts (walnut)"))])
    assert (found.verdict, found.what) == ("contains", ("walnut",))
    assert "T9" in found.text and "line 1" in found.text


def test_a_word_that_only_begins_alike_is_no_contradiction() -> None:
    assert judge_diets(_diets("no peanuts"), [_piece(("nuts (walnut)",))]) == ()
    assert judge_diets(_diets("no nuts"), [_piece(("peanut",))]) == ()


def test_what_may_be_in_it_is_a_hold_and_names_what_opens_it() -> None:
    (found,) = judge_diets(_diets("no nuts"), [_piece(traces=("nuts",))])
    assert found.verdict == "may-contain" and "opens it" in found.opens


def test_a_shut_gate_is_a_hold_for_coeliac_disease_and_an_open_one_is_not() -> None:
    shut = _piece(gate=_gate("L-1", "room: cleaning record"))
    (found,) = judge_diets(_diets("coeliac"), [shut])
    assert found.verdict == "gate-shut"
    assert "L-1" in found.opens and "cleaning record" in found.opens
    assert judge_diets(_diets("coeliac"), [replace(shut, gate=_gate())]) == ()


def test_wheat_in_it_contradicts_coeliac_disease_whatever_the_gate_says() -> None:
    (found,) = judge_diets(_diets("coeliac"), [_piece(("cereals containing gluten (wheat)",))])
    assert found.verdict == "contains"


def test_allergens_that_are_not_known_hold_the_order() -> None:
    unknown = Unknown("baking powder", "its allergens", "label", "The supplier's sheet opens it.")
    (found,) = judge_diets(_diets("no milk"), [_piece(unknown=(unknown,))])
    assert (found.verdict, found.opens) == ("unknown", "The supplier's sheet opens it.")


def test_gelatine_stands_against_a_vegetarian() -> None:
    gelatine = Used("powdered gelatine", "gelatin-dry", "gelatine", "gel", 8.0)
    (found,) = judge_diets(_diets("vegetarian"), [_piece(goods=(gelatine,))])
    assert (found.verdict, found.what) == ("contains", ("powdered gelatine",))


def test_words_in_writing_settle_a_wish_and_never_an_allergy() -> None:
    told = _piece(("nuts (walnut)",), told=("walnut",))
    assert judge_diets(_diets("no nuts"), [told]) == ()
    assert [f.verdict for f in judge_diets(_diets("nut allergy"), [told])] == ["contains"]
    assert not is_illness(_diets("no nuts")[0]) and is_illness(_diets("nut allergy")[0])


def test_a_note_that_was_not_understood_holds_the_order() -> None:
    (found,) = judge_diets(_diets("allergic to kiwi"), [_piece()])
    assert found.verdict == "unknown" and "Ask the customer" in found.opens


def test_a_persons_state_is_a_caution_not_a_refusal() -> None:
    honey = Used("honey", "honey", "honey", "sugar", 20.0)
    (found,) = judge_diets(_diets("for children"), [_piece(goods=(honey,))])
    assert found.verdict == "caution"


def test_what_opens_a_shut_gate_tells_lots_from_the_room_and_asks_for_another_lot() -> None:
    head = "source,state,date,valid_to,text\n"
    room = read_room(f"{head}sieve,shared,2027-06-01,,\n").value
    gate = gluten_gate(product("T1"), lots(), (), on=DAY, market="eu", room=room)
    said = _opens(gate)
    assert said.startswith("A valid test or certificate for the ground hazelnuts that go in opens")
    assert "of another lot than L-008" in said
    assert "still open: room: wheat day" in said
    assert "certificate of room" not in said
    assert said.endswith("the room's cleaning record of the day is still to be written.")
