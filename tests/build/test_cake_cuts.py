"""Layers from cakes: no cake gives more than its height, and what cannot be names what can."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Infeasible, OutOfRangeError
from krume.build import build_torte
from krume.build.cake_cuts import layers_of, nearest_cuts, packed
from tests.build.studio import PARTS, plan_of, torte_of


@given(st.floats(1, 200), st.floats(1, 40), st.floats(0, 20), st.floats(0, 3))
def test_the_layers_and_their_cuts_go_into_the_cake_and_one_more_does_not(
    high: float, thick: float, off: float, kerf: float
) -> None:
    count = layers_of(high, thick_mm=thick, off_mm=off, kerf_mm=kerf)
    room = high - off
    assert count * thick + max(0, count - 1) * kerf <= max(0.0, room) + 1e-5
    assert (count + 1) * thick + count * kerf > room - 1e-5


@given(st.lists(st.floats(4, 30), min_size=1, max_size=8), st.integers(1, 4))
def test_layers_that_are_shared_out_are_all_there_and_no_cake_is_overdrawn(
    heights: list[float], cakes: int
) -> None:
    shared = packed(heights, cakes, 50.0)
    if shared is None:
        assert math.fsum(heights) > 50.0 * cakes / 2
        return
    assert sorted(h for cake in shared for h in cake) == sorted(heights)
    assert all(math.fsum(cake) <= 50.0 + 1e-5 for cake in shared)


def test_a_layer_of_no_thickness_is_refused() -> None:
    with pytest.raises(OutOfRangeError):
        layers_of(50.0, thick_mm=0.0)


def test_a_torte_says_which_layer_comes_from_which_cake() -> None:
    torte = torte_of("4 layers of F1, 14 mm, from 2 bakes")
    cuts = [(cake.number, cake.layers_mm, round(cake.left_mm, 1)) for cake in torte.cakes]
    assert cuts == [(1, (14.0, 14.0, 14.0), 8.0), (2, (14.0,), 36.0)]
    assert torte.batches[0].batches == 2.0
    assert torte.cakes[0].most == 3


def test_more_layers_than_the_height_yields_name_the_nearest_that_work() -> None:
    answer = build_torte(plan_of("A\n\n4 layers of F1, 14 mm"), PARTS)
    assert isinstance(answer, Infeasible)
    said = answer.clashes[0].said
    assert "3 layers of 14 mm; or 4 layers of 12.5 mm; or the same with “, from 2 bakes”" in said
    for line in ("3 layers of F1, 14 mm", "4 layers of F1, 12.5 mm",
                 "4 layers of F1, 14 mm, from 2 bakes"):  # fmt: skip
        assert not isinstance(build_torte(plan_of(f"A\n\n{line}"), PARTS), Infeasible)


def test_a_layer_higher_than_any_cake_is_offered_at_the_height_of_the_cake() -> None:
    assert nearest_cuts([60.0], 1, 50.0) == "Nearest: 1 layer of 50 mm."
