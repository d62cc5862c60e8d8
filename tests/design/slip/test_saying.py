"""What a baker reads: what to add now first."""

from dataclasses import replace

import pytest

from krume.design import Formula, read
from tests.design.slip.demo import F2_SLIP, rescued, way


def test_the_first_sentence_is_what_to_add_now() -> None:
    for each in rescued("F2", F2_SLIP).options:
        assert each.text.startswith("Add ")


def test_a_jar_says_how_it_becomes_the_same_as_the_bowl_and_what_the_next_cake_needs() -> None:
    text = way(rescued("F2", F2_SLIP), "jar").text
    assert text.startswith(
        "Add white rice flour 12.0 g, potato starch 39.0 g, sweet rice flour 11.7 g and maize "
        "starch 7.8 g."
    )
    assert "Sift it twice" in text
    assert "105.0 g for this cake, 31.5 g into a labelled jar" in text
    assert "73.5 g more" in text


def test_what_is_outside_is_said_with_its_usual_range() -> None:
    assert "Outside: Starch 29.7 %; usual is 30 to 50." in way(rescued("F2", F2_SLIP), "hold").text


def test_what_is_over_outside_the_bowl_is_said_to_stay_so() -> None:
    found = rescued("F2", {**F2_SLIP, "sugar": 140.0})
    assert "Still caster sugar 10.0 g over." in way(found, "jar").text
    assert way(found, "jar").worst_shift_pct == pytest.approx(100 / 13)


@pytest.mark.parametrize(("step_g", "said"), [(0.1, "exactly as planned"), (1.0, "to the step")])
def test_exactly_is_said_only_where_the_scale_reaches_it(step_g: float, said: str) -> None:
    assert said in way(rescued("F2", F2_SLIP, step_g=step_g), "jar").text


def test_nuts_and_sugar_in_a_bowl_are_not_called_a_blend() -> None:
    found = rescued("F4", {"walnut": 125.0})
    assert "the nut bowl" in way(found, "leave").text
    assert "Mix it well" in way(found, "jar").text


def test_where_nothing_else_is_begun_the_rest_is_simply_as_planned() -> None:
    text = way(rescued("F2", {"sugar": 140.0}), "leave").text
    assert text.startswith("Weigh the rest as planned. Sugar to egg 0.549 instead of 0.510;")


def test_a_line_that_was_begun_is_named_with_its_rest() -> None:
    text = way(rescued("F2", {"sugar": 140.0, "butter": 12.0}), "leave").text
    assert text.startswith("Add butter 8.0 g more; all else as planned.")


def test_a_cream_is_told_in_its_own_units() -> None:
    assert "g/l" in way(rescued("C4", {"sugar": 80.0}), "leave").text


@pytest.mark.parametrize("kind", ["scale", "scale-exact"])
def test_a_larger_cake_says_its_eggs_and_its_depth(kind: str) -> None:
    text = way(rescued("F2", {"sugar": 140.0}, density_g_ml=0.48), kind).text
    assert "EU M" in text
    assert "instead of 3.4" in text


def test_amounts_a_scale_does_not_weigh_are_marked_in_the_text() -> None:
    found = rescued("F3", {"white rice": 30.0})
    jar = way(found, "jar")
    (xanthan,) = [row for row in jar.lines if found.slip.lines[row.line].name == "xanthan gum"]
    assert xanthan.mark == "" or "xanthan gum" in jar.text


def test_no_text_shouts() -> None:
    for name, weighed in (("F2", F2_SLIP), ("F6", {"butter": 170.0}), ("F5", {"oil": 55.0})):
        for each in rescued(name, weighed, density_g_ml=0.5).ways:
            assert "!" not in each.text + each.title


def test_shares_in_a_bowl_with_nuts_are_of_the_flour_and_the_bowl_has_its_own_name() -> None:
    hold = way(rescued("F1", {"hazelnut": 55.0}), "hold")
    assert "The dry bowl stays 144.0 g in all." in hold.text
    assert "% of the flour instead of 38.5" in hold.text
    assert "the blend" not in hold.text.casefold()


def test_another_basis_is_named_and_nothing_is_outside_without_a_figure() -> None:
    for each in rescued("F1", {"hazelnut": 55.0}).ways:
        assert each.in_band is not bool(each.outside)
        assert "Outside: ." not in each.text
        assert not each.text.rstrip().endswith("Outside:")
    hold = way(rescued("F1", {"hazelnut": 55.0}), "hold")
    assert "judged as a nut sponge, on flour and nut" in hold.text


def test_what_the_step_of_a_scale_does_is_the_scales_own() -> None:
    found = rescued(_near_its_edge(), {"sugar": 125.0}, step_g=1.0)
    for each in found.ways:
        if each.kind.startswith("scale"):
            assert each.in_band
            assert not each.outside
    exact = way(found, "scale-exact")
    assert "starch-low" in {finding.code for finding in exact.findings}
    assert "By the step of the scale alone: Starch 29.8 %" in exact.text


def test_a_plan_outside_its_ranges_is_not_said_to_be_inside() -> None:
    text = way(rescued(_near_its_edge(), {"sugar": 125.0}), "leave").text
    assert "No figure leaves its usual range." in text
    assert "All figures stay" not in text


def _near_its_edge() -> Formula:
    """A sponge whose starch is exactly 30 %, so that any rounding leaves the range."""
    text = (
        "Edge\n\n70 g white rice flour\n30 g potato starch\n5 eggs, EU M, separated\n"
        "120 g caster sugar\n\nBeat the yolks with the sugar.\nWhisk the whites.\nFold.\n"
    )
    return read(text).value


SOME_BUTTER = """\
Open sponge
Family: separated
Tin: round 20 x 7 cm

40 g white rice flour
20 g teff flour
30 g potato starch
9 g sweet rice flour
5 eggs, EU M, separated
130 g caster sugar
some butter

Weigh the flours into one bowl.
"""


def test_a_line_without_grams_leaves_its_figure_the_depth_and_all_figures_unsaid() -> None:
    formula = read(SOME_BUTTER).value
    found = rescued(replace(formula, density_g_ml=0.48), {"teff": 26.0})
    for each in found.ways:
        assert each.unknown == ("Added fat",)
        assert each.tin is None
        assert "Not known: added fat." in each.text
        assert "All figures" not in each.text
        assert "every figure" not in each.text
    assert "Butter goes with it, ×1.3 of what you take." in way(found, "scale-exact").text
    known = way(rescued("F2", F2_SLIP), "leave")
    assert known.unknown == ()
    assert "All figures stay in their usual ranges." in known.text
