"""Gelatine of a torte: for what is made, with its water; dry powder and too much spirit refused."""

from dataclasses import replace

import pytest

from krume.base import Infeasible
from krume.build import ComponentFormula, Gel, build_torte, gels
from tests.build.studio import C2, PARTS, built, demo_plan, plan_of

GEL = Gel(
    "gelatine", 8.0, 200.0, is_leaf=False, line=7, has_liquid=True, alcohol_g=0.0, water_g=600.0
)
SET = replace(C2, gel=GEL)
TEXT = "A\n\n2 layers of F4, 12 mm\n10 mm C2 between the layers"


def codes(part: ComponentFormula) -> list[str]:
    """Codes of what is asked and noticed."""
    read = build_torte(plan_of(TEXT), {**PARTS, "C2": part})
    assert not isinstance(read, Infeasible)
    return [p.code for p in read.problems] + [n.code for n in read.notices]


def test_gelatine_is_told_for_the_batches_that_are_made() -> None:
    torte = built(demo_plan("T2"), C2=SET)
    (use,) = gels(torte.batches, {**PARTS, "C2": SET})
    assert (use.mass_g, use.water_g) == (4.0, 20.0)
    assert "Bloom 4 g 10 min in 20 g of cold water" in use.steps
    silver = use.leaves[1]
    assert (round(silver.by_root_count, 2), silver.by_ratio_count) == (1.79, 2.0)


def test_leaves_are_soaked_and_pressed_and_want_no_water_of_their_own() -> None:
    part = replace(C2, gel=replace(GEL, is_leaf=True, strength_bloom=160.0, has_liquid=False))
    (use,) = gels(built(demo_plan("T2"), C2=part).batches, {**PARTS, "C2": part})
    assert use.water_g is None
    assert use.steps.startswith("Soak the leaves")


def test_powder_with_nothing_liquid_is_asked_with_five_times_its_water() -> None:
    dry = replace(C2, gel=replace(GEL, has_liquid=False))
    read = build_torte(plan_of(TEXT), {**PARTS, "C2": dry})
    assert not isinstance(read, Infeasible)
    (asked,) = [p for p in read.problems if p.code == "gelatine-without-water"]
    assert "40 g water" in asked.ask


def test_alcohol_over_what_sets_is_refused_with_the_most_that_does() -> None:
    rum = replace(
        GEL, alcohol_g=100.2, water_g=240.0, spirit="rum", spirit_g=300.0, spirit_water_g=199.8
    )
    strong = replace(C2, gel=rum)
    answer = build_torte(
        plan_of(TEXT), {**PARTS, "C2": replace(C2, gel=replace(rum, water_g=210.0))}
    )
    assert isinstance(answer, Infeasible)
    assert "g of rum in place of 300 g" in answer.clashes[0].said
    assert not isinstance(build_torte(plan_of(TEXT), {**PARTS, "C2": strong}), Infeasible)


def test_a_strength_that_is_not_written_is_said_and_swaps_nothing() -> None:
    part = replace(C2, gel=replace(GEL, strength_bloom=None))
    assert "bloom-missing" in codes(part)
    (use,) = gels(built(demo_plan("T2"), C2=part).batches, {**PARTS, "C2": part})
    assert use.leaves == ()


@pytest.mark.parametrize("key", ["agar", "pectin"])
def test_whether_a_spirit_lets_agar_or_pectin_set_is_not_known(key: str) -> None:
    part = replace(
        C2,
        gel=replace(GEL, key=key, strength_bloom=None, alcohol_g=20.0, spirit="rum", spirit_g=60.0),
    )
    assert "alcohol-not-known" in codes(part)


def test_another_strength_is_judged_as_its_worth_in_both_rules() -> None:
    part = replace(C2, gelatine_g_kg=11.7, gel=replace(GEL, strength_bloom=160.0))
    text = next(f.text for f in built(demo_plan("T3"), C2=part).findings if f.code == "cream-high")
    assert "11.7 of 160 bloom: as 10.5 by the root rule, 9.4 by the ratio rule" in text
