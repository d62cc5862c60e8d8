"""krume.usecases.bake.out_of_range: what no bake can be is asked in words, at its line."""

from collections.abc import Callable

import pytest

from krume.properties import pressure_at_altitude_pa
from krume.usecases import Asked, BakeWish, bake_formula

HEAD = "Odd cake\nFamily: separated\nTin: round 20 x 7 cm\nOven: 170 C, no fan\n"
DENSE = f"{HEAD}Density: 0.5 g/ml\n"


@pytest.mark.parametrize(
    ("text", "where", "words"),
    [
        (f"{DENSE}\n500 g sunflower oil\n", "after line 7", "0 % of this batter is water"),
        (f"{DENSE}\n500 g caster sugar\n20 g water\n", "line 7", "% of its sugar and water"),
        (
            DENSE.replace("round 20 x 7", "round 190 x 7")
            + "\n100 g white rice flour\n5 g water\n",
            "--tin",
            "Name a tin that fits the batter.",
        ),
    ],
)
def test_what_no_bake_can_be_is_asked_at_a_line_or_an_option_and_the_rest_stays(
    write: Callable[[str], str], demo: Asked, text: str, where: str, words: str
) -> None:
    answer = bake_formula(write(text), BakeWish(), demo)
    assert answer.exit_code == 3
    (problem,) = answer.problems
    assert (problem.code, problem.where) == ("out-of-range", where)
    assert words in problem.ask
    assert (answer.result.name, answer.result.oven_c) == ("Odd cake", 170)
    assert answer.result.tin is not None
    assert answer.result.minutes is None


def test_a_density_that_is_none_is_asked_once_and_at_its_line(
    write: Callable[[str], str], demo: Asked
) -> None:
    text = f"{HEAD}Density: 480 g/ml\n\n100 g white rice flour\n5 eggs, EU M\n120 g caster sugar\n"
    answer = bake_formula(write(text), BakeWish(), demo)
    assert [(p.code, p.where) for p in answer.problems] == [("density-unclear", "line 5")]
    assert answer.result.oven_c == 170


@pytest.mark.parametrize(("altitude_m", "is_known"), [(-500, True), (-501, False), (5001, False)])
def test_altitudes_end_where_kitchens_end_inside_the_law_of_pressure(
    demo: Asked, altitude_m: float, is_known: bool
) -> None:
    answer = bake_formula("F1", BakeWish(altitude_m=altitude_m), demo)
    assert ("--altitude" not in {problem.where for problem in answer.problems}) == is_known
    if is_known:
        assert pressure_at_altitude_pa(altitude_m) > 0
