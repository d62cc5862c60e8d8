"""Every parameter is a row with its papers."""

import pytest

from krume.bake import figures, wall, walls
from krume.bake.parameters import value
from krume.base import STATUSES, NotFoundError


def test_every_parameter_says_how_it_is_known() -> None:
    assert len(figures()) > 40
    assert all(f.status in STATUSES and f.source for f in figures().values())


def test_what_was_fitted_is_called_calibrated() -> None:
    fitted = {key for key, f in figures().items() if f.status == "calibrated"}
    assert fitted == {"heat-static", "wet-skin", "colour-pale", "colour-golden"}
    assert value("heat-static") == 5.5


def test_every_tin_material_of_the_contract_has_a_wall() -> None:
    assert {"aluminium", "steel", "dark", "glass", "ceramic", "silicone"} <= walls().keys()


def test_an_unknown_material_is_named_with_those_known() -> None:
    with pytest.raises(NotFoundError, match="aluminium"):
        wall("wood")
