"""How a formula of the book cools after its bake in a tin and an oven."""

from functools import lru_cache
from typing import TYPE_CHECKING

from krume.bake import Batter, Cooling, CoolingWay, Oven, batter_of, cooling_ways
from krume.base import InputError, Notice
from krume.design import Formula, balance
from krume.size import Tin, area_cm2
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.bake.bake import bake_ground
from krume.usecases.bake.cooling import CoolingResult, cooled_by, cooling_after
from krume.usecases.bake.cooling_sources import cooling_sources
from krume.usecases.bake.cooling_words import cooling_line
from krume.usecases.formula.size import density_of

if TYPE_CHECKING:
    from krume.usecases import BakeWish

_CARD_DRAWS = 64


def cooling_of(
    name: str, wish: "BakeWish", asked: Asked, *, room_c: float | None = None
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


def cooling_line_of(formula: Formula) -> str:
    """The cooling of a formula in its own tin and oven in one line for a card; "" is none."""
    found = cooled_in_own_tin(formula)
    return "" if found is None else cooling_line(found)


def cooled_in_own_tin(formula: Formula) -> Cooling | None:
    """The cooling of a formula in its own tin and oven, its family's way; None is not known."""
    oven, tin, density = formula.oven, formula.tin, density_of(formula)
    if oven is None or oven.temp_c is None or tin is None or density.value_g_ml is None:
        return None
    if area_cm2(tin) is None or oven.stages:
        return None
    batter = batter_of(
        formula,
        family=balance(formula).family,
        density_g_ml=density.value_g_ml,
        density_measured=density.status == "measured",
    ).value
    way = cooling_ways().get(balance(formula).family or "")
    if batter is None or way is None:
        return None
    height = None if formula.baked is None else formula.baked.height_mm
    try:
        return _cooled(batter, tin, Oven(oven.temp_c, fan=bool(oven.fan)), way, height)
    except InputError:
        # What the bake refuses is said where the bake is asked; papers are printed all the same.
        return None


@lru_cache(maxsize=128)
def _cooled(
    batter: Batter, tin: Tin, oven: Oven, way: CoolingWay, height_mm: float | None
) -> Cooling | None:
    """The same cake stands on a bench card, on torte plans and in plans: it is cooled once."""
    found = cooled_by(way, batter, tin, oven, height_mm=height_mm, count=_CARD_DRAWS)
    return found if isinstance(found, Cooling) else None
