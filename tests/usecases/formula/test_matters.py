"""Which weighing matters, as `check` answers it."""

from collections.abc import Callable

import pytest

from krume.usecases import Asked, check_formula
from krume.usecases.formula.matters import SEED


def test_the_roulade_names_three_lines_and_what_its_xanthan_does(demo: Asked) -> None:
    result = check_formula("F3", demo).result
    first = result.weigh_twice[0]
    assert [(each.name, each.mark) for each in result.weigh_twice] == [
        ("xanthan gum", "twice"),
        ("eggs", "weigh"),
        ("caster sugar", "twice"),
    ]
    assert (first.step_g, first.figure, first.low, first.high) == (0.1, "xanthan", 0.3, 0.5)
    assert first.step_effect == pytest.approx(1.4286)
    assert first.text.startswith("One step of 0.1 g of xanthan gum")
    assert result.weigh_twice[1].step_effect is None
    assert (result.lines, result.ranking) == (None, None)


def test_how_to_carry_a_small_amount_is_the_weighings_own_notice(demo: Asked) -> None:
    told = [n.text for n in check_formula("F3", demo).notices if n.code == "small-amount"]
    assert len(told) == 1
    assert "weigh 1 g of it with 19 g white rice flour" in told[0]
    assert not [n for n in check_formula("F1", demo).notices if n.code == "small-amount"]


def test_a_formula_where_nothing_matters_says_so(demo: Asked) -> None:
    result = check_formula("F7", demo).result
    assert result.weigh_twice == ()
    assert "No line needs weighing twice" in result.weigh_twice_text


def test_the_table_has_every_line_with_a_mass_and_its_shares(demo: Asked) -> None:
    result = check_formula("F3", demo, lines=True).result
    assert result.lines is not None
    assert result.ranking is not None
    assert len(result.lines) == 11
    effects = [line.slip_effect for line in result.lines]
    assert effects == sorted(effects, reverse=True)
    assert sum(line.total_share or 0 for line in result.lines) == pytest.approx(1, abs=0.1)
    assert result.ranking.seed == SEED
    assert result.ranking.miss_effect < 1e-6
    assert result.lines[0].effects[0].per_g == pytest.approx(100 / 70)


def test_a_quarter_gram_of_a_text_of_ones_own_is_named_first(
    demo: Asked, write: Callable[[str], str]
) -> None:
    text = "Roll\nFamily: roulade\n\n70 g white rice flour\n204 g egg\n100 g caster sugar\n"
    first = check_formula(write(f"{text}0.25 g xanthan gum\n"), demo).result.weigh_twice[0]
    assert (first.name, first.line, first.slip_from) == ("xanthan gum", 7, "step")


def test_lines_of_a_formula_nobody_can_place_are_not_judged(
    demo: Asked, write: Callable[[str], str]
) -> None:
    result = check_formula(write("Odd\n\n20 g white rice flour\n"), demo, lines=True).result
    assert result.weigh_twice == ()
    assert result.lines == ()
    assert result.ranking is None
    assert "cannot be said" in result.weigh_twice_text
