"""What a card says about tin, oven, clocks and core, and whose word it is."""

from dataclasses import replace

import pytest

from krume.base import Interval
from krume.design import OvenLine
from krume.publish import Fact
from krume.publish.facts import clocks, cooling, facts, origin, tin_text
from krume.size import Tin
from tests.design.studio import C1, C2, F1, F3, F5, S1


def head(formula: object, dial_c: float | None = None) -> tuple[Fact, ...]:
    return facts(formula, total_g=100.0, dial_c=dial_c)  # type: ignore[arg-type]


def test_without_a_known_dial_the_oven_stands_there_as_written() -> None:
    assert head(F1)[1] == Fact("oven, no fan", "170", "°C")


def test_two_stages_of_an_oven_are_both_kept() -> None:
    staged = replace(F1, oven=OvenLine("180 then 160", 180.0, stages=((160.0, 10.0),)))
    assert head(staged)[1] == Fact("oven, then 160 °C after 10 min", "180", "°C")


def test_an_oven_without_a_temperature_says_what_was_written() -> None:
    assert head(replace(F1, oven=OvenLine("moderate", None)))[1].figure == "moderate"


def test_an_oven_between_two_temperatures_prints_both() -> None:
    between = replace(F1, oven=OvenLine("157-165", 161.0, temp_interval_c=Interval(157, 161, 165)))
    assert head(between)[1] == Fact("oven", "157–165", "°C")


def test_a_tube_says_its_hole_and_that_it_is_not_greased() -> None:
    assert head(F5)[0] == Fact("tin, hole 6 cm, not greased", "tube Ø 20 × 10 cm")


def test_yolks_and_whites_are_counted_apart() -> None:
    assert head(F5)[2].label == "4 yolks, 5 whites EU M, shelled"
    assert head(F5)[2].figure == "237.5"


def test_eggs_of_no_known_size_are_a_word() -> None:
    lines = tuple(
        replace(line, mass_g=None, egg_size=None, mass_interval_g=None)
        if line.basis == "egg"
        else line
        for line in F1.lines
    )
    assert head(replace(F1, lines=lines, egg_size=None))[2] == Fact("5 eggs", "size not known")


def test_a_cream_has_its_batch_and_planned_density_instead_of_a_tin() -> None:
    found = head(replace(C2, density_g_ml=0.72))
    assert found == (Fact("batch", "100", "g"), Fact("density, planned", "0.72", "g/ml"))


@pytest.mark.parametrize(
    ("tin", "text"),
    [
        (
            Tin("x", "sheet", length_cm=33.02, width_cm=22.86, height_cm=2.54),
            "sheet 33 × 22.9 × 2.5 cm",
        ),
        (Tin("x", "square", length_cm=20), "square 20 × 20 cm"),
        (Tin("x", "round", diameter_cm=20), "round Ø 20 cm"),
        (Tin("a heart", "round"), "a heart"),
    ],
)
def test_a_tin_is_told_by_its_inside(tin: Tin, text: str) -> None:
    assert tin_text(tin) == text


def test_foam_clocks_minutes_and_core_stand_in_the_foot() -> None:
    assert clocks(F1) == (
        Fact("use whites within", "5", "min"),
        Fact("last whisk stroke to door", "10", "min at most"),
        Fact("first check, latest out", "34–40", "min"),
        Fact("core", "95", "°C"),
    )


def test_a_batter_without_foam_has_no_foam_clock() -> None:
    creamed = replace(F1, family="butter", steps=("Cream butter and sugar.",))
    assert [fact.label for fact in clocks(creamed)] == ["first check, latest out", "core"]
    assert clocks(C2) == ()


def test_a_core_no_formula_states_is_the_usual_one_and_says_so() -> None:
    assert clocks(F3)[-1] == Fact("core, usual", "93–96", "°C")
    assert origin(F3) == "Clocks and core: common practice for a roulade."
    assert origin(F1) == (
        "Minutes and core: the formula's own; clocks: common practice for a separated sponge."
    )


def test_cooling_is_the_formulas_own_where_it_has_a_word_for_it() -> None:
    assert cooling(F1).startswith("Cooling, the formula's own: Cool in the tin 10 minutes")
    assert cooling(F5) == "Cooling, the formula's own: Hang upside down until cold."
    assert cooling(C1).startswith("Cooling, the formula's own: Spread shallow")
    assert cooling(F3).startswith("Cooling, as usual: ")
    assert cooling(S1).startswith("Cooling, as usual: ")


def test_the_models_cooling_stands_behind_the_formulas_own_words() -> None:
    both = cooling(F1, by_model="Turn out after 10 min; cut into layers after 70–120 min")
    assert both.startswith("Cooling, the formula's own: Cool in the tin 10 minutes")
    assert both.endswith(
        "By the cooling model, compared with no cake: turn out after 10 min; cut into layers "
        "after 70–120 min."
    )
    odd = replace(F1, family="strange", steps=())
    assert cooling(odd, by_model="Fill it").startswith("By the cooling model")


def test_a_family_nobody_knows_has_no_clock_and_no_rule() -> None:
    odd = replace(F1, family="strange", core_c=None, bake_min=None, steps=())
    assert (clocks(odd), origin(odd), cooling(odd)) == ((), "", "")


def test_a_tin_typed_in_inches_keeps_the_typed_words_beside_the_centimetres() -> None:
    sheet = Tin(
        "sheet 13x9 in, 1 in high", "sheet", length_cm=33.02, width_cm=22.86, height_cm=2.54
    )
    assert head(replace(F1, tin=sheet))[0] == Fact(
        "tin (sheet 13x9 in, 1 in high)", "sheet 33 × 22.9 × 2.5 cm"
    )
