"""Which figures a slip moves, and what no usual range speaks of."""

import pytest

from krume.design.slip.moved import value_text
from tests.design.slip.demo import formula, rescued, way


def test_three_times_the_salt_is_said_and_never_called_in_range() -> None:
    text = way(rescued("F1", {"salt": 3.0}), "leave").text
    assert "Fine salt: 3 g for 1 g, 3 times the plan; no usual range speaks of it." in text
    assert "All figures stay" not in text


def test_a_figure_that_hardly_follows_the_slip_is_not_told() -> None:
    oil = way(rescued("F3", {"oil": 18.0}), "leave").text
    assert "Added fat 25.7 % instead of 14.3 %." in oil
    assert "Batter on the sheet" not in oil
    gelatine = way(rescued("C1", {"gelatine": 12.0}), "leave").text
    assert "Gelatine 12.7 g/kg instead of 8.5 g/kg." in gelatine
    assert "Custard to cream" not in gelatine


def test_a_small_slip_of_a_judged_line_is_in_its_range() -> None:
    text = way(rescued("F2", {"sugar": 131.0}), "leave").text
    assert "no usual range" not in text
    assert "All figures stay in their usual ranges." in text


def test_of_two_slips_each_is_looked_at_alone() -> None:
    text = way(rescued("F2", {"sugar": 134.0, "vanilla": 9.0}), "leave").text
    assert "Vanilla extract: 9 g for 4 g, 2.2 times the plan" in text
    assert "Caster sugar:" not in text


def test_eggs_that_lie_there_already_are_not_opened_again() -> None:
    exact = way(rescued("F3", {"eggs": 230.0}), "scale-exact")
    assert exact.factor == pytest.approx(230 / 204)
    assert not exact.has_part_egg
    assert exact.waste_g == 0
    assert "part of an egg" not in exact.title
    assert "the eggs stay, 230 g" in exact.text


def test_eggs_still_to_add_to_those_there_are_opened() -> None:
    exact = way(rescued("F2", {"eggs": 255.0, "sugar": 140.0}), "scale-exact")
    assert exact.waste_g == pytest.approx(51 - 19.6, abs=0.05)


def test_eggs_that_weigh_a_little_less_than_planned_want_no_part_of_one_more() -> None:
    assert way(rescued("F2", {"eggs": 250.0, "teff": 26.0}), "leave").waste_g == 0


@pytest.mark.parametrize(
    ("name", "weighed", "said"),
    [
        ("C1", {"gelatine": 12.0}, "yolks 131.2 g = 7 EU M + 8.7 g of one more"),
        ("C5", {"white": 140.0}, "pasteurised egg white 140 g"),
        ("F5", {"baking powder": 5.0}, "8 yolks and 10 whites, EU M"),
    ],
)
def test_yolks_and_whites_are_called_so(name: str, weighed: dict[str, float], said: str) -> None:
    assert any(said in each.text for each in rescued(name, weighed).ways)


def test_figures_have_the_digits_of_their_kind() -> None:
    assert value_text(0.527, "g/cm2") == "0.527 g/cm2"
    assert formula("F3").tin is not None


def test_whites_that_lie_there_already_are_not_counted_again() -> None:
    text = way(rescued("F5", {"egg whites": 190.0}), "scale-exact").text
    assert "yolks 79.4 g = 5 less 8.1 g, the whites stay." in text
