"""A formula in other tins: whole eggs, depth, questions about the tin, clashing limits."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from krume.base import OutOfRangeError
from krume.usecases import Asked, SizeWish, size_formula
from krume.usecases.formula.size import scale_step_g
from tests.usecases.conftest import PLAIN


def test_a_slightly_larger_tin_changes_nothing(demo: Asked) -> None:
    answer = size_formula("F2", SizeWish(("round 8in x 3in",)), demo)
    result = answer.result
    assert answer.exit_code == 0, answer.problems
    assert result.factor.by_area == pytest.approx(1.0323, abs=5e-5)
    assert result.factor.by_volume == pytest.approx(1.1237, abs=5e-5)
    first, *rest = result.options
    assert (first.factor, first.eggs.count, first.eggs.make_up_g) == (1, 5, 0)
    assert first.depth_cm == pytest.approx(3.33, abs=0.005)
    assert 1.2 in [round(option.factor, 9) for option in rest]


def test_a_sheet_of_a_wanted_depth_takes_four_eggs(demo: Asked) -> None:
    result = size_formula("F2", SizeWish(("sheet 13x9 in",), depth_cm=1.1), demo).result
    assert result.wanted_factor == pytest.approx(0.768, abs=5e-4)
    first = result.options[0]
    assert first.factor == pytest.approx(0.8)
    assert (first.eggs.count, first.eggs.size) == (4, "eu-m")
    masses = {line.name: line.mass_g for line in first.lines}
    assert masses["sweet rice flour"] == pytest.approx(7.2)
    assert first.total_g == pytest.approx(415.2)


def test_yolks_and_whites_share_their_eggs(demo: Asked) -> None:
    result = size_formula("F5", SizeWish(("tube 20 x 10 cm, hole 6 cm",)), demo).result
    eggs = result.options[0].eggs
    assert eggs.count == 5
    assert {(row.part, row.count) for row in eggs.lines} == {("yolk", 4), ("white", 5)}


def test_a_tin_that_can_be_two_is_asked_and_each_answer_settles_it(demo: Asked) -> None:
    answer = size_formula("F2", SizeWish(("8in",)), demo)
    assert answer.exit_code == 3
    (problem,) = answer.problems
    assert problem.where == "--tin"
    assert answer.result.options == ()
    for option in problem.options:
        asked = replace(demo, answers=(f"--tin={option.line}",))
        assert size_formula("F2", SizeWish(("8in",)), asked).exit_code == 0, option


def test_the_second_tin_has_a_place_of_its_own(demo: Asked) -> None:
    wish = SizeWish(("round 18 x 7 cm", "8in"))
    answer = size_formula("F2", wish, demo)
    assert [problem.where for problem in answer.problems] == ["--tin 2"]
    asked = replace(demo, answers=("--tin 2=round 8 in x 3 in",))
    settled = size_formula("F2", wish, asked)
    assert settled.exit_code == 0
    assert [tin.diameter_cm for tin in settled.result.tins] == [18, pytest.approx(20.32)]


def test_a_depth_above_the_rim_is_no_answer_and_the_limits_are_named(demo: Asked) -> None:
    answer = size_formula("F2", SizeWish(("round 20 x 5 cm",), depth_cm=6), demo)
    assert answer.exit_code == 4
    (problem,) = answer.problems
    assert "5.0 cm" in problem.ask
    assert "6.0 cm" in problem.ask
    assert answer.result.factor.by_area == pytest.approx(1)
    assert answer.result.options == ()


def test_an_unsettled_text_is_asked_before_anything_is_sized(
    bare: Asked, write: Callable[[str], str]
) -> None:
    answer = size_formula(write(PLAIN), SizeWish(("round 18 x 7 cm",)), bare)
    assert answer.exit_code == 3
    assert answer.result.options == ()
    assert answer.result.factor.by_area == pytest.approx(0.81)


def test_any_eggs_reach_the_depth_exactly(demo: Asked) -> None:
    wish = SizeWish(("sheet 13x9 in",), depth_cm=1.1, eggs="any")
    first = size_formula("F2", wish, demo).result.options[0]
    assert first.depth_cm == pytest.approx(1.1, abs=1e-6)
    assert first.eggs.count == 4
    assert first.eggs.make_up_g == pytest.approx(-8.2, abs=0.05)


def test_the_scale_of_the_person_comes_before_the_books(demo: Asked, bare: Asked) -> None:
    assert scale_step_g(demo) == 0.1
    assert scale_step_g(bare) == 0.1
    wish = SizeWish(("sheet 13x9 in",), depth_cm=1.1, step_g=1)
    first = size_formula("F2", wish, demo).result.options[0]
    weighed = {line.name: line.mass_g for line in first.lines}
    assert weighed["white rice flour"] == 32
    assert weighed["sweet rice flour"] == 7


@pytest.mark.parametrize("depth_cm", [0.0, -1.0, float("nan"), float("inf")])
def test_a_depth_that_is_none_is_refused(demo: Asked, depth_cm: float) -> None:
    with pytest.raises(OutOfRangeError):
        size_formula("F2", SizeWish(("round 20 x 7 cm",), depth_cm=depth_cm), demo)


def test_a_depth_can_be_explained(demo: Asked) -> None:
    wish = SizeWish(("round 8in x 3in",), explain="options.1.depth_cm")
    why = size_formula("F2", wish, demo).explain
    assert why is not None
    assert why.value == pytest.approx(3.33, abs=0.005)


def test_a_filling_takes_no_room_in_the_tin(demo: Asked, write: Callable[[str], str]) -> None:
    text = (
        "Sponge\nTin: round 20 x 7 cm\nFamily: separated\n\n100 g white rice flour\n"
        "5 eggs, EU M\n120 g caster sugar\n"
    )
    wish = SizeWish(("round 20 x 7 cm",))
    alone = size_formula(write(text), wish, demo)
    assert alone.exit_code == 0, alone.problems
    filled = size_formula(write(f"{text}\nFilling:\n400 g whipping cream\n"), wish, demo)
    assert filled.exit_code == 0, filled.problems
    assert filled.result.options[0].depth_cm == pytest.approx(alone.result.options[0].depth_cm)
