"""The ways out of the worked slips, and which comes first."""

import pytest

from krume.design import Formula, Way, read
from krume.design.ratios import best_of
from krume.design.slip.rescue import rank
from tests.agreement import agrees
from tests.design.slip.demo import F2_SLIP, formula, masses, rescued, way

COVERS = ["blend_ways", "size_ways", "settled", "state", "way"]


@pytest.mark.source("reference-book", "teff 26 for 20 g in the vanilla sponge")
def test_the_worked_slip_of_teff_comes_to_the_printed_grams() -> None:
    found = rescued("F2", F2_SLIP)
    jar, leave, hold = (way(found, kind) for kind in ("jar", "leave", "hold"))
    assert agrees(jar.total_g, "136.5") and agrees(jar.factor, "1.3")
    assert jar.jar is not None and agrees(jar.jar.mass_g, "31.5")
    assert agrees(leave.total_g, "111") and agrees(leave.worst_shift_pct, "4.38")
    assert agrees(_best(leave, "egg"), "229.7") and agrees(_best(leave, "sugar"), "117.1")
    assert agrees(hold.total_g, "105") and agrees(hold.worst_shift_pct, "5.71")
    assert agrees(_best(hold, "starch"), "29.7")


@pytest.mark.source("reference-book", "sugar 140 for 130 g in the vanilla sponge")
def test_the_worked_slip_of_sugar_comes_to_the_printed_grams() -> None:
    found = rescued("F2", {"sugar": 140.0})
    leave, exact = way(found, "leave"), way(found, "scale-exact")
    assert agrees(best_of(leave.balance.sugar_per_egg), "0.549")
    assert agrees(_best(leave, "sugar"), "133.3")
    assert agrees(exact.factor, "1.0769")
    assert exact.eggs.count == 5 and agrees(exact.eggs.make_up_g, "19.6")


def _best(each: Way, key: str) -> float | None:
    return best_of(each.balance.percent[key])


def test_a_slip_in_a_blend_has_three_ways_that_keep_the_cake_its_size() -> None:
    found = rescued("F2", F2_SLIP)
    assert [each.kind for each in found.options] == ["jar", "leave", "hold"]
    assert {each.kind for each in found.more} >= {"hold-in-band", "scale", "scale-exact", "second"}


def test_the_jar_keeps_every_percent() -> None:
    found = rescued("F2", F2_SLIP)
    jar = way(found, "jar")
    assert jar.factor == pytest.approx(1.3)
    assert [row.add_g for row in jar.lines] == [12.0, 0.0, 39.0, 11.7, 7.8]
    assert jar.total_g == 136.5
    assert jar.jar is not None
    assert (jar.jar.mass_g, jar.jar.next_g) == (31.5, 73.5)
    assert jar.worst_shift_pct == 0
    assert jar.card_g == tuple(each.mass_g for each in formula("F2").lines)


def test_leaving_it_moves_teff_by_four_points() -> None:
    found = rescued("F2", F2_SLIP)
    leave = way(found, "leave")
    assert leave.total_g == 111
    assert [round(row.share_pct or 0, 2) for row in leave.lines] == [
        36.04,
        23.42,
        27.03,
        8.11,
        5.41,
    ]
    assert round(leave.worst_shift_pct, 2) == 4.38
    assert leave.balance.percent["egg"] == pytest.approx(229.7, abs=0.05)
    assert leave.balance.percent["sugar"] == pytest.approx(117.1, abs=0.05)
    assert leave.balance.percent["starch"] == pytest.approx(32.4, abs=0.05)
    assert leave.in_band
    assert "sugar 137.4 g, eggs 269.6 g = 5 EU M + 14.6 g" in leave.text


def test_holding_the_total_takes_it_from_what_is_not_weighed() -> None:
    found = rescued("F2", F2_SLIP)
    hold = way(found, "hold")
    assert [row.add_g for row in hold.lines] == [0, 0, 26.0, 7.8, 5.2]
    assert hold.total_g == 105
    assert round(hold.worst_shift_pct, 2) == 5.71
    (finding,) = hold.findings
    assert (finding.code, round(float(str(finding.value)), 1)) == ("starch-low", 29.7)
    assert not hold.in_band


def test_a_split_inside_every_band_is_named_where_the_even_one_is_outside() -> None:
    found = rescued("F2", F2_SLIP)
    inside = way(found, "hold-in-band")
    assert [row.add_g for row in inside.lines] == [0, 0, 28.0, 7.0, 4.0]
    assert inside.in_band
    assert "potato starch 28.0 g" in way(found, "hold").text


def test_where_the_even_split_is_inside_there_is_no_second_one() -> None:
    kinds = {each.kind for each in rescued("F1", {"buckwheat": 50, "white rice": 13}).ways}
    assert "hold" in kinds
    assert "hold-in-band" not in kinds


def test_sugar_over_is_left_before_an_egg_is_opened_for_it() -> None:
    found = rescued("F2", {"sugar": 140.0})
    assert [each.kind for each in found.options] == ["leave", "scale", "scale-exact"]
    leave, whole, exact = found.options
    assert leave.balance.sugar_per_egg == pytest.approx(0.549, abs=5e-4)
    assert leave.balance.percent["sugar"] == pytest.approx(133.3, abs=0.05)
    assert leave.in_band
    assert (whole.eggs.count, whole.eggs.make_up_g) == (6, 0)
    assert whole.factor == pytest.approx(1.2)
    assert exact.factor == pytest.approx(1.0769, abs=5e-5)
    grams = masses(found, exact)
    assert grams["eggs"] == 274.6
    assert (exact.eggs.count, exact.eggs.make_up_g) == (5, 19.6)
    assert exact.waste_g == pytest.approx(31.4)
    flours = ("white rice flour", "teff flour", "potato starch", "sweet rice flour", "maize starch")
    assert sum(grams[name] for name in flours) == pytest.approx(113.1)


def test_with_sugar_in_the_same_bowl_there_is_no_jar_and_all_of_it_grows() -> None:
    found = rescued("F2", F2_SLIP, same_bowl=("sugar",))
    assert "jar" not in {each.kind for each in found.ways}
    exact = way(found, "scale-exact")
    grams = masses(found, exact)
    assert (grams["caster sugar"], grams["eggs"]) == (169.0, 331.5)
    assert (exact.eggs.count, exact.eggs.make_up_g) == (6, 25.5)
    assert "caster sugar lies in the same bowl" in exact.text
    assert any(each.kind == "jar" and "caster sugar" in each.why for each in found.declined)


def test_a_second_cake_takes_the_surplus_with_all_that_goes_with_it() -> None:
    found = rescued("F2", F2_SLIP)
    second = way(found, "second")
    assert second.factor == pytest.approx(0.3)
    assert masses(found, second)["caster sugar"] == 169.0
    assert (second.eggs.count, second.eggs.make_up_g) == (1, 25.5)
    assert sum(g or 0 for g in second.card_g) == pytest.approx(155.7)


def test_an_egg_short_makes_a_smaller_cake_and_a_jar_of_the_blend_that_is_weighed() -> None:
    weighed = {"white rice": 40.0, "teff": 20.0, "potato": 30.0, "sweet": 9.0, "maize": 6.0}
    found = rescued("F2", {**weighed, "eggs": 204.0}, closed=("eggs",))
    down = found.options[0]
    assert down.kind == "down"
    assert down.factor == pytest.approx(0.8)
    assert down.jar is not None
    assert (down.jar.mass_g, down.jar.next_g) == (21.0, 84.0)
    assert (down.eggs.count, down.eggs.make_up_g) == (4, 0)
    assert masses(found, down)["caster sugar"] == 104.0
    assert not way(found, "leave").in_band


def test_what_lies_alone_in_its_cup_is_taken_back_for_a_smaller_cake() -> None:
    found = rescued("F2", {"butter": 20.0, "eggs": 204.0}, closed=("eggs",))
    (butter,) = [row for row in way(found, "down").lines if row.take_out_g]
    assert butter.take_out_g == pytest.approx(4.0)
    assert "back out" in way(found, "down").text


def test_what_lies_with_other_things_forbids_a_smaller_cake() -> None:
    weighed = {"sugar": 55.0, "vanilla": 4.0, "eggs": 204.0}
    found = rescued("F2", weighed, closed=("eggs",))
    assert "down" not in {each.kind for each in found.ways}
    (why,) = [each.why for each in found.declined if each.kind == "down"]
    assert "vanilla extract" in why


def test_an_empty_bag_says_why_there_is_no_jar() -> None:
    weighed = {"white rice": 40.0, "teff": 26.0, "potato": 20.0}
    found = rescued("F2", weighed, closed=("potato",))
    assert "jar" not in {each.kind for each in found.ways}
    assert any("no more potato starch" in each.why for each in found.declined)
    assert masses(found, way(found, "leave"))["potato starch"] == 20.0


def test_spoilt_whites_are_broken_anew_or_the_cake_is_smaller() -> None:
    found = rescued("F2", {}, spoilt_whites=2)
    assert [each.kind for each in found.options] == ["fresh", "down"]
    fresh, down = found.options
    (eggs,) = fresh.lines
    assert eggs.add_g == pytest.approx(67.0)
    assert fresh.text.startswith("Break 2 fresh eggs")
    assert down.factor == pytest.approx(0.6)
    assert down.eggs.count == 3


def test_no_more_eggs_leave_only_the_smaller_cake_for_spoilt_whites() -> None:
    found = rescued("F2", {"eggs": 255.0}, spoilt_whites=2, closed=("eggs",))
    assert [each.kind for each in found.options] == ["down"]
    assert any(each.kind == "fresh" for each in found.declined)


def test_without_a_slip_the_rest_is_added_as_planned() -> None:
    found = rescued("F2", {"white rice": 40.0, "teff": 12.0})
    (only,) = found.ways
    assert only.kind == "add"
    assert masses(found, only)["teff flour"] == 20.0
    assert [row.add_g for row in only.lines][:2] == [0, 8.0]


def test_ways_that_keep_the_total_can_be_asked_for_alone() -> None:
    from krume.design.slip.rescue import rescue
    from tests.design.slip.demo import slip_of

    found = rescue(slip_of("F2", F2_SLIP), holds_total=True)
    assert {each.kind for each in found.ways} == {"jar", "hold", "hold-in-band"}


def test_a_line_alone_in_its_cup_is_told_apart_from_one_in_a_full_bowl() -> None:
    assert rescued("F2", {"butter": 24.0}).alone == (7,)
    assert rescued("F2", F2_SLIP).alone == ()


def test_a_batter_that_runs_over_comes_after_one_that_does_not() -> None:
    found = rescued("F6", {"butter": 160.0}, density_g_ml=0.85)
    whole = way(found, "scale")
    assert whole.tin is not None
    assert rank(way(found, "leave")) < rank(whole)


def test_equal_slips_give_equal_ways() -> None:
    assert rescued("F2", F2_SLIP).ways == rescued("F2", F2_SLIP).ways


@pytest.mark.parametrize("name", ["C1", "C2", "C3", "C4", "C5", "S1"])
def test_a_cream_has_its_ways_too(name: str) -> None:
    first = formula(name).lines[0]
    found = rescued(name, {first.name: (first.mass_g or 0) * 1.1})
    assert "leave" in {each.kind for each in found.options}
    assert "scale-exact" in {each.kind for each in found.ways}


def test_the_step_of_the_scale_turns_no_order_where_the_plan_is_outside_already() -> None:
    found = rescued(_starch_under_its_band(), {"sugar": 195.4})
    assert found.plan.findings
    assert [each.kind for each in found.options] == ["scale", "scale-exact", "leave"]
    whole, exact, leave = found.options
    assert whole.in_band
    assert exact.in_band
    assert not leave.in_band


def _starch_under_its_band() -> Formula:
    text = (
        "Sponge\n\n37 g buckwheat flour\n36 g millet flour\n26 g tapioca starch\n"
        "12 g sweet rice flour\n6 eggs, EU M, separated\n175 g caster sugar\n1 g fine salt\n"
        "2 g lemon juice\n\nBeat the yolks with half of the sugar.\nWhisk the whites.\nFold.\n"
    )
    return read(text).value
