"""How a formula of the book cools after its bake in a tin and an oven."""

from krume.base import Notice
from krume.usecases.answer import Answer, Asked
from krume.usecases.bake import BakeWish, bake_ground
from krume.usecases.cooling import CoolingResult, cooling_after
from krume.usecases.cooling_sources import cooling_sources


def cooling_of(
    name: str, wish: BakeWish, asked: Asked, *, room_c: float | None = None
) -> Answer[CoolingResult | None]:
    """Minutes after the oven; None where something is asked first, or nothing cools.

    What is asked about the bake itself is asked by the bake: its problems are not said again.
    """
    ground = bake_ground(name, wish, asked)
    if ground.batter is None or ground.tin is None or ground.oven is None:
        return Answer(None, ground.bare.problems, is_possible=ground.bare.is_possible)
    found = cooling_after(ground.formula, ground.batter, ground.tin, ground.oven, room_c=room_c)
    if found.result is None and not found.notices:
        text = "This cake is never done in this oven: nothing cools."
        return Answer(None, notices=(Notice("no-cooling", text),))
    return Answer(found.result, notices=found.notices, sources=cooling_sources())
