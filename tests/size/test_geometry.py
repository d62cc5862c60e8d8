"""Area, volume, depth and fill: published sums, closed forms and the laws of filling."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.size import (
    Tin,
    area_cm2,
    common_depth_cm,
    depth_cm,
    fill,
    read_tin,
    rim_cm,
    volume_at_ml,
    volume_ml,
)
from tests.agreement import agrees

LENGTHS = st.floats(1.0, 60.0)


def tin(text: str) -> Tin:
    read = read_tin(text)
    assert read.value is not None, read.problems
    return read.value


@pytest.mark.source("reference-book", "R32, R53 to R56")
@pytest.mark.parametrize(
    ("text", "printed_ml"),
    [
        ("round 8 x 2 in", "1647.4"),
        ("round 24/22 x 7 cm", "2910.2"),
        ("loaf 23 x 13 / 20 x 10 x 7 cm", "1736.0"),
        ("ring-mould 24 hole 8 cm", "1263.3"),
        ("springform 26 x 7 cm", "3716.5"),
        ("tube 25 x 10 cm, hole 5 cm", "4712.4"),
    ],
)
def test_volumes_are_the_printed_ones(text: str, printed_ml: str) -> None:
    assert agrees(volume_ml(tin(text)), printed_ml)


@pytest.mark.source("reference-book", "tins of the demo studio")
@pytest.mark.parametrize(
    ("text", "printed_ml", "printed_cm2"),
    [
        ("round 20 x 7 cm", "2199.1", "314.2"),
        ("ring 22 x 6 cm", "2280.8", "380.1"),
        ("sheet 13 x 9 x 1 in", "1917.3", "754.8"),
        ("tube 20 x 10 cm, hole 6 cm", "2858.8", "285.9"),
    ],
)
def test_demo_tins_measure_what_is_printed(text: str, printed_ml: str, printed_cm2: str) -> None:
    assert agrees(volume_ml(tin(text)), printed_ml)
    assert agrees(area_cm2(tin(text)), printed_cm2)


@pytest.mark.source("reference-book", "depths of F1 to F6 in their own tins")
@pytest.mark.parametrize(
    ("text", "batter_ml", "printed_cm"),
    [
        ("round 20 x 7 cm", 542.0 / 0.48, "3.59"),
        ("round 20 x 7 cm", 519.0 / 0.48, "3.44"),
        ("sheet 13x9 in, 1 in high", 398.0 / 0.48, "1.10"),
        ("round 22 x 5 cm", 522.0 / 0.50, "2.75"),
        ("tube 20 x 10 cm, hole 6 cm, not greased", 553.2 / 0.50, "3.87"),
        ("round 18 x 7 cm", 643.7 / 0.85, "2.98"),
    ],
)
def test_demo_batters_stand_as_deep_as_printed(
    text: str, batter_ml: float, printed_cm: str
) -> None:
    assert agrees(depth_cm(tin(text), batter_ml), printed_cm)


def test_the_mean_of_both_areas_is_not_the_volume_of_a_flared_loaf() -> None:
    loaf = tin("loaf 23 x 13 / 20 x 10 x 7 cm")
    assert volume_ml(loaf) != pytest.approx(7 * (23 * 13 + 20 * 10) / 2, rel=1e-3)


def test_cups_of_a_tray_are_counted_together() -> None:
    cup = math.pi * 3 / 3 * (3.5**2 + 3.5 * 2.5 + 2.5**2)
    assert volume_ml(tin("tray 12 x 7/5 x 3 cm")) == pytest.approx(12 * cup)
    assert area_cm2(tin("tray 12 x 7/5 x 3 cm")) == pytest.approx(12 * math.pi * 2.5**2)


def test_a_half_torus_filled_to_its_rim_is_half_a_torus() -> None:
    mould = tin("ring-mould 24 hole 10 cm")
    assert rim_cm(mould) == pytest.approx(3.5)
    assert volume_ml(mould) == pytest.approx(math.pi**2 * 8.5 * 3.5**2)
    assert area_cm2(mould) == pytest.approx(math.pi * (12**2 - 5**2))


def test_unknown_dimensions_give_unknown_and_never_zero() -> None:
    flat = tin("round 20 cm")
    assert volume_ml(flat) is None
    assert area_cm2(Tin("", "tube", diameter_cm=20.0)) is None
    assert volume_at_ml(Tin("", "round", diameter_cm=20.0, top_cm=22.0), 3.0) is None
    assert depth_cm(Tin("", "sheet", length_cm=30.0), 100.0) is None
    assert fill(flat, 100.0) is None


def test_water_stands_before_geometry_and_gives_the_rim() -> None:
    wet = tin("round 20 cm, 2186 g water")
    assert volume_ml(wet) == pytest.approx(2189.9)
    assert rim_cm(wet) == pytest.approx(2189.9 / (100 * math.pi))
    assert fill(wet, 2189.9 / 2) == pytest.approx(0.5)


def test_batter_above_the_rim_stands_on_upright_walls() -> None:
    flared = tin("round 24/22 x 7 cm")
    over = volume_at_ml(flared, 8.0)
    assert over == pytest.approx((volume_ml(flared) or 0) + math.pi * 12**2)
    assert depth_cm(flared, over or 0) == pytest.approx(8.0)


@given(bottom=LENGTHS, flare=st.floats(0.0, 1.0), height=LENGTHS, share=st.floats(0.0, 1.4))
def test_depth_undoes_volume_in_flared_rounds(
    bottom: float, flare: float, height: float, share: float
) -> None:
    cone = Tin("", "round", diameter_cm=bottom, top_cm=bottom * (1 + flare), height_cm=height)
    filled = volume_at_ml(cone, share * height)
    assert filled is not None
    assert depth_cm(cone, filled) == pytest.approx(share * height, rel=1e-9, abs=1e-9)


@given(across=st.floats(10.0, 40.0), hole=st.floats(0.05, 0.9), share=st.floats(0.0, 1.2))
def test_depth_undoes_volume_in_a_half_torus(across: float, hole: float, share: float) -> None:
    mould = Tin("", "ring-mould", diameter_cm=across, hole_cm=hole * across)
    depth = share * (across - hole * across) / 4
    filled = volume_at_ml(mould, depth)
    assert filled is not None
    assert depth_cm(mould, filled) == pytest.approx(depth, rel=1e-6, abs=1e-6)


@given(bottom=LENGTHS, flare=st.floats(0.0, 0.5), height=LENGTHS)
def test_a_frustum_lies_between_its_two_cylinders(
    bottom: float, flare: float, height: float
) -> None:
    top = bottom * (1 + flare)
    cone = volume_ml(Tin("", "round", diameter_cm=bottom, top_cm=top, height_cm=height))
    assert cone is not None
    low, high = (math.pi / 4 * d * d * height for d in (bottom, top))
    assert low * (1 - 1e-12) <= cone <= high * (1 + 1e-12)


@given(factor=st.floats(0.2, 5.0))
def test_volume_grows_with_the_cube_of_a_tin(factor: float) -> None:
    small = Tin("", "tube", diameter_cm=20.0, top_cm=22.0, height_cm=9.0, hole_cm=6.0)
    lengths = {name: factor * getattr(small, name) for name in (
        "diameter_cm", "top_cm", "height_cm", "hole_cm")}  # fmt: skip
    large = Tin("", "tube", **lengths)
    assert volume_ml(large) == pytest.approx(factor**3 * (volume_ml(small) or 0))


def test_several_tins_are_filled_to_one_depth() -> None:
    tins = (tin("round 24/22 x 7 cm"), tin("round 15 x 7 cm"))
    depth = common_depth_cm(tins, 1500.0)
    assert depth is not None
    assert sum(volume_at_ml(each, depth) or 0 for each in tins) == pytest.approx(1500.0)
    assert common_depth_cm((), 100.0) is None


@pytest.mark.parametrize("wrong", [-1.0, math.inf, math.nan])
def test_a_depth_or_volume_that_cannot_be_is_refused(wrong: float) -> None:
    with pytest.raises(OutOfRangeError, match="Type"):
        volume_at_ml(tin("round 20 x 5 cm"), wrong)
    with pytest.raises(OutOfRangeError, match="Type"):
        common_depth_cm((tin("round 20 x 5 cm"),), wrong)
