"""The tin as a value."""

from dataclasses import FrozenInstanceError

import pytest

from krume.size import SHAPES, Tin
from krume.size.tin import ROUND_FLOOR


def test_a_tin_cannot_be_changed() -> None:
    tin = Tin("round 20 cm", "round", diameter_cm=20.0)
    with pytest.raises(FrozenInstanceError):
        tin.diameter_cm = 22.0  # type: ignore[misc]


def test_every_shape_is_round_or_rectangular() -> None:
    assert set(SHAPES) - ROUND_FLOOR == {"square", "sheet", "loaf"}
