"""The demo studio's tortes with what their formulas hold, as the moisture sums take them."""

from functools import cache
from importlib.resources import files

from krume.build import Torte
from krume.design import Formula, read
from krume.keep import Holding, holding_of
from krume.label import product_of_formula
from tests.build.studio import PARTS, demo

FAMILIES = {name: part.family for name, part in PARTS.items()}


def torte(name: str) -> Torte:
    """A torte of the demo studio."""
    return demo(name)


@cache
def holds() -> dict[str, Holding]:
    """What each formula of the demo studio holds, by its name."""
    found = {name: _held(name) for name in PARTS}
    assert all(isinstance(each, Holding) for each in found.values()), found
    return {name: each for name, each in found.items() if isinstance(each, Holding)}


def _held(name: str) -> Holding | str:
    formula = _formula(name)
    product = product_of_formula(name, formula)
    if formula.baked is None:
        return holding_of(formula)
    assert product.mixed_g is not None
    assert product.finished_g is not None
    return holding_of(formula, lost_share=1 - product.finished_g / product.mixed_g)


def _formula(name: str) -> Formula:
    folder = files("krume").joinpath("data", "demo", "formulas")
    return read(folder.joinpath(f"{name}.txt").read_text("utf-8")).value
