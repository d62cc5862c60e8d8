"""The torte plan as values: facts, rows that add up, what is needed in its order, cautions."""

from dataclasses import replace

import pytest

from krume.publish import Hold, missing_plan_signs, torte_sheet
from tests.build.studio import demo
from tests.publish.bench import IMPRINT
from tests.publish.plans import MADE_OF, called, sheet


@pytest.mark.parametrize("name", MADE_OF)
def test_the_rows_add_up_to_the_total_as_printed(name: str) -> None:
    plan = sheet(name)
    rows = [float(row.grams.replace("\u202f", "")) for row in plan.rows]
    assert sum(rows) == pytest.approx(float(plan.total.grams.replace("\u202f", "")), abs=1e-6)


def test_the_hazel_torte_says_its_sizes_its_slices_and_what_to_make() -> None:
    plan = sheet("T1")
    assert [fact.figure for fact in plan.facts] == ["Ø 20.3", "66", "1\u202f194.9", "12 × 99.6"]
    assert plan.section.heading == "Heights add to 66 mm"
    assert plan.slices[1] == "14 slices of 85.3 g, 4.56 cm outside (25.7°)"
    custard = plan.needs[2]
    assert (custard.of, custard.needed, custard.batch) == ("C1", "448.0", "941.5")
    assert (custard.make, custard.over) == ("half a batch", "22.8 g over")
    assert "fold in at 18–20 °C" in custard.work
    assert "planned at 0.75 g/ml: weigh it" in custard.work
    assert plan.eggs == ("Eggs to crack: 8 EU M. Left over: 0.5 yolk (8.8 g), 3 whites (100.5 g).")


def test_the_ring_torte_says_that_its_ring_is_full() -> None:
    plan = sheet("T3")
    assert plan.section.heading == "Ring is full: 60 of 60 mm"
    assert any("gelatine of 9 to 10 g/kg, and has 9.4" in said for said in plan.findings)


def test_the_roll_says_turns_and_the_width_of_a_slice() -> None:
    plan = sheet("T2")
    assert [fact.figure for fact in plan.facts][:2] == ["Ø 74.4", "1.96"]
    assert plan.slices == ("12 slices of 62.8 g, 27.5 mm wide",)
    assert plan.total.height == "Ø 74.4"


def test_cautions_name_allergens_the_animal_and_the_cold_chain_and_claim_nothing() -> None:
    said = " ".join(sheet("T1", gelatine="beef").cautions)
    assert said.startswith("Contains nuts (hazelnut), egg, milk.")
    assert "Gelatine: from beef." in said
    assert "The cold chain holds until it is served." in said
    assert "No gluten sentence" in said
    assert "safe" not in said


def test_gelatine_whose_animal_nobody_states_says_so() -> None:
    assert "Gelatine: its animal is not stated." in sheet("T3").cautions
    assert not any("Gelatine" in said for said in sheet("TART").cautions)


def test_unknown_masses_are_words_and_the_section_waits_for_its_heights() -> None:
    torte = demo("T1")
    flat = replace(torte.layers[0], height_mm=None, mass_g=None)
    unknown = replace(
        torte, layers=(flat, *torte.layers[1:]), mass_g=None, height_mm=None, slices=()
    )
    plan = torte_sheet(unknown, {}, IMPRINT, families={})
    assert (plan.rows[0].grams, plan.rows[0].height) == ("not known", "not known")
    assert plan.total.grams == "not known"
    assert plan.section.svg is None


def test_signs_no_font_has_are_noticed_wherever_they_stand() -> None:
    assert missing_plan_signs(sheet("T1")) == ()
    assert [notice.code for notice in missing_plan_signs(called("Torte 🥜"))] == [
        "sign-not-in-font"
    ]


def test_a_hold_stands_on_the_plan() -> None:
    assert sheet("T1", hold=Hold("L-008 may contain wheat.")).hold is not None
