"""`krume.build.standing.judging`: the word for each cream, and where it comes from."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.build import standing
from krume.build.standing.judging import VERDICTS, Standing, StandingLayer
from tests.build.studio import (
    C1,
    C2,
    C4,
    PARTS,
    built,
    demo,
    plan_of,
    torte_of,
    without_density,
)


def judged(name: str) -> Standing:
    return standing(demo(name), {**PARTS, "C4": replace(C4, gelatine_g_kg=12.8)})


def cream_of(text: str, **changed: object) -> StandingLayer:
    parts = {**PARTS, **changed}
    return standing(torte_of(text), parts).layers[0]  # type: ignore[arg-type]


STACK = "2 layers of F1, 14 mm\n10 mm {} between the layers"


def test_t1_is_firm_enough_in_the_cold_and_borderline_in_a_warm_room() -> None:
    found = judged("T1")
    assert (found.verdict, found.warm_verdict) == ("firm enough", "borderline")


def test_the_lower_cream_carries_more_and_needs_more() -> None:
    lower, upper, _ = judged("T1").layers
    assert lower.above_g is not None and upper.above_g is not None
    assert lower.need_pa is not None and upper.need_pa is not None
    assert lower.above_g > upper.above_g
    assert lower.need_pa > upper.need_pa


def test_a_slice_of_the_lower_cream_decides_because_it_is_narrow() -> None:
    lower = judged("T1").layers[0]
    needs = {check.code: check.need_pa for check in lower.checks}
    assert lower.decides == "slice"
    assert needs["slice"] > needs["weight"]


def test_a_coat_only_hangs_by_its_own_weight() -> None:
    coat = judged("T1").layers[-1]
    assert [check.code for check in coat.checks] == ["hang"]
    assert coat.need_pa == pytest.approx(0.80 * 4 * 9.80665, rel=1e-9)


def test_the_rim_of_a_ring_hangs_on_its_discs() -> None:
    lower = judged("T3").layers[0]
    needs = {check.code: check.need_pa for check in lower.checks}
    assert needs["hang"] == pytest.approx(0.72 * 5 * 9.80665, rel=1e-9)


def test_on_the_cream_of_a_roll_lies_the_whole_roll() -> None:
    roll = judged("T2").layers[0]
    assert roll.above_g == pytest.approx(demo("T2").mass_g, rel=1e-12)
    assert roll.decides == "weight"


def test_without_gelatine_a_cream_under_a_disc_is_borderline_and_under_a_tower_too_soft() -> None:
    soft = replace(C2, gelatine_g_kg=0.0)
    assert cream_of(STACK.format("C2"), C2=soft).verdict == "borderline"
    tower = "9 layers of F1, 14 mm, from 3 bakes\n8 x 30 mm C2 between the layers"
    assert cream_of(tower, C2=soft).verdict == "too soft"


@pytest.mark.parametrize(
    ("part", "words"),
    [
        (replace(C1, gelatine_g_kg=None), "how much gelatine"),
        (replace(C1, family=None), "nothing is known of how firm C1 sets"),
    ],
)
def test_what_is_missing_is_named_and_is_no_firmness(part: object, words: str) -> None:
    found = cream_of(STACK.format("C1"), C1=part)
    assert (found.verdict, found.warm_verdict) == ("not known", "not known")
    assert words in found.why_not


def test_a_cream_without_a_density_is_not_known() -> None:
    part = without_density(C1)
    found = standing(demo("T1"), {**PARTS, "C1": part}).layers[0]
    assert found.verdict == "not known"
    assert "density is not known" in found.why_not


def test_a_formula_that_is_missing_is_named() -> None:
    parts = {name: part for name, part in PARTS.items() if name != "C1"}
    found = standing(demo("T1"), parts).layers[0]
    assert found.why_not == "C1 is not in the book"


def test_the_whole_is_as_good_as_its_weakest_and_unknown_is_the_weakest() -> None:
    parts = {**PARTS, "C5": replace(PARTS["C5"], family=None)}
    found = standing(demo("T1"), parts)
    assert [each.verdict for each in found.layers[:2]] == ["firm enough", "firm enough"]
    assert found.verdict == "not known"


def test_nothing_soft_has_no_verdict() -> None:
    found = standing(torte_of("1 layer of F1, 14 mm\n0.15 g/cm2 S1 on the layer"), PARTS)
    assert found.verdict is None
    assert found.layers == ()


@given(st.floats(1.0, 25.0), st.floats(1.0, 25.0))
def test_more_gelatine_never_makes_a_worse_word(one: float, other: float) -> None:
    less, more = sorted((one, other))
    words = [
        cream_of(STACK.format("C2"), C2=replace(C2, gelatine_g_kg=grams)).verdict
        for grams in (less, more)
    ]
    assert VERDICTS.index(words[1]) <= VERDICTS.index(words[0])


def test_only_with_the_margin_to_spare_is_a_cream_firm_enough() -> None:
    found = cream_of(STACK.format("C2"))
    assert found.need_pa is not None and found.low_pa is not None
    grams = C2.gelatine_g_kg or 0.0
    for share, word in ((1.6, "firm enough"), (1.4, "borderline"), (1.01, "borderline")):
        scaled = grams * (share * found.need_pa / found.low_pa) ** (1 / 1.8)
        part = replace(C2, gelatine_g_kg=scaled)
        assert cream_of(STACK.format("C2"), C2=part).verdict == word


def test_of_several_ways_to_cut_the_narrowest_slice_decides() -> None:
    text = "A torte\nSlices: {}\n\n" + STACK.format("C2")
    needs = [
        standing(built(plan_of(text.format(cut))), PARTS).layers[0].checks[-1].need_pa
        for cut in ("12", "24", "12, or 24")
    ]
    assert needs[2] == needs[1] > needs[0]
