"""What a plan says where its usual minutes of cooling are likely too short."""

import math

from krume.design import read
from krume.usecases import Asked
from krume.usecases.asking.read import formula_of
from krume.usecases.bake.cooling_page import cooled_in_own_tin
from krume.usecases.plan.cooling import cooling_notices


def test_a_chiffon_that_hangs_is_told_and_how_to_make_the_plan_wait(demo: Asked) -> None:
    formula = formula_of("F5", demo).formula
    cooled = cooled_in_own_tin(formula)
    assert cooled is not None and cooled.wrap_min is not None
    late = 5 * math.ceil(cooled.wrap_min.high / 5)
    (notice,) = cooling_notices("F5", "chiffon", formula)
    assert notice.code == "cooling-may-be-longer"
    assert notice.where == "F5"
    assert notice.text.startswith("90 min of cooling are planned as usual")
    assert late > 100
    assert f"Write “Cooled: {late} min” into its text" in notice.text


def test_a_sponge_whose_minutes_fit_is_not_told(demo: Asked) -> None:
    assert cooling_notices("F1", "separated", formula_of("F1", demo).formula) == ()
    assert cooling_notices("F4", "nut", formula_of("F4", demo).formula) == ()


def test_what_is_not_known_is_not_told() -> None:
    bare = read("Cake\nFamily: chiffon\n\n100 g sugar\n").value
    assert cooling_notices("X", "chiffon", bare) == ()
