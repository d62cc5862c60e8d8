"""Which bowl a slip lies in, what belongs there, and what is a blend."""

import pytest

from krume.design.slip.bowl import bowls_of, role_of
from tests.design.slip.demo import formula, slip_of


def _names(name: str, weighed: dict[str, float]) -> list[str]:
    slip = slip_of(name, weighed)
    bowl = bowls_of(slip).slip
    return [] if bowl is None else [slip.lines[item.line].name for item in bowl.items]


@pytest.mark.parametrize(
    ("name", "weighed", "last"),
    [
        ("F2", {"teff": 26.0}, "maize starch"),
        ("F1", {"buckwheat": 60.0}, "ground hazelnuts"),
        ("F3", {"xanthan": 0.5}, "xanthan gum"),
        ("F7", {"white rice": 120.0}, "psyllium husk powder"),
        ("F4", {"walnut": 130.0}, "caster sugar"),
    ],
)
def test_the_steps_say_what_lies_in_the_bowl(
    name: str, weighed: dict[str, float], last: str
) -> None:
    assert _names(name, weighed)[-1] == last


@pytest.mark.parametrize("weighed", [{"sugar": 140.0}, {"butter": 25.0}, {"eggs": 300.0}])
def test_a_slip_outside_the_blend_lies_in_no_blend(weighed: dict[str, float]) -> None:
    assert bowls_of(slip_of("F2", weighed)).slip is None


def test_a_bowl_with_eggs_in_it_keeps_in_no_jar() -> None:
    bowls = bowls_of(slip_of("F2", {"vanilla": 9.0}))
    yolk = next(bowl for bowl in bowls.all if bowl.key == "yolk")
    assert not yolk.is_blend


def test_a_lines_grams_fill_its_bowls_in_the_order_of_work() -> None:
    bowls = bowls_of(slip_of("F2", {"sugar": 140.0}))
    held = {bowl.key: i.held_g for bowl in bowls.all for i in bowl.items if i.line == 6}
    assert held == {"yolk": 55.0, "sugar": 85.0}


def test_what_the_blend_is_a_hundred_percent_of_is_its_flour() -> None:
    bowl = bowls_of(slip_of("F1", {"buckwheat": 60.0})).slip
    assert bowl is not None
    assert (bowl.plan_g, bowl.flour_plan_g) == (144.0, 104.0)
    assert bowl.needed == pytest.approx(1.2)
    assert bowl.label == "Dry bowl"
    assert bowl.is_apart


def test_what_else_was_said_to_lie_there_is_kept_beside_the_items() -> None:
    bowl = bowls_of(slip_of("F2", {"teff": 26.0}, same_bowl=("sugar", "white rice"))).slip
    assert bowl is not None
    assert bowl.added == (6,)
    assert not bowl.is_apart


def test_roles_come_from_the_pantry_and_unknown_goods_are_no_dry_ones() -> None:
    lines = formula("F2").lines
    assert [role_of(lines[n]) for n in (0, 2, 5, 6)] == ["flour", "starch", "egg", "sugar"]
    from dataclasses import replace

    assert role_of(replace(lines[0], ingredient=None)) == "other"
    assert role_of(replace(lines[0], ingredient="no-such-goods")) == "other"
