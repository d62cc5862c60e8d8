"""A torte for its page: drawings, sums that add, formulas by name, and what may be said."""

from pathlib import Path

import pytest

from krume.usecases import (
    Asked,
    LabelWish,
    build_torte,
    label_of,
    load_demo,
    save_text,
    torte_shown,
)

T1, T3 = "tortes/T1.txt", "tortes/T3.txt"


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    found = Asked(book=tmp_path_factory.mktemp("torte") / "book")
    load_demo(found)
    return found


@pytest.mark.parametrize("name", [T1, T3])
def test_it_is_the_torte_of_the_command(asked: Asked, name: str) -> None:
    assert torte_shown(name, asked).result.build == build_torte(name, asked).result


@pytest.mark.parametrize("name", [T1, T3, "tortes/T2.txt", "tortes/TART.txt"])
def test_grams_add_up_as_printed(asked: Asked, name: str) -> None:
    page = torte_shown(name, asked).result
    total = float(page.total.grams.replace("\u202f", "").replace(" ", ""))
    assert sum(float(row.grams.replace("\u202f", "")) for row in page.sums) == pytest.approx(
        total, abs=1e-9
    )
    assert sum(row.number for row in page.sums) == len(page.build.layers)


@pytest.mark.parametrize("name", ["T1", "T3", "TART"])
def test_the_gate_is_that_of_the_label(asked: Asked, name: str) -> None:
    said = torte_shown(f"tortes/{name}.txt", asked).result.said
    label = label_of(name, LabelWish(), asked).result
    assert said is not None
    assert said.gate_open == label.gluten.claim_allowed
    assert said.opens == label.gluten.opens
    assert set(said.contains) == set(label.contains)


def test_formulas_are_named_as_the_book_names_them(asked: Asked) -> None:
    assert {use.name for use in torte_shown(T1, asked).result.uses} == {"F1", "C1", "C5", "S1"}


def test_the_phone_has_numbers_for_names(asked: Asked) -> None:
    page = torte_shown(T1, asked).result
    assert page.svg is not None
    assert page.svg_narrow is not None
    assert ">custard cream</text>" in page.svg
    assert ">custard cream</text>" not in page.svg_narrow
    assert 'id="phone-name"' in page.svg_narrow


def test_a_formula_that_changed_moves_the_torte(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    before = torte_shown(T1, asked).result
    assert torte_shown(T1, asked).result is before
    text = "Lemon syrup\n\n100 g sugar\n100 g water\n"
    save_text("formula", "S1", text, asked, seen=1)
    assert torte_shown(T1, asked).result is not before


def test_what_cannot_stand_has_no_drawing_but_its_formulas(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    low = "Low\nRing: 22 x 2 cm\n\n3 layers of F1, 14 mm, trimmed to 19.5 cm\n"
    save_text("torte", "low", low, asked, seen=None)
    answer = torte_shown("tortes/low.txt", asked)
    assert not answer.is_possible
    assert answer.problems
    assert answer.result.svg is None
    assert [use.name for use in answer.result.uses] == ["F1"]
