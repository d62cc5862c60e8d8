"""Fruit and nuts of a torte are read as they are bought, and what no pantry knows is none."""

from krume.build import read_torte
from krume.usecases import Asked
from krume.usecases.asking.goods import goods_grams, goods_of, is_goods

PLAN = (
    "A\n\n2 layers of F1, 14 mm\n14 x 3 g walnut halves on top\n"
    "200 g raspberries on each layer, 9 mm"
)


def test_grams_are_those_of_all_of_them() -> None:
    assert goods_grams(read_torte(PLAN).value) == {"walnut halves": 42.0, "raspberries": 200.0}


def test_a_thing_of_the_pantry_becomes_a_formula_of_one_line(demo: Asked) -> None:
    found = goods_of("walnut halves", 42.0, demo)
    assert found is not None and is_goods(found)
    (line,) = found.formula.lines
    assert line.mass_g == 42.0
    assert line.ingredient is not None and "walnut" in line.ingredient


def test_what_the_pantry_does_not_know_is_no_goods(demo: Asked) -> None:
    assert goods_of("zwaggle crumbs of nowhere", 42.0, demo) is None
