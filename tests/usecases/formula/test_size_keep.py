"""A size is kept as a child once, says its parent, and follows it by the same factor."""

import pytest

from krume.base import ConflictError, InputError
from krume.design import read
from krume.design.varying import fingerprint, lineage_of
from krume.usecases import (
    Asked,
    FamilyWish,
    SizeChoice,
    SizeWish,
    is_new_size,
    keep_size,
    load_demo,
    parent_now,
    read_formula,
    save_text,
    size_formula,
    text_now,
    vary_children,
    versions_of,
)

WIDE = "round 24 x 7 cm"


@pytest.fixture
def own(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    """A demo book that the test may change."""
    asked = Asked(book=tmp_path_factory.mktemp("size") / "book")
    load_demo(asked)
    return asked


def choice(tin: str = WIDE, kind: str = "whole", factor: float = 1.4, **more: object) -> SizeChoice:
    return SizeChoice(tin, kind, factor, **{"seen": 1, **more})  # type: ignore[arg-type]


def test_a_kept_size_has_its_tin_its_grams_and_its_steps_and_no_plan_of_the_bake(
    own: Asked,
) -> None:
    kept = keep_size("F2", choice(), own)
    assert kept.name == "F2-round-24x7-cm-7-eggs"
    assert kept.title == "Tidewick vanilla sponge, round 24 x 7 cm, 7 eggs"
    lines = kept.text.splitlines()
    for line in ("Parent: F2", "Tin: round 24 x 7 cm", "7 eggs, medium, separated"):
        assert line in lines
    assert "182 g caster sugar" in lines
    assert "77 g of the sugar" in kept.text
    assert "remaining 105 g sugar" in kept.text
    assert "Baked:" not in kept.text
    found = read_formula(f"formulas/{kept.name}.txt", own)
    assert found.problems == ()
    assert sum(line.mass_g or 0 for line in found.result.lines) == pytest.approx(726.6)


def test_sent_twice_a_size_is_kept_once(own: Asked) -> None:
    first, second = keep_size("F2", choice(), own), keep_size("F2", choice(), own)
    assert (second.name, second.revision) == (first.name, 1)
    assert len(versions_of("formula", first.name, own)) == 1


def test_a_name_that_is_taken_says_so_and_another_name_is_kept(own: Asked) -> None:
    with pytest.raises(ConflictError, match="Another formula goes by F3"):
        keep_size("F2", choice(name="F3"), own)
    assert text_now("formula", "F3", own).revision == 1
    assert keep_size("F2", choice(name="Big one"), own).name == "Big one"


def test_a_size_of_a_version_that_is_gone_is_not_kept(own: Asked) -> None:
    text = text_now("formula", "F2", own).text
    save_text("formula", "F2", text.replace("130 g", "131 g"), own, seen=1)
    with pytest.raises(ConflictError, match="changed since this size"):
        keep_size("F2", choice(), own)


@pytest.mark.parametrize(
    "wrong", [choice(factor=1.5), choice(kind="exact"), choice("round 20 x 7 cm", "as-is", 1.0)]
)
def test_what_is_no_new_size_of_that_tin_is_not_kept(own: Asked, wrong: SizeChoice) -> None:
    with pytest.raises(InputError, match="not among the sizes"):
        keep_size("F2", wrong, own)


def test_the_same_grams_in_another_tin_are_a_size_of_their_own(own: Asked) -> None:
    for tin, is_new in (("round 20 x 7 cm", False), ("round 8in x 3in", True)):
        result = size_formula("F2", SizeWish((tin,)), own).result
        first = result.options[0]
        assert (first.kind, is_new_size(first, result)) == ("as-is", is_new)
    kept = keep_size("F2", choice("round 8in x 3in", "as-is", 1.0), own)
    assert "Tin: round 8in x 3in" in kept.text
    assert "130 g caster sugar" in kept.text


@pytest.mark.parametrize(
    ("name", "tin", "kind", "factor"),
    [("F3", "sheet 30x20x3 cm", "whole", 0.75), ("F5", "tube 25 x 10 hole 6 cm", "whole", 2.0)],
)
def test_its_head_says_what_its_lines_say(
    own: Asked, name: str, tin: str, kind: str, factor: float
) -> None:
    kept = keep_size(name, choice(tin, kind, factor), own)
    formula = read(kept.text, eggs_region="eu").value
    lineage = lineage_of(formula)
    assert lineage is not None
    assert lineage.own_lines == fingerprint(formula.lines)
    assert lineage.sized == f"x {factor:g} for {tin}"
    assert parent_now(kept.name, own) is not None


def test_a_sized_child_follows_its_parent_by_the_same_factor(own: Asked) -> None:
    child = keep_size("F2", choice(), own).name
    family = vary_children("formulas/F2.txt", FamilyWish(), own).result.children
    assert [(each.name, each.state) for each in family] == [(child, "unchanged")]
    text = text_now("formula", "F2", own).text
    changed = text.replace("130 g caster", "120 g caster").replace("remaining 75", "remaining 65")
    save_text("formula", "F2", changed, own, seen=1)
    answer = vary_children("formulas/F2.txt", FamilyWish((child,)), own)
    (row,) = answer.result.children
    assert row.state == "follows"
    assert [(c.ingredient, c.before_g, c.after_g) for c in row.changes] == [
        ("sugar-granulated", 182.0, 168.0)
    ]
    assert "168 g caster sugar" in (answer.result.text or "")
    assert "Sized: x 1.4 for round 24 x 7 cm" in (answer.result.text or "")


def test_a_formula_without_a_parent_has_none_and_a_parent_outside_the_book_is_named(
    own: Asked,
) -> None:
    assert parent_now("F2", own) is None
    save_text("formula", "kid", "Kid\nParent: Gran's\n\n40 g caster sugar\n", own, seen=None)
    found = parent_now("kid", own)
    assert found is not None
    assert (found.name, found.in_book, found.sized) == ("Gran's", None, "")


def test_two_sizes_of_one_tin_have_two_names(own: Asked) -> None:
    tin = "sheet 30x20x3 cm"
    result = size_formula("F7", SizeWish((tin,)), own).result
    kinds = {option.kind: option.factor for option in result.options}
    names = {keep_size("F7", choice(tin, kind, kinds[kind]), own).name for kind in kinds}
    assert len(names) == len(kinds) == 3
    assert {"F7-sheet-30x20x3-cm", "F7-sheet-30x20x3-cm-x-1.326"} < names


def test_a_tin_that_a_step_names_is_changed_there(own: Asked) -> None:
    text = (
        "Plain\nEggs: EU sizes\n\n100 g white rice flour\n4 eggs, medium\n100 g caster sugar\n\n"
        "Bake 30 minutes in a 20 cm round tin, 7 cm high.\n"
    )
    save_text("formula", "plain", text, own, seen=None)
    first = size_formula("plain", SizeWish((WIDE,)), own).result.options[0]
    kept = keep_size("plain", choice(WIDE, first.kind, first.factor), own)
    assert "Bake 30 minutes in a round 24 x 7 cm." in kept.text
    assert "20 cm round" not in kept.text
