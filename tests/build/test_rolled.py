"""Rolls: turns, diameter, cream to its free edge, and a coat around the lying roll."""

import math

import pytest

from krume.base import Infeasible
from krume.build import build_torte
from tests.agreement import agrees
from tests.build.studio import C2, PARTS, demo, plan_of, torte_of, without_density

SHEET = "1 sheet of F3, 12 mm, rolled from the {} side\n7 mm C2 on the sheet"


@pytest.mark.source("reference-book", "the demo tortes")
def test_the_demo_roll_has_its_turns_and_its_slices_their_width() -> None:
    roll = demo("T2")
    assert agrees(roll.turns, "1.96")
    assert agrees(roll.slices[0].width_mm, "27.5")


def test_begun_at_the_short_side_a_roll_is_thicker_and_narrower() -> None:
    long, short = (torte_of(SHEET.format(side)) for side in ("long", "short"))
    assert (long.roll_width_cm, short.roll_width_cm) == (33.02, 22.86)
    assert long.height_mm is not None and short.height_mm is not None
    assert short.height_mm / long.height_mm == pytest.approx(math.sqrt(33.02 / 22.86))
    assert short.mass_g == pytest.approx(long.mass_g)


def test_the_free_edge_takes_cream_away_and_syrup_not() -> None:
    free = demo("T2")
    assert free.sum_g("filling") == pytest.approx(33.02 * (22.86 - 2) * 0.7 * 0.72)
    assert free.sum_g("syrup") == pytest.approx(33.02 * 22.86 * 0.10)


def test_the_section_of_a_roll_keeps_the_area_of_sheet_and_cream() -> None:
    roll = torte_of(SHEET.format("long"))
    assert roll.height_mm is not None
    assert math.pi / 4 * roll.height_mm**2 == pytest.approx(228.6 * 19.0)


def test_a_coat_around_a_roll_is_a_tube_as_long_as_the_roll_is_wide() -> None:
    bare = torte_of(SHEET.format("long"))
    coated = torte_of(SHEET.format("long") + "\n3 mm C5 around")
    assert bare.height_mm is not None and coated.height_mm is not None
    assert coated.height_mm == pytest.approx(bare.height_mm + 6)
    outer, inner = coated.height_mm / 20, bare.height_mm / 20
    volume = math.pi * (outer**2 - inner**2) * 33.02
    assert coated.sum_g("coat") == pytest.approx(volume * 0.80)
    by_mass = torte_of(SHEET.format("long") + f"\n{volume * 0.8:.6f} g C5 around")
    assert by_mass.layers[-1].height_mm == pytest.approx(3.0, abs=1e-6)


def test_a_roll_with_a_cream_of_unknown_weight_keeps_its_diameter() -> None:
    read = build_torte(
        plan_of("R\n\n" + SHEET.format("long")), {**PARTS, "C2": without_density(C2)}
    )
    assert not isinstance(read, Infeasible)
    assert read.value.mass_g is None
    assert read.value.height_mm == pytest.approx(74.365, abs=0.001)


def test_a_round_cake_is_not_rolled_and_a_layer_is_offered() -> None:
    read = build_torte(plan_of("R\n\n1 sheet of F1, 12 mm, rolled from the long side"), PARTS)
    assert not isinstance(read, Infeasible)
    (problem,) = read.problems
    assert (problem.code, problem.options[0].line) == ("roll-round", "1 layer of F1, 12 mm")
    assert read.value.height_mm is None
