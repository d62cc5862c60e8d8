"""Families and bands as they are packed."""

import pytest

from krume.base import NotFoundError
from krume.design.bands import Band, band, bands, families, family

BATTERS = ["separated", "genoise", "chiffon", "angel", "butter", "nut", "roulade", "tart"]
# Row counts and column sums, so that each changed figure shows in a diff.
ROWS, LOWS, HIGHS = 83, 3841.62, 6301.85


def every_band() -> list[Band]:
    return [found for each in families() for found in bands(each.key)]


def test_the_batters_are_the_eight_families() -> None:
    assert [each.key for each in families() if each.kind == "batter"] == BATTERS


def test_each_family_has_bands_of_its_own() -> None:
    for each in families():
        found = bands(each.key)
        assert found
        assert {one.family for one in found} == {each.key}


def test_no_figure_has_two_bands_in_a_family() -> None:
    for each in families():
        quantities = [found.quantity for found in bands(each.key)]
        assert sorted(quantities) == sorted(set(quantities))


@pytest.mark.pin
def test_the_packed_bands_are_the_ones_last_read() -> None:
    found = every_band()
    assert len(found) == ROWS
    assert sum(one.low for one in found) == pytest.approx(LOWS, abs=1e-6)
    assert sum(one.high for one in found) == pytest.approx(HIGHS, abs=1e-6)


def test_a_band_runs_upwards_and_warns_no_earlier_than_its_edge() -> None:
    for one in every_band():
        assert 0 <= one.low <= one.high
        assert one.warn_high is None or one.warn_high >= one.high


def test_no_band_claims_more_than_common_practice() -> None:
    assert {one.status for one in every_band()} == {"common practice"}


@pytest.mark.parametrize(
    ("key", "quantity", "low", "high"),
    [
        ("separated", "egg", 200, 340),
        ("separated", "starch", 30, 50),
        ("separated", "sweet_rice", 5, 12),
        ("genoise", "egg", 170, 260),
        ("chiffon", "egg_yolk", 50, 90),
        ("chiffon", "egg_white", 130, 200),
        ("angel", "sugar_per_egg", 0.75, 1.05),
        ("butter", "xanthan", 0.2, 0.5),
        ("nut", "nut", 35, 90),
        ("roulade", "xanthan", 0.3, 0.5),
        ("tart", "butter", 45, 70),
        ("jelly", "gelatine_g_l", 10, 20),
        ("cooked-white-buttercream", "butter_per_white", 2, 3),
    ],
)
def test_a_band_is_found_by_family_and_figure(
    key: str, quantity: str, low: float, high: float
) -> None:
    found = band(key, quantity)
    assert found is not None
    assert (found.low, found.high) == (low, high)


def test_a_figure_without_a_usual_range_has_no_band() -> None:
    assert band("butter", "sugar_per_egg") is None


def test_starch_above_sixty_percent_is_warned_of() -> None:
    found = band("separated", "starch")
    assert found is not None
    assert found.warn_high == 60


def test_an_unknown_family_is_refused_with_the_known_ones() -> None:
    with pytest.raises(NotFoundError, match="Type one of: separated, genoise"):
        family("sponge")


def test_the_planned_gravity_lies_in_its_band_and_says_it_is_assumed() -> None:
    for each in families():
        if each.kind == "batter" and each.key != "tart":
            assert each.sg_low is not None
            assert each.sg_high is not None
            assert each.sg_plan is not None
            assert each.sg_low <= each.sg_plan <= each.sg_high
            assert each.sg_plan_status == "assumed"


@pytest.mark.parametrize(
    ("key", "batter_g", "area_cm2", "depth_cm"),
    [
        ("separated", 542.0, 314.159, "3.59"),
        ("separated", 519.0, 314.159, "3.44"),
        ("roulade", 398.0, 754.837, "1.10"),
        ("nut", 522.0, 380.133, "2.75"),
        ("chiffon", 553.2, 285.885, "3.87"),
        ("butter", 643.7, 254.469, "2.98"),
    ],
)
def test_the_planned_gravities_give_the_demos_depths(
    key: str, batter_g: float, area_cm2: float, depth_cm: str
) -> None:
    gravity = family(key).sg_plan
    assert gravity is not None
    assert f"{batter_g / gravity / area_cm2:.2f}" == depth_cm


def test_a_core_range_is_that_of_a_foam_or_of_a_rich_batter() -> None:
    cores = {each.key: (each.core_low_c, each.core_high_c) for each in families()}
    assert {cores[key] for key in ("separated", "genoise", "angel", "roulade")} == {(93, 96)}
    assert {cores[key] for key in ("chiffon", "butter", "nut")} == {(95, 99)}
    assert cores["tart"] == (None, None)


def test_whites_have_five_minutes_and_batters_ten() -> None:
    foams = [each for each in families() if each.kind == "batter" and each.key != "tart"]
    assert {each.batter_min for each in foams} == {10}
    assert [each.key for each in foams if each.whites_min is None] == ["genoise", "butter"]
    assert {each.whites_min for each in foams} == {5, None}


def test_no_cream_and_no_tart_base_is_a_batter_in_a_tin() -> None:
    others = {each.key for each in families() if not each.has_batter_in_tin}
    assert others == {"tart", *(each.key for each in families() if each.kind == "cream")}
    assert family("roulade").has_batter_in_tin
