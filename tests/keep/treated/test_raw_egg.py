"""Egg that is not heated, and the grams of pasteurised egg in its place."""

from krume.design import read
from krume.keep.treated import raw_egg


def test_each_part_is_replaced_by_its_own_grams() -> None:
    text = "Mousse\n\n70 g egg yolk\n120 g egg white\n100 g sugar\n"
    assert [egg.instead for egg in raw_egg(read(text).value)] == [
        "70 g of pasteurised egg yolk",
        "120 g of pasteurised egg white",
    ]


def test_an_egg_of_no_known_size_is_replaced_by_the_same_grams() -> None:
    found = raw_egg(read("Cream\n\n2 eggs\n100 g sugar\n").value)
    assert [egg.mass_g for egg in found] == [None]
    assert found[0].instead == "the same grams of pasteurised egg whole"


def test_no_egg_is_none() -> None:
    assert raw_egg(read("Syrup\n\n100 g sugar\n100 g water").value) == ()
