"""Labels keep their distance and their order, and stay where they can."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.build.spread_labels import spread


@given(st.lists(st.floats(0, 200), max_size=15), st.floats(0.5, 10))
def test_labels_keep_their_distance_and_their_middle(wanted: list[float], gap: float) -> None:
    places = spread(sorted(wanted), gap)
    assert all(b - a >= gap - 1e-6 for a, b in pairwise(places))
    assert sum(places) == pytest.approx(sum(wanted), abs=1e-6)


def test_labels_with_room_do_not_move() -> None:
    assert spread([0.0, 10.0, 30.0], 6.0) == [0.0, 10.0, 30.0]


def test_three_at_one_place_stand_around_it() -> None:
    assert spread([10.0, 10.0, 10.0], 6.0) == [4.0, 10.0, 16.0]
