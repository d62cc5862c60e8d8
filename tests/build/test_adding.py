"""Rounded columns add up as printed."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from krume.build import apportioned


@example([205.14999999999998])
@given(st.lists(st.floats(0, 5000), min_size=1, max_size=12))
def test_a_column_adds_up_to_its_rounded_total_and_no_figure_moves_by_a_step(
    values: list[float],
) -> None:
    shown = apportioned(values, total=sum(values))
    assert sum(shown) == pytest.approx(round(sum(values), 1), abs=1e-6)
    assert all(abs(a - b) < 0.1 + 1e-6 for a, b in zip(shown, values, strict=True))
