"""Tin and roll sums as people and checks call them."""

import pytest

from krume.base import InputError, OutOfRangeError
from krume.calc import answer, run
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R32, R53 to R56 as quick sums")
@pytest.mark.parametrize(
    ("inputs", "printed"),
    [
        ({"shape": "round", "diameter": "8in", "height": "2in"}, "1647.4"),
        ({"shape": "round", "diameter": 22, "top": 24, "height": 7}, "2910.2"),
        ({"shape": "loaf", "length": 20, "width": 10, "top_length": 23, "top_width": 13,
          "height": 7}, "1736.0"),
        ({"shape": "ring-mould", "diameter": 24, "hole": 8}, "1263.3"),
        ({"shape": "springform", "diameter": 26, "height": 7}, "3716.5"),
        ({"shape": "tube", "diameter": 25, "height": 10, "hole": 5}, "4712.4"),
    ],
)  # fmt: skip
def test_volumes_are_the_printed_ones(inputs: dict[str, object], printed: str) -> None:
    assert agrees(run("tin-volume", **inputs)["volume_ml"], printed)  # type: ignore[arg-type]


@pytest.mark.source("reference-book", "tins of the checks")
def test_the_studios_tins_are_the_printed_ones() -> None:
    sheet = run("tin-volume", shape="sheet", length="13in", width="9in", height="1in")
    assert agrees(sheet["volume_ml"], "1917.3") and agrees(sheet["area_cm2"], "754.8")  # type: ignore[arg-type]
    tube = run("tin-volume", shape="tube", diameter_cm=20, height_cm=10, hole_cm=6)
    assert agrees(tube["volume_ml"], "2858.8") and agrees(tube["area_cm2"], "285.9")  # type: ignore[arg-type]


@pytest.mark.source("reference-book", "R58, R59, R60 as quick sums")
def test_factors_and_rolls_are_the_printed_ones() -> None:
    factor = run("tin-factor", **{"from": "round 20 x 7 cm", "to": "square 20 x 7 cm"})
    assert agrees(factor["by_area"], "1.2732")  # type: ignore[arg-type]
    roll = run("roll", length=38, thickness="10mm", cream=0.4, core=0.8)
    assert agrees(roll["diameter_cm"], "8.38") and agrees(roll["turns"], "2.42")  # type: ignore[arg-type]
    assert agrees(roll["outer_strain_pct"], "38.5")  # type: ignore[arg-type]


def test_without_a_height_the_volume_is_unknown_and_said() -> None:
    found = answer("tin-volume", {"shape": "round", "diameter": 20})
    assert found.values["volume_ml"] is None
    assert found.values["area_cm2"] == pytest.approx(314.159265)
    assert [n.code for n in found.notices] == ["tin-depth-missing"]


def test_a_square_needs_one_side_and_a_tray_counts() -> None:
    assert run("tin-volume", shape="square", length=20, height=5)["volume_ml"] == 2000.0
    assert run("tin-volume", shape="square", diameter=20, height=5)["volume_ml"] == 2000.0
    one = run("tin-volume", shape="tray", diameter=5, top=7, height=3)["volume_ml"]
    many = run("tin-volume", shape="tray", diameter=5, top=7, height=3, count=12)["volume_ml"]
    assert many == pytest.approx(12 * one)  # type: ignore[operator]


def test_several_targets_count_together() -> None:
    found = run("tin-factor", from_="round 20 cm", to="round 20 cm; round 20 cm")
    assert found == {"by_volume": None, "by_area": 2.0}


@pytest.mark.parametrize(
    ("inputs", "field"),
    [
        ({"shape": "oval", "diameter": 20}, "shape"),
        ({"shape": "round"}, "diameter"),
        ({"shape": "tube", "diameter": 20}, "hole"),
        ({"shape": "sheet", "length": 20}, "width"),
        ({"shape": "round", "diameter": -3}, "diameter"),
        ({"shape": "round", "diameter": 0}, "diameter"),
        ({"shape": "round", "diameter": 300}, "diameter"),
        ({"shape": "round", "diameter": 20, "hole": 3}, "hole"),
        ({"shape": "tube", "diameter": 20, "hole": 20}, "hole"),
        ({"shape": "round", "diameter": 24, "top": 22}, "top"),
        ({"shape": "round", "diameter": "20 ml"}, "diameter"),
        ({"shape": "tray", "diameter": 5, "count": 2.5}, "count"),
    ],
)
def test_a_tin_that_cannot_be_is_refused_at_its_input(
    inputs: dict[str, object], field: str
) -> None:
    with pytest.raises(InputError) as caught:
        run("tin-volume", **inputs)
    assert caught.value.field == field


def test_a_tin_text_that_is_asked_is_refused_with_lines_to_type() -> None:
    with pytest.raises(InputError) as caught:
        run("tin-factor", from_="8in pan", to="round 20 cm")
    assert (caught.value.field, caught.value.want) == ("from", "round 8 in or square 8 in")


def test_a_roll_of_nothing_is_refused() -> None:
    with pytest.raises(OutOfRangeError):
        run("roll", length=0, thickness=1)
