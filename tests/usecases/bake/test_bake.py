"""A formula in its tin and an oven, through the book and through a person's own text."""

from collections.abc import Callable

import pytest

from krume.usecases import Asked, BakeWish, bake_formula

PLAIN = """\
Plain sponge
Tin: round 20 x 7 cm
Oven: 170 C, no fan

100 g white rice flour
5 eggs, EU M, separated
120 g caster sugar

Whisk the whites, fold, bake.
"""


def test_a_text_without_a_core_or_a_plan_is_baked_all_the_same(
    write: Callable[[str], str], demo: Asked
) -> None:
    answer = bake_formula(write(PLAIN), BakeWish(), demo)
    assert answer.exit_code == 0, answer.problems
    assert answer.result.core_from == "5 K below boiling"
    assert answer.result.planned_loss_pct is None
    assert "density-assumed" in {notice.code for notice in answer.notices}


def test_a_cold_start_of_the_text_is_named_and_not_dropped(
    write: Callable[[str], str], demo: Asked
) -> None:
    cold = write(PLAIN.replace("Oven: 170 C, no fan", "Oven: 170 C, no fan, cold start"))
    hot = bake_formula(cold, BakeWish(), demo)
    assert "cold-start-unsaid" in {notice.code for notice in hot.notices}
    said = bake_formula(cold, BakeWish(cold_start_c=20.0), demo)
    assert "cold-start-unsaid" not in {notice.code for notice in said.notices}
    assert hot.result.minutes is not None and said.result.minutes is not None
    assert said.result.minutes.best > hot.result.minutes.best


def test_the_same_question_has_the_same_answer(demo: Asked) -> None:
    one, other = (bake_formula("F1", BakeWish(), demo).result for _ in range(2))
    assert one == other


@pytest.mark.parametrize(
    ("left_out", "code", "where"),
    [
        ("Tin: round 20 x 7 cm\n", "tin-missing", "--tin"),
        ("Oven: 170 C, no fan\n", "oven-missing", "--oven"),
    ],
)
def test_what_is_missing_is_asked(
    write: Callable[[str], str], demo: Asked, left_out: str, code: str, where: str
) -> None:
    answer = bake_formula(write(PLAIN.replace(left_out, "")), BakeWish(), demo)
    assert answer.exit_code == 3
    assert (code, where) in {(problem.code, problem.where) for problem in answer.problems}
    assert answer.result.minutes is None


def test_a_line_nobody_knows_the_composition_of_is_asked_when_it_is_large(
    write: Callable[[str], str], demo: Asked
) -> None:
    text = PLAIN.replace("120 g caster sugar", "120 g caster sugar\n80 g quark")
    answer = bake_formula(write(text), BakeWish(), demo)
    assert answer.exit_code == 3
    assert "composition-needed" in {problem.code for problem in answer.problems}


def test_an_altitude_nobody_lives_at_is_asked(demo: Asked) -> None:
    answer = bake_formula("F1", BakeWish(altitude_m=9000), demo)
    assert {problem.where for problem in answer.problems} == {"--altitude"}


@pytest.mark.parametrize("oven", ["900 C", "20 C", "320 C"])
def test_an_oven_nothing_bakes_in_has_no_answer_whatever_its_dial_reads(
    demo: Asked, oven: str
) -> None:
    answer = bake_formula("F2", BakeWish(oven=oven), demo)
    assert answer.exit_code == 4
    assert answer.result.minutes is None
    assert "100 to 300" in answer.problems[0].ask


def test_a_tin_that_is_never_done_in_water_is_asked_about_the_water(demo: Asked) -> None:
    answer = bake_formula("F5", BakeWish(jacket="water"), demo)
    assert answer.exit_code == 4
    assert [problem.where for problem in answer.problems] == ["--jacket"]
