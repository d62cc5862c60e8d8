"""A tin as it is written, in centimetres and in inches."""

import pytest

from krume.size import Tin, tin_text


@pytest.mark.parametrize(
    ("tin", "text"),
    [
        (Tin("", "round", diameter_cm=20.0, height_cm=5.0), "round 20 x 5 cm"),
        (Tin("", "round", diameter_cm=6.0, height_cm=20.0), "round 6 cm, 20 cm high"),
        (Tin("", "square", length_cm=20.0, width_cm=20.0, height_cm=13.0),
         "square 20 cm, 13 cm high"),
        (Tin("", "tray", diameter_cm=5.0, top_cm=7.0, height_cm=3.0, count=12),
         "tray 12 x 7/5 x 3 cm"),
        (Tin("", "tray", count=12, water_ml=1000.0), "tray 12 cups, 1000 ml water"),
        (Tin("", "tube", water_ml=2366.0), "tube, 2366 ml water"),
        (Tin("", "round", diameter_cm=20.0, count=2), "2 x round 20 cm"),
        (Tin("", "loaf", "glass", length_cm=20.0, width_cm=10.0, top_length_cm=23.0,
             top_width_cm=13.0, height_cm=7.0), "glass loaf 23 x 13 / 20 x 10 x 7 cm"),
        (Tin("", "tube", diameter_cm=20.0, hole_cm=6.0, greased=False),
         "tube 20 cm, hole 6 cm, not greased"),
    ],
)  # fmt: skip
def test_a_tin_has_one_text(tin: Tin, text: str) -> None:
    assert tin_text(tin) == text


def test_a_tin_can_be_written_in_inches() -> None:
    sheet = Tin("", "sheet", length_cm=33.02, width_cm=22.86, height_cm=2.54)
    assert tin_text(sheet, unit="in") == "sheet 13 x 9 x 1 in"
