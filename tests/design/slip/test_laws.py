"""What holds for every slip: nothing comes out of a bowl, totals add up, eggs are whole."""

import math
from itertools import count

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.design import Rescue, Slip, Way, rescue
from krume.design.slip.eggs import egg_lines
from tests.design.slip.demo import formula

NAMES = ("F1", "F2", "F3", "F4", "F5", "F6", "F7", "C1", "C2", "S1")
STEPS = (0.1, 0.5, 1.0)
TAKING_OUT = ("down",)


@st.composite
def slips(draw: st.DrawFn) -> Slip:
    """A formula with some of its lines weighed, some of them over, some closed."""
    found = formula(draw(st.sampled_from(NAMES)))
    step = draw(st.sampled_from(STEPS))
    masses: list[float | None] = []
    for each in found.lines:
        said = draw(st.sampled_from(("no", "no", "plan", "over", "short")))
        plan = each.mass_g or 0.0
        part = draw(st.floats(0.05, 0.4))
        mass = {"plan": plan, "over": plan * (1 + part), "short": plan * (1 - part)}.get(said)
        masses.append(None if mass is None else max(round(mass / step) * step, step))
    closed = draw(st.sets(st.integers(0, len(masses) - 1), max_size=1))
    return Slip(found, tuple(masses), closed=frozenset(closed), step_g=step, density_g_ml=0.48)


def _grown(found: Rescue, way: Way) -> list[tuple[float, float]]:
    """Grams at the end and grams already there, of each line of a way or of its bowl."""
    if found.bowl is not None and way.lines[0].share_pct is not None:
        pairs = zip(way.lines, found.bowl.items, strict=True)
        return [(row.mass_g, item.held_g) for row, item in pairs]
    return [(row.mass_g, found.slip.held_g(row.line)) for row in way.lines]


@settings(max_examples=120)
@given(slips())
def test_nothing_comes_out_of_a_bowl_again(slip: Slip) -> None:
    found = rescue(slip)
    for way in found.ways:
        assert all(row.add_g >= 0 for row in way.lines), way.kind
        assert way.kind in TAKING_OUT or not any(row.take_out_g for row in way.lines)
        if way.kind not in TAKING_OUT:
            assert all(end >= held - 1e-6 for end, held in _grown(found, way)), way.kind


@settings(max_examples=120)
@given(slips())
def test_what_is_added_is_what_a_scale_shows_or_is_marked(slip: Slip) -> None:
    for way in rescue(slip).ways:
        for row in way.lines:
            steps = row.add_g / slip.step_g
            shown = row.add_g == 0 or (steps > 1 - 1e-6 and abs(steps - round(steps)) < 1e-5)
            assert shown or row.mark or way.kind == "fresh", (way.kind, row)


@settings(max_examples=120)
@given(slips())
def test_nothing_is_added_of_what_is_closed(slip: Slip) -> None:
    for way in rescue(slip).ways:
        assert all(row.add_g == 0 for row in way.lines if row.line in slip.closed), way.kind


@settings(max_examples=120)
@given(slips())
def test_a_jar_keeps_all_shares_to_rounding(slip: Slip) -> None:
    found = rescue(slip)
    for way in (each for each in found.ways if each.kind == "jar"):
        assert way.jar is not None
        assert found.bowl is not None
        assert way.jar.mass_g == pytest.approx(way.total_g - found.bowl.plan_g, abs=1e-6)
        for row in way.lines:
            moved = abs(row.mass_g - way.factor * row.was_g)
            assert moved <= 2 * slip.step_g + 1e-6, row


@settings(max_examples=120)
@given(slips())
def test_holding_keeps_the_total_to_the_step(slip: Slip) -> None:
    found = rescue(slip)
    for way in (each for each in found.ways if each.kind in ("hold", "hold-in-band")):
        assert found.bowl is not None
        assert way.total_g == pytest.approx(found.bowl.plan_g, abs=slip.step_g + 1e-6)
        assert way.kind == "hold" or way.in_band


@settings(max_examples=120)
@given(slips())
def test_scaling_makes_whole_eggs_at_the_smallest_such_factor(slip: Slip) -> None:
    found = rescue(slip)
    for way in (each for each in found.ways if each.kind == "scale"):
        eggs = egg_lines(slip.formula)
        needed = max(
            [1.0, *(slip.held_g(n) / x.mass_g for n, x in enumerate(slip.lines) if x.mass_g)]
        )
        smallest = next(
            n / eggs[0].count
            for n in count(math.ceil(needed * eggs[0].count - 1e-6))
            if all(abs(n / eggs[0].count * e.count % 1 + 1e-9) < 1e-6 for e in eggs)
        )
        assert way.factor == pytest.approx(smallest)
        assert way.eggs.make_up_g == 0


@settings(max_examples=120)
@given(slips())
def test_lines_add_up_and_the_first_ways_are_three_at_most(slip: Slip) -> None:
    found = rescue(slip)
    assert 0 < len(found.options) <= 3
    for way in found.ways:
        assert way.total_g == pytest.approx(math.fsum(row.mass_g for row in way.lines))
        assert way.text
        assert way.title
        assert way.worst_shift_pct >= 0


@settings(max_examples=60)
@given(slips())
def test_a_way_in_band_has_no_finding_the_plan_has_not(slip: Slip) -> None:
    found = rescue(slip)
    planned = {each.code for each in found.plan.findings}
    for way in found.ways:
        assert not way.in_band or {each.code for each in way.findings} <= planned
