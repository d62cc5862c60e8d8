"""What is wished of a bake, where nothing is wished."""

from krume.bake import Around
from krume.usecases import BakeWish
from krume.usecases.bake.around import around_of


def test_an_empty_wish_is_the_usual_place_in_a_hot_oven_with_the_door_shut() -> None:
    wish = BakeWish()
    assert around_of(wish) == Around()
    assert (wish.tin, wish.oven, wish.beside, wish.cold_start_c) == (None,) * 4
    assert not (wish.lines or wish.doubt or wish.cooling or wish.fan)


def test_two_equal_wishes_are_one_key() -> None:
    assert len({BakeWish(door_min=(10.0,)), BakeWish(door_min=(10.0,))}) == 1
