"""A child's head and text: read again they say the same, and steps keep their sums."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.design import Formula, read
from krume.design.varying import (
    Change,
    Lineage,
    Variation,
    child_text,
    cut_wanted,
    fingerprint,
    follow,
    lineage_of,
    lines_as_were,
    parent_as_was,
    swap_wanted,
    vary,
)
from tests.design.varying.studio import demo

COVERS = ["child_text", "following"]


def lineage(made: Variation, **more: object) -> Lineage:
    return Lineage(
        parent="F1",
        parent_lines=fingerprint(made.parent.lines),
        own_lines=fingerprint(made.formula.lines),
        parent_was=lines_as_were(made.parent.lines),
        **more,  # type: ignore[arg-type]
    )


def written(made: Variation, name: str = "Kid") -> Formula:
    text = child_text(made.parent, made.lines, name=name, lineage=lineage(made))
    found = read(text, eggs_region="eu")
    assert not found.problems, (text, found.problems)
    return found.value


@pytest.mark.parametrize(
    ("name", "swap"),
    [("F1", "hazelnut=sunflower"), ("F1", "10 g buckwheat=cocoa"), ("F2", "butter=oil"),
     ("F3", "oil=butter"), ("F4", "walnut=pistachio"), ("F5", "orange juice=water"),
     ("F6", "butter=oil"), ("F6", "milk=soya drink"), ("F7", "egg=water"), ("F2", "sugar=honey"),
     ("C1", "milk=soya drink"), ("C4", "sugar=honey"), ("F2", "teff=white rice flour")],
)  # fmt: skip
def test_a_child_read_again_is_the_child_that_was_made(name: str, swap: str) -> None:
    wanted = swap_wanted(demo(name), swap)
    assert not wanted.problems
    made = vary(demo(name), wanted.value.changes)
    again = written(made)
    assert [(x.ingredient, x.part, x.mass_g) for x in again.lines] == [
        (x.ingredient, x.part, x.mass_g) for x in made.formula.lines
    ]
    head = lineage_of(again)
    assert head is not None
    assert head.own_lines == fingerprint(again.lines)
    assert head.parent_lines == fingerprint(demo(name).lines)
    assert again.tin == demo(name).tin
    assert again.core_c == demo(name).core_c


@given(st.integers(1, 60))
def test_amounts_in_the_steps_add_up_to_the_line_however_much_is_cut(percent: int) -> None:
    wanted = cut_wanted(demo("F2"), f"sugar {percent} %").value
    again = written(vary(demo("F2"), wanted.changes))
    (sugar,) = [at for at, line in enumerate(again.lines) if line.name == "caster sugar"]
    told = [use.mass_g for use in again.uses if use.line == sugar and use.mass_g is not None]
    assert sum(told) == pytest.approx(again.lines[sugar].mass_g, abs=0.011)


def test_the_steps_name_what_is_in_it_now() -> None:
    again = written(vary(demo("F1"), swap_wanted(demo("F1"), "hazelnut=sunflower").value.changes))
    steps = "\n".join(again.steps)
    assert "hazelnut" not in steps
    assert "stir in the sunflower kernels" in steps
    assert "sunflower oil" in steps


def test_what_the_parent_says_otherwise_is_kept_word_for_word() -> None:
    parent = demo("F1")
    made = vary(parent, (Change(4, 40.0, "pecans", "ground pecans", 40.0),))
    kept = set(child_text(parent, made.lines, name=None, lineage=lineage(made)).splitlines())
    lost = [x.text for x in parent.source_lines if x.text not in kept]
    assert lost == [
        "40 g ground hazelnuts, toasted",
        "Sift the flours and the starch together twice and stir in the hazelnuts.",
    ]


def test_a_grandchild_names_its_own_parent_alone() -> None:
    kid = written(vary(demo("F1"), swap_wanted(demo("F1"), "hazelnut=pecans").value.changes))
    grandchild = written(vary(kid, swap_wanted(kid, "pecans=walnuts").value.changes))
    heads = [x.text for x in grandchild.source_lines if x.text.startswith("Parent:")]
    assert heads == ["Parent: F1"]


def test_a_parent_is_read_again_from_what_its_child_kept() -> None:
    made = vary(demo("F1"), swap_wanted(demo("F1"), "hazelnut=pecans").value.changes)
    head = lineage_of(written(made))
    changed = read("Orl\nEggs: EU sizes\n\n50 g buckwheat flour\n", eggs_region="eu").value
    assert head is not None
    was = parent_as_was(head, changed, eggs_region="eu")
    assert was is not None
    assert fingerprint(was.lines) == fingerprint(demo("F1").lines)


def test_a_head_that_was_tampered_with_is_not_believed() -> None:
    head = Lineage("F1", parent_lines="00000000", parent_was=lines_as_were(demo("F1").lines))
    assert parent_as_was(head, demo("F2"), eggs_region="eu") is None


def test_headings_come_back_with_the_parent() -> None:
    text = "Cake\n\nSponge:\n100 g white rice flour\n\nFilling:\n20 g caster sugar\n\nBake.\n"
    parent = read(text).value
    head = Lineage("Cake", (), parent_lines=fingerprint(parent.lines),
                   parent_was=lines_as_were(parent.lines))  # fmt: skip
    was = parent_as_was(head, demo("F2"), eggs_region=None)
    assert was is not None
    assert [line.section for line in was.lines] == [line.section for line in parent.lines]


def test_a_formula_without_a_parent_has_no_lineage() -> None:
    assert lineage_of(demo("F1")) is None


def lines(text: str) -> tuple[object, ...]:
    return read(f"A\n\n{text}\n").value.lines


MADE = "90 g caster sugar\n9 g sunflower oil\n60 g rice starch"


@pytest.mark.parametrize(
    ("now", "child", "masses", "decisions"),
    [
        (MADE, MADE, [90, 9, 60], 0),
        (MADE.replace("90", "80"), MADE, [80, 9, 60], 0),
        (MADE, MADE.replace("90", "70"), [70, 9, 60], 0),
        (MADE.replace("90", "80"), MADE.replace("9 g s", "7 g s"), [80, 7, 60], 0),
        (MADE.replace("90", "80"), MADE.replace("90", "80"), [80, 9, 60], 0),
        (MADE.replace("90", "80"), MADE.replace("90", "70"), [70, 9, 60], 1),
        (MADE.replace("\n60 g rice starch", ""), MADE, [90, 9, 0], 0),
        (MADE.replace("\n60 g rice starch", ""), MADE.replace("60", "50"), [90, 9, 50], 1),
        (MADE + "\n3 g lemon juice", MADE, [90, 9, 60, 3], 0),
        (MADE.replace("60", "55"), MADE.replace("\n60 g rice starch", ""), [90, 9], 1),
        (MADE, MADE.replace("\n60 g rice starch", ""), [90, 9], 0),
    ],
)
def test_what_was_left_alone_follows_and_what_both_changed_is_asked(
    now: str, child: str, masses: list[float], decisions: int
) -> None:
    found = follow(lines(MADE), lines(now), lines(child))  # type: ignore[arg-type]
    assert [line.after_g for line in found.lines] == masses
    assert len(found.decisions) == decisions


@given(st.lists(st.integers(1, 99), min_size=3, max_size=3))
def test_an_untouched_child_becomes_what_it_would_be_today(grams: list[int]) -> None:
    names = ("caster sugar", "sunflower oil", "rice starch")
    now = "\n".join(f"{g} g {name}" for g, name in zip(grams, names, strict=True))
    found = follow(lines(MADE), lines(now), lines(MADE))  # type: ignore[arg-type]
    assert [line.after_g for line in found.lines] == grams
    assert found.decisions == ()
