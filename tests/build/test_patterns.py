"""The marks: one for each material, told apart without colour."""

import pytest

from krume.build import materials
from krume.build.patterns import defs, fill
from tests.build.studio import tree


def test_only_the_materials_asked_for_are_defined_and_their_ids_begin_as_wished() -> None:
    root = tree(defs(["jelly", "cream"], "x"))
    assert {pattern.get("id") for pattern in root} == {"x-jelly", "x-cream"}
    assert fill("jelly", "x") == 'fill="url(#x-jelly)"'


@pytest.mark.parametrize("key", [key for key in materials() if key not in ("coat", "syrup")])
def test_each_material_has_a_tint_with_a_class_and_marks_on_it(key: str) -> None:
    (pattern,) = tree(defs([key], "x"))
    ground, *marks = pattern
    assert (ground.get("class"), ground.get("fill")) == (f"m-{key}", materials()[key].tint)
    assert marks


def test_no_two_materials_have_the_same_marks() -> None:
    marks = [defs([key], "x").split("/>", 1)[-1] for key in materials() if key != "coat"]
    assert len(set(marks)) == len(marks)


def test_the_coat_is_blank_and_syrup_lets_through_what_it_soaks() -> None:
    (coat,) = tree(defs(["coat"], "x"))
    (syrup,) = tree(defs(["syrup"], "x"))
    assert len(coat) == 1
    assert all(mark.tag != "rect" for mark in syrup)
