"""Batter and oven: plain values."""

import pytest

from tests.bake.cases import batter


def test_parts_are_scaled_to_a_whole() -> None:
    assert sum(batter("hazel", 540, ash=0.2).parts) == pytest.approx(1.0)


def test_the_sugar_share_is_of_sugar_and_water_only() -> None:
    assert batter("hazel", 540).sugar_share == pytest.approx(0.257 / (0.257 + 0.395))
