"""The blends of a request: their goods, lots, allergens, and for whom the jar is not."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest

from krume.design import read
from krume.publish import Blend
from krume.usecases import Asked
from krume.usecases.asking.kind import made_of
from krume.usecases.sheets.blend_card import blend_lines, blends_of


def _blend(name: str, asked: Asked) -> Blend:
    (blend,) = blends_of(made_of(name, asked), name, asked, "eu").blends.values()
    return blend


@pytest.mark.parametrize(
    ("name", "total_g", "beside"),
    [
        ("F1", 104.0, []),
        ("F2", 105.0, []),
        ("F3", 70.25, ["xanthan gum"]),
        ("F6", 155.2, ["baking powder", "xanthan gum"]),
        ("F7", 204.0, ["psyllium husk powder"]),
    ],
)
def test_a_blend_holds_flours_starches_and_what_is_sifted_with_them(
    demo: Asked, name: str, total_g: float, beside: list[str]
) -> None:
    blend = _blend(name, demo)
    assert blend.total_g == pytest.approx(total_g)
    assert [part.name for part in blend.parts if not part.is_flour] == beside


def test_nuts_sugar_and_salt_are_in_no_blend(demo: Asked) -> None:
    names = {part.name for part in _blend("F1", demo).parts}
    assert not names & {"ground hazelnuts", "caster sugar", "fine salt"}


def test_a_cream_with_one_starch_has_no_blend(demo: Asked) -> None:
    assert blends_of(made_of("C1", demo), "C1", demo, "eu").blends == {}


def test_an_order_has_the_blend_of_each_of_its_cakes_once(demo: Asked) -> None:
    found = blends_of(made_of("102", demo), "102", demo, "eu").blends
    assert list(found) == ["F3", "F4", "F7"]


@pytest.mark.parametrize(("name", "lot"), [("F2", "L-002"), ("F3", "L-004"), ("F6", "L-011")])
def test_a_lot_without_a_good_record_keeps_the_jar_from_guests_with_coeliac_disease(
    demo: Asked, name: str, lot: str
) -> None:
    blend = _blend(name, demo)
    assert lot in blend.gluten
    assert blend.not_for[0].startswith("Guests with coeliac disease")
    assert lot in blend.not_for[0]


def test_good_lots_without_the_rooms_record_do_not_open_the_jar(demo: Asked) -> None:
    blend = _blend("F1", demo)
    assert {lot.state for lot in blend.lots} == {"good"}
    assert blend.not_for[0].startswith("Guests with coeliac disease")
    assert "room: cleaning record" in blend.not_for[0]


def test_what_the_whole_formula_still_needs_is_told_beside_a_good_blend(demo: Asked) -> None:
    blend = _blend("F1", demo)
    assert "L-008" not in blend.gluten
    assert "What is made of it as F1 needs more records: L-008." in blend.not_for


def test_only_good_records_and_a_cleaned_room_open_the_jar(own_demo: Asked) -> None:
    assert own_demo.book is not None
    (own_demo.book / "cleaning.csv").write_text("date,cleaned\n2027-06-10,yes\n", encoding="utf-8")
    blend = _blend("F1", own_demo)
    assert blend.gluten.startswith("Gluten records complete for the day")
    assert not any("coeliac" in text for text in blend.not_for)
    later = _blend("F1", replace(own_demo, on=date(2029, 1, 1)))
    assert {lot.state for lot in later.lots} == {"ran out"}
    assert any("coeliac" in text for text in later.not_for)


def test_buckwheat_is_named_though_no_list_names_it(demo: Asked) -> None:
    assert any("Buckwheat" in text for text in _blend("F1", demo).cautions)
    assert not any("Buckwheat" in text for text in _blend("F2", demo).cautions)


def test_goods_whose_parts_nobody_said_are_asked(demo: Asked) -> None:
    assert _blend("F6", demo).unknown == ("baking powder",)


def test_without_lots_the_jar_says_no_record(bare: Asked, write: Callable[[str], str]) -> None:
    text = "Two flours\n\n60 g white rice flour\n40 g potato starch\n2 eggs, EU M\n\nSift, bake.\n"
    blend = _blend(write(text), bare)
    assert {lot.lot for lot in blend.lots} == {"no lot"}
    assert any("coeliac" in text for text in blend.not_for)


def test_a_flour_without_a_mass_has_no_card_and_is_named(
    bare: Asked, write: Callable[[str], str]
) -> None:
    text = "Two flours\n\n60 g white rice flour\nsome teff flour\n40 g potato starch\n\nSift.\n"
    path = write(text)
    found = blends_of(made_of(path, bare), path, bare, "eu")
    assert found.blends == {}
    (check,) = found.checks
    assert check.passed is None
    assert "teff flour" in check.text


def test_small_amounts_carry_the_mark_of_the_scale() -> None:
    formula = read("X\n\n60 g rice flour, white\n40 g potato starch\n0.25 g xanthan gum\n").value
    marks = {line.name: mark for line, mark in blend_lines(formula, scale_g=0.1)}
    assert marks["xanthan gum"] == "one step of 0.1 g is 40 % of it"
    assert marks["potato starch"] == ""
