"""What is asked of a formula, at its place."""

from dataclasses import replace

from krume.build.asking import density_asked, high_asked, piece_asked
from krume.build.plan_lines import Component
from tests.build.studio import C1, F1, demo

LAYER = Component("3 layers of F1, 14 mm", 3, "F1", 3, "layer", 14.0)


def test_a_formula_that_says_everything_is_not_asked() -> None:
    assert piece_asked(F1, LAYER) == ()


def test_a_formula_without_a_tin_is_asked_in_its_own_text() -> None:
    (problem,) = piece_asked(replace(F1, tin=None), LAYER)
    assert (problem.code, problem.where) == ("tin-missing", "F1 after line 1")
    assert "Tin: round 20 x 7 cm" in problem.ask


def test_the_question_for_a_density_says_how_to_find_it() -> None:
    problem = density_asked(C1)
    assert "Fill a cup" in problem.ask
    assert problem.where == "C1 after line 1"


def test_a_torte_higher_than_any_is_asked_at_the_line_that_makes_it_so() -> None:
    torte = demo("T1")
    assert high_asked(torte) == ()
    (problem,) = high_asked(replace(torte, height_mm=22146.9))
    assert problem.code == "torte-too-high"
    assert "22147 mm high" in problem.ask.replace(" ", "").replace("mmhigh", " mm high")
    assert problem.where in {f"line {layer.line}" for layer in torte.layers}
