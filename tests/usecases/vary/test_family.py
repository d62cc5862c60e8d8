"""The family of a formula: children that stay, follow, or wait for a decision."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from krume.base import InputError
from krume.design import read, varying
from krume.store import book_at
from krume.usecases import Asked, FamilyWish, VaryWish, vary_children, vary_formula


@pytest.fixture
def family(own_demo: Asked) -> Asked:
    """A demo book with a child of F1 in it, called F1S."""
    path = book_at(own_demo.book).path / "formulas" / "F1S.txt"
    answer = vary_formula("F1", VaryWish(("hazelnut=sunflower",), write=path), own_demo)
    assert answer.result.written is not None
    return own_demo


def change(asked: Asked, name: str, *pairs: tuple[str, str]) -> None:
    """Edit a text of the book by hand."""
    path = book_at(asked.book).path / "formulas" / f"{name}.txt"
    text = path.read_text(encoding="utf-8")
    for old, new in pairs:
        assert f"\n{old}" in text
        text = text.replace(f"\n{old}", f"\n{new}")
    path.write_text(text, encoding="utf-8")


def test_a_formula_without_children_says_so(own_demo: Asked) -> None:
    answer = vary_children("F2", FamilyWish(), own_demo)
    assert answer.result.children == ()
    assert [n.code for n in answer.notices if n.code == "no-children"]


def test_a_child_of_a_parent_that_stayed_is_unchanged(family: Asked) -> None:
    (child,) = vary_children("F1", FamilyWish(), family).result.children
    assert (child.name, child.state, child.edited) == ("F1S", "unchanged", False)


def test_a_child_that_was_left_alone_follows(family: Asked, tmp_path: Path) -> None:
    change(family, "F1", ("40 g ground", "50 g ground"), ("12 g white rice", "15 g white rice"))
    answer = vary_children("F1", FamilyWish(write=tmp_path / "new.txt"), family)
    (child,) = answer.result.children
    assert child.state == "follows"
    assert {c.name: c.after_g for c in child.changes} == {
        "white rice flour": 15, "ground sunflower kernels": 50, "sunflower oil": 4.6
    }  # fmt: skip
    again = vary_children("F1", FamilyWish((str(tmp_path / "new.txt"),)), family)
    assert [(c.state, c.edited) for c in again.result.children] == [("unchanged", False)]


def test_what_only_the_person_changed_is_kept_while_the_rest_follows(
    family: Asked, tmp_path: Path
) -> None:
    change(family, "F1", ("12 g white rice", "15 g white rice"))
    change(family, "F1S", ("4 g lemon", "6 g lemon"))
    answer = vary_children("F1", FamilyWish(write=tmp_path / "new.txt"), family)
    (child,) = answer.result.children
    assert (child.state, child.edited) == ("follows", True)
    text = (tmp_path / "new.txt").read_text(encoding="utf-8")
    assert "\n6 g lemon juice\n" in text and "\n15 g white rice flour\n" in text


def test_what_both_changed_is_asked_and_each_answer_settles_it(
    family: Asked, tmp_path: Path
) -> None:
    change(family, "F1", ("34 g potato", "30 g potato"))
    change(family, "F1S", ("34 g potato", "32 g potato"))
    answer = vary_children("F1", FamilyWish(write=tmp_path / "no.txt"), family)
    assert answer.exit_code == 3
    (problem,) = answer.problems
    assert [option.line for option in problem.options] == [
        "32 g potato starch",
        "30 g potato starch",
    ]
    assert answer.result.children[0].state == "decide"
    assert not (tmp_path / "no.txt").exists()
    for at, option in enumerate(problem.options):
        asked = replace(family, answers=(f"{problem.where}={option.line}",))
        new = tmp_path / f"{at}.txt"
        assert vary_children("F1", FamilyWish(write=new), asked).exit_code == 0
        assert f"\n{option.line}\n" in new.read_text(encoding="utf-8")


def test_a_parent_that_lost_the_swapped_line_leaves_the_child_to_the_person(
    family: Asked,
) -> None:
    change(family, "F1", ("40 g ground hazelnuts, toasted\n", ""))
    answer = vary_children("F1", FamilyWish(), family)
    assert answer.exit_code == 3
    assert answer.result.children[0].state == "decide"
    assert answer.problems[0].code == "no-such-line"


def test_a_child_that_kept_nothing_of_its_parent_asks_about_every_difference(
    family: Asked,
) -> None:
    path = book_at(family.book).path / "formulas" / "F1S.txt"
    lines = path.read_text(encoding="utf-8").splitlines()
    kept = [x for x in lines if not x.startswith(("Parent was:", "Own lines:"))]
    path.write_text("\n".join(kept) + "\n", encoding="utf-8")
    change(family, "F1", ("34 g potato", "30 g potato"))
    answer = vary_children("F1", FamilyWish(), family)
    assert [d.parents for d in answer.result.children[0].decisions] == ["30 g potato starch"]


def test_a_child_beside_the_book_is_named(demo: Asked, write: Callable[[str], str]) -> None:
    path = write("Kid\n\n40 g caster sugar\n")
    with pytest.raises(InputError, match="names no parent"):
        vary_children("F1", FamilyWish((path,)), demo)


def test_of_several_children_the_one_to_write_is_named(family: Asked, tmp_path: Path) -> None:
    path = book_at(family.book).path / "formulas" / "F1P.txt"
    vary_formula("F1", VaryWish(("hazelnut=pistachio",), write=path), family)
    with pytest.raises(InputError, match="--child"):
        vary_children("F1", FamilyWish(write=tmp_path / "new.txt"), family)
    wish = FamilyWish(("F1P",), write=tmp_path / "new.txt")
    assert vary_children("F1", wish, family).result.written == str(tmp_path / "new.txt")


def test_a_child_with_a_question_of_its_own_is_unreadable_until_it_is_answered(
    family: Asked,
) -> None:
    change(family, "F1S", ("4 g lemon juice", "some lemon juice\n4 g lemon juice\n-3 g sugar"))
    answer = vary_children("F1", FamilyWish(), family)
    assert answer.exit_code == 3
    assert answer.result.children[0].state == "unreadable"
    assert answer.problems[0].where.startswith("F1S line")


def test_a_child_with_another_blend_follows_all_but_its_blend(
    bare: Asked, write: Callable[[str], str], tmp_path: Path
) -> None:
    parent = "Own\n\n40 g white rice flour\n30 g potato starch\n3 eggs, EU M\n90 g caster sugar\n"
    plain = parent.replace("40 g white rice flour", "40 g sorghum flour")
    head = varying.blend_lineage("Own", read(parent).value, read(plain).value)
    child = tmp_path / "kid.txt"
    child.write_text(varying.with_head(plain, head), encoding="utf-8")
    path = write(parent)
    (row,) = vary_children(path, FamilyWish((str(child),)), bare).result.children
    assert (row.state, row.swaps) == ("unchanged", ("another blend",))
    Path(path).write_text(parent.replace("90 g", "80 g").replace("30 g", "40 g"), encoding="utf-8")
    answer = vary_children(path, FamilyWish((str(child),), write=tmp_path / "new.txt"), bare)
    assert answer.result.children[0].state == "follows"
    grams = {
        line.name: line.mass_g
        for line in read(Path(tmp_path / "new.txt").read_text("utf-8")).value.lines
    }
    assert grams["caster sugar"] == 80.0
    assert sum(grams[name] or 0.0 for name in ("sorghum flour", "potato starch")) == 80.0
    assert "white rice flour" not in grams
