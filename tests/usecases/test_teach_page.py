"""A formula as a learner reads it: two systems of units, conflicts, and what is missing."""

from pathlib import Path

import pytest

from krume.base import Interval, NotFoundError
from krume.usecases import Asked, load_demo, save_text, teach_view


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def test_an_ounce_is_what_the_law_makes_it(asked: Asked) -> None:
    save_text("formula", "mine", "Mine\n\n453.59237 g sugar\n1 oz butter\n", asked, seen=None)
    found = teach_view("mine", asked).formula
    assert found is not None
    assert [line.mass_oz for line in found.lines] == pytest.approx([16.0, 1.0], rel=1e-12)


def test_a_span_keeps_both_its_ends(asked: Asked) -> None:
    save_text("formula", "mine", "Mine\n\n2-3 g lemon zest\n", asked, seen=None)
    found = teach_view("mine", asked).formula
    assert found is not None
    ounces, grams = found.lines[0].mass_oz, found.lines[0].mass_g
    assert isinstance(ounces, Interval) == isinstance(grams, Interval)


def test_heat_and_tin_are_told_in_both_systems(asked: Asked) -> None:
    found = teach_view("F2", asked).formula
    assert found is not None
    assert found.oven is not None
    assert (found.oven.temp_c, found.oven.temp_f) == (170.0, 338.0)
    assert found.tin_in == "7.9 x 2.8"
    assert found.missing == ()
    assert found.conflicts == ()


def test_what_a_learner_would_look_for_in_vain_is_named(asked: Asked) -> None:
    text = "Mine\nTin: round 20 x 5 cm\n\n100 g sugar\n1 gelp\n"
    save_text("formula", "mine", text, asked, seen=None)
    found = teach_view("mine", asked).formula
    assert found is not None
    assert [text.split(" ")[0] for text in found.missing] == ["Line", "No", "The"]


def test_a_class_and_its_formula_know_each_other(asked: Asked) -> None:
    assert [row.name for row in teach_view("CLASS7", asked).beside] == ["F3"]
    assert [row.name for row in teach_view("F3", asked).beside] == ["CLASS7"]
    assert teach_view("F2", asked).beside == ()


def test_another_name_is_not_found(asked: Asked) -> None:
    for name in ("nobody", "T1", "../studio"):
        with pytest.raises(NotFoundError):
            teach_view(name, asked)
