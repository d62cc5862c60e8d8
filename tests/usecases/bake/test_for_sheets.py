"""What the bake model says on the sheets is what the command says."""

from krume.base import Interval
from krume.publish import ModelBake
from krume.usecases import Asked, BakeWish, bake_formula
from krume.usecases.asking.read import formula_of
from krume.usecases.bake.for_sheets import model_bake, oven_part

BAKE = ModelBake(Interval(25.0, 33.0, 43.0), 32.6, "core", 95.0)


def test_the_sheet_and_the_command_say_the_same_minutes(demo: Asked) -> None:
    said = bake_formula("F1", BakeWish(), demo).result
    bake = model_bake(formula_of("F1", demo), demo)
    assert bake is not None and said.minutes is not None
    assert (bake.minutes.low, bake.minutes.high) == (said.minutes.low, said.minutes.high)
    assert (bake.last, bake.core_c) == (said.done_by, said.core_c)


def test_a_cream_has_nothing_of_it(demo: Asked) -> None:
    assert model_bake(formula_of("C1", demo), demo) is None


def test_the_order_sheet_has_a_row_for_each_cake_and_none_for_a_cream() -> None:
    part = oven_part({"F1": BAKE, "C1": None})
    assert part is not None and part.table is not None
    assert part.table.rows == (("F1", "25", "33", "43", "95", "core"),)
    assert oven_part({"C1": None}) is None
