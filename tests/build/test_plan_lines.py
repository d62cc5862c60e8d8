"""The torte plan as a value."""

from hypothesis import given
from hypothesis import strategies as st

from krume.build.plan_lines import Component, TortePlan, formula_names


def piece(what: str) -> Component:
    return Component("", 1, what, piece="layer")


def cream(what: str) -> Component:
    return Component("", 1, what, height_mm=10.0)


def syrup(what: str) -> Component:
    return Component("", 1, what, g_per_cm2=0.15)


def test_pieces_go_first_and_what_is_brushed_on_goes_last() -> None:
    plan = TortePlan("A", (syrup("S1"), cream("C1"), piece("F1"), cream("C2")))
    assert formula_names(plan) == ("F1", "C1", "C2", "S1")


def test_a_formula_used_twice_is_named_once_at_its_first_turn() -> None:
    plan = TortePlan("A", (piece("F1"), syrup("S1"), cream("S1"), piece("F1")))
    assert formula_names(plan) == ("F1", "S1")


def test_an_empty_plan_names_nothing() -> None:
    assert formula_names(TortePlan(None)) == ()


@given(st.lists(st.sampled_from(["F1", "F2", "C1", "S1"]), max_size=8))
def test_every_formula_of_a_plan_is_named_exactly_once(names: list[str]) -> None:
    named = formula_names(TortePlan("A", tuple(cream(name) for name in names)))
    assert sorted(named) == sorted(set(names))
