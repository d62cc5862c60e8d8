"""What sets a cream: leaves by both rules as the worked case prints them, and alcohol's most."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.properties import alcohol_pct, in_leaves, leaves, most_spirit_g, setting, settings


def test_powder_in_silver_leaves_is_counted_by_both_rules() -> None:
    """Leaves of 2.5 g and 160 bloom: the root of 8 x 10 is 8.94 g, and 8 x 200 / 160 is 10 g."""
    silver = next(swap for swap in in_leaves(8.0, from_bloom=200.0) if swap.leaf.key == "silver")
    assert silver.by_root_g == pytest.approx(8.944, abs=0.0005)
    assert silver.by_root_count == pytest.approx(8.944 / 2.5, abs=0.0005)
    assert silver.by_ratio_g == pytest.approx(10.0)
    assert silver.by_ratio_count == pytest.approx(4.0)


@given(st.floats(0.1, 100), st.floats(60, 300))
def test_the_rules_agree_where_the_strength_is_the_same_and_part_as_it_differs(
    mass: float, bloom: float
) -> None:
    for swap in in_leaves(mass, from_bloom=bloom):
        weaker = swap.leaf.strength_bloom < bloom
        assert (swap.by_ratio_g >= swap.by_root_g - 1e-9) if weaker else True
        assert swap.by_root_g**2 == pytest.approx(mass * swap.by_ratio_g)


def test_stronger_leaves_are_lighter() -> None:
    grades = leaves()
    assert [leaf.strength_bloom for leaf in grades] == sorted(
        leaf.strength_bloom for leaf in grades
    )
    assert [leaf.leaf_g for leaf in grades] == sorted((x.leaf_g for x in grades), reverse=True)


@given(st.floats(10, 500), st.floats(5, 35), st.floats(36, 95))
def test_the_most_spirit_brings_the_share_just_to_its_limit(
    water: float, limit: float, strong: float
) -> None:
    spirit = most_spirit_g(
        limit_pct=limit, water_g=water, spirit_alcohol_pct=strong, spirit_water_pct=100 - strong
    )
    share = alcohol_pct(spirit * strong / 100, water_g=water + spirit * (100 - strong) / 100)
    assert share == pytest.approx(limit)


def test_a_spirit_below_the_limit_may_be_any_amount() -> None:
    assert most_spirit_g(
        limit_pct=30.0, water_g=100.0, spirit_alcohol_pct=20.0, spirit_water_pct=80.0
    ) == float("inf")


def test_a_share_that_is_none_is_refused() -> None:
    with pytest.raises(OutOfRangeError):
        most_spirit_g(limit_pct=130.0, water_g=1.0, spirit_alcohol_pct=40.0, spirit_water_pct=60.0)


def test_what_alcohol_does_to_agar_and_pectin_is_not_known() -> None:
    assert [each.key for each in settings() if each.alcohol_pct is None] == ["agar", "pectin"]
    assert setting("gelatine").water_ratio == 5.0
