"""A class on its day: the demo's own numbers, and what does not agree."""

from pathlib import Path

import pytest

from krume.usecases import Asked, load_demo, save_text, text_now
from krume.usecases.class_day import ClassDay, class_day


def of(asked: Asked, *changes: tuple[str, str]) -> ClassDay:
    """The demo's class, with some words of its text changed."""
    text = text_now("class", "CLASS7", asked).text
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return class_day(text, asked)


def test_the_blend_of_all_kits_is_weighed_in_one_go(demo: Asked) -> None:
    kits = of(demo).kits
    assert kits is not None
    assert [(line.name, line.all_g) for line in kits.lines] == [
        ("white rice flour", 260.0),
        ("millet flour", 160.0),
        ("potato starch", 220.0),
        ("sweet rice flour", 60.0),
        ("xanthan gum", 2.5),
    ]
    assert (kits.count, kits.portion_g, kits.all_g) == (10, 70.25, 702.5)
    assert kits.weigh_g == pytest.approx(716.55)
    assert kits.eggs == "40 EU M"


def test_what_has_no_grams_is_named_as_missing_from_the_bags(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    text = "Sponge\nEggs: EU sizes\n\n100 g white rice flour\nxanthan gum\n4 eggs, medium\n"
    save_text("formula", "S9", text, asked, seen=None)
    day = class_day("Class 9\nDate: 2027-06-20\nLearners: 2\n\n2 S9\n", asked)
    said = "The bags are without xanthan gum: no grams are known. Add them in S9."
    assert day.clashes == (said,)
    assert of(asked).clashes[0].startswith("C2 wants")


def test_eight_learners_are_four_loads_of_sixteen_minutes(demo: Asked) -> None:
    loads = of(demo).loads
    assert loads is not None
    assert (loads.per_load, loads.count, loads.each_min, loads.total_min) == (2, 4, 16.0, 64.0)
    assert loads.foams == ("10:00", "10:16", "10:32", "10:48")
    assert loads.has_own_sheet


def test_the_cream_is_for_the_learners_alone(demo: Asked) -> None:
    cream = {each.name: each for each in of(demo).creams}["C2"]
    assert cream.all_g == pytest.approx(2777.2, abs=0.05)
    assert cream.batches == pytest.approx(3.26, abs=0.005)


def test_each_seat_says_what_its_note_means_here(demo: Asked) -> None:
    vegetarian, pregnant, eggs = of(demo).seats
    assert vegetarian.is_against
    assert vegetarian.text.startswith("T2 holds powdered gelatine.")
    assert vegetarian.opens.startswith("Open:")
    assert not pregnant.is_against
    assert "pasteurised or heated" in pregnant.text
    assert eggs.text == (
        "4 US Large are 200 g shelled, 2 % under the 204 g that are planned: weigh them."
    )


NOTES = (
    "One learner is vegetarian (gelatine). One is pregnant (cooked or pasteurised egg only). "
    "One brings US Large eggs."
)
MAKES = "Each makes: 1 F3, filled and rolled as T2, and takes it home\n"


def test_a_shut_gluten_gate_is_said_at_the_seat_with_what_opens_it(demo: Asked) -> None:
    (seat,) = of(demo, (NOTES, "One has coeliac disease.")).seats
    assert "The gluten gate of T2 is shut: millet flour, lot L-004" in seat.text
    assert seat.opens.startswith("Open: A valid test or certificate of L-004 opens it")


def test_an_allergy_that_is_not_understood_is_said_and_to_be_asked(demo: Asked) -> None:
    (seat,) = of(demo, (NOTES, "One is allergic to kiwi.")).seats
    assert "was not understood as a diet" in seat.text
    assert seat.opens.startswith("Open: Ask")


def test_a_class_without_a_torte_holds_its_notes_against_the_formula(demo: Asked) -> None:
    (seat,) = of(demo, (NOTES, "One is allergic to egg."), (MAKES, "")).seats
    assert seat.is_against
    assert seat.text.startswith("F3 holds egg")


def test_what_the_kits_hold_counts_beside_a_torte_that_is_of_other_things(demo: Asked) -> None:
    (seat,) = of(demo, (NOTES, "One has a nut allergy."), ("10 F3", "10 F4")).seats
    assert seat.is_against
    assert "F4 holds " in seat.text and "T2 holds" not in seat.text


def test_a_spirit_is_named_at_the_seat_of_somebody_who_is_pregnant(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    syrup = "Rum syrup\nFamily: syrup\n\n100 g water\n100 g caster sugar\n30 g dark rum, 40 % vol\n"
    save_text("formula", "S9", syrup, asked, seen=None)
    text = "Class 9\nDate: 2027-06-20\nLearners: 2\nNotes: One is pregnant.\n\n2 S9\n"
    (seat,) = class_day(text, asked).seats
    assert seat.text.startswith("S9 holds ") and "rum" in seat.text
    assert (seat.is_against, seat.opens) == (False, "")


def test_a_note_that_is_held_against_nothing_says_so(demo: Asked) -> None:
    text = "Class 9\nDate: 2027-06-20\nLearners: 2\nNotes: One is allergic to egg.\n\n3 F2x\n"
    (seat,) = class_day(text, demo).seats
    assert seat.text.startswith("It was held against nothing: ")


def test_what_sets_longer_than_the_class_lasts_goes_home_uncut(demo: Asked) -> None:
    (clash,) = of(demo).clashes
    assert clash.startswith("C2 wants 4 h cold before it is cut, and the class lasts 3.5 h")
    assert dict(of(demo).gluten)["T2"] == "No gluten sentence: L-004."


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("Learners: 8", "Learners: 9", "9 learners are 5 loads of 2; the text says 4."),
        ("1 spare", "2 spare", "The kits come to 11, and 10 F3 are to be made."),
        ("10:00 to 13:30", "10:00 to 11:00", "The loads take 64 min, the class 60."),
        ("Learners: 8\n", "", "How many learners come? Type a line such as: Learners: 8"),
    ],
)
def test_what_does_not_agree_is_said(demo: Asked, old: str, new: str, said: str) -> None:
    assert said in of(demo, (old, new)).clashes


def test_what_is_not_said_is_not_guessed(demo: Asked) -> None:
    bare = class_day("Class 8\nDate: 2027-06-20\n\n3 F2\n", demo)
    assert (bare.loads, bare.creams, bare.torte, bare.seats) == (None, (), "", ())
    assert (bare.begins, bare.ends, bare.learners) == (None, None, None)
    assert bare.kits is not None
    assert (bare.kits.count, bare.kits.portion_g) == (3, 105.0)
    unknown = class_day("Class 9\nDate: 2027-06-20\nLearners: 2\n\n3 F2x\n", demo)
    assert (unknown.kits, unknown.formula) == (None, "")
