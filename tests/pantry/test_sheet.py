"""A supplier's sheet: what it says is declared, what it does not say is unknown."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.evidence import source
from krume.pantry import find, ingredient, plausible, read_supplier_sheet
from krume.pantry.sheet import slug

SHEET = """\
Psyllium husk powder, fine
Name: Psyllium husk powder 95
Class: gel
Role: binder
Water: 9,0 g
Protein: 2.1 g
Fat: 0.6 g
Carbohydrate: 1.7 g
Fibre: 83.5 g
Ash: 3.1 g
Salt: 0.25 g
Allergens: none
May contain: sesame, wheat
Colour: beige
"""


def test_a_sheet_becomes_an_ingredient_of_one_s_own() -> None:
    read = read_supplier_sheet(SHEET)
    mine = read.value
    assert mine is not None
    assert read.problems == ()
    assert (mine.key, mine.role, mine.status) == (
        "own-psyllium-husk-powder-95",
        "binder",
        "declared",
    )
    assert mine.composition.fibre_g == 83.5
    assert mine.composition.water_g == 9.0
    assert mine.composition.sodium_mg == pytest.approx(100.0)
    assert mine.composition.sugars_g is None
    assert mine.contains == ()
    assert mine.may_contain == ("sesame", "wheat")
    assert source(mine.source).title


def test_what_was_not_used_is_said() -> None:
    assert "'Colour: beige' was not used" in [n.text for n in read_supplier_sheet(SHEET).notices]


def test_it_is_found_and_looked_up_beside_the_packed_ones() -> None:
    mine = read_supplier_sheet(SHEET).value
    assert mine is not None
    assert find("Psyllium husk powder 95", own=(mine,)).key == mine.key
    assert ingredient(mine.key, own=(mine,)).composition.ash_g == 3.1
    assert find("psyllium husk powder").key == "psyllium-husk"


def test_a_binder_s_own_sheet_is_a_binder() -> None:
    mine = read_supplier_sheet(SHEET).value
    assert mine is not None
    assert mine.binder


@pytest.mark.parametrize("word", ["unknown", "-", "?", "not declared", ""])
def test_an_unknown_figure_is_unknown_and_not_zero(word: str) -> None:
    read = read_supplier_sheet(f"Name: X\nClass: gel\nFibre: {word}\n")
    assert read.value is not None
    assert read.value.composition.fibre_g is None
    assert read.problems == ()


def test_a_limit_is_no_figure_and_is_said() -> None:
    read = read_supplier_sheet("Name: X\nClass: gel\nFat: < 0.5 g\n")
    assert read.value is not None
    assert read.value.composition.fat_g is None
    assert [n.text for n in read.notices] == [
        "fat < 0.5 g is a limit and no figure: it stays unknown"
    ]


def test_a_question_names_the_line_it_is_about() -> None:
    read = read_supplier_sheet("Name: X\nClass: starch\n\nProtein: 12 g\n")
    assert [(p.where, p.read) for p in read.problems] == [("line 4", "Protein: 12 g")]
    assert read.problems[0].options[0].line == "Protein: unknown"


BAD = [
    ("no name", "Class: gel\nFibre: 3 g\n", "name-missing", "called"),
    ("no class", "Name: X\nFibre: 3 g\n", "class-missing", "Which class"),
    ("an unknown class", "Name: X\nClass: dust\n", "class-missing", "Which class"),
    ("a word", "Name: X\nClass: fat\nFat: plenty\n", "figure-unread", "no amount per 100 g"),
    ("a negative", "Name: X\nClass: fat\nFat: -3 g\n", "figure-unread", "no amount per 100 g"),
    ("a wrong unit", "Name: X\nClass: fat\nFat: 80 cups\n", "figure-unread", "no amount"),
    ("twice", "Name: X\nClass: fat\nFat: 80 g\nFat: 60 g\n", "figure-twice", "second time"),
    ("too much", "Name: X\nClass: starch\nProtein: 12 g\n", "figure-implausible", "unusual"),
    (
        "a sum over",
        "Name: X\nClass: flour\nWater: 12\nProtein: 8\nFat: 2\nCarbohydrate: 86\nAsh: 1\nFibre: 0",
        "parts-do-not-add-up",
        "109.0 g",
    ),
]


@pytest.mark.parametrize(("what", "text", "code", "says"), BAD, ids=[b[0] for b in BAD])
def test_a_sheet_that_cannot_be_is_asked_with_a_line_to_type(
    what: str, text: str, code: str, says: str
) -> None:
    problems = [p for p in read_supplier_sheet(text).problems if p.code == code]
    assert len(problems) == 1, what
    assert says in problems[0].ask
    assert problems[0].options


def test_saying_that_the_fibre_is_inside_mends_the_sum() -> None:
    text = (
        "Name: X\nClass: flour\nWater: 12\nProtein: 8\nFat: 2\nCarbohydrate: 78\n"
        "Fibre: 8\nAsh: 1\nCarbohydrate basis: by difference\n"
    )
    assert [p.code for p in read_supplier_sheet(text).problems] == []


@given(st.text(max_size=200))
def test_no_text_makes_the_reader_fail(text: str) -> None:
    read = read_supplier_sheet(text)
    assert read.value is None or read.value.status == "declared"


@given(st.floats(0, 100).map(lambda v: round(v, 2)))
def test_grams_and_milligrams_say_the_same(grams: float) -> None:
    by_g = read_supplier_sheet(f"Name: X\nClass: other\nWater: {grams} g\n").value
    by_mg = read_supplier_sheet(f"Name: X\nClass: other\nWater: {grams * 1000:.1f} mg\n").value
    assert by_g is not None
    assert by_mg is not None
    assert by_g.composition.water_g == pytest.approx(by_mg.composition.water_g, abs=1e-3)


def test_ranges_exist_for_every_class_of_the_tables() -> None:
    assert all(plausible(kind) for kind in ("flour", "starch", "fat", "egg", "dairy", "gel"))


def test_a_key_is_made_of_any_name() -> None:
    assert slug("ß!") == "own-ingredient" or slug("ß!").startswith("own-")
    assert slug("Rice (L-001)") == "own-rice-l-001"
