"""Invented cuts of a cake, for what draws them."""

from dataclasses import replace

from krume.bake import Section
from krume.publish import CakeCut
from krume.size import Tin

ROUND = Tin("round 20 x 7 cm", "round", diameter_cm=20.0, height_cm=7.0)
TUBE = Tin("tube", "tube", diameter_cm=24.0, height_cm=9.0, hole_cm=6.0)

# Coldest in the middle, warmer to every side: rows from the bottom, rings from the middle.
TEMPS = (
    (80.0, 82.0, 90.0, 98.0),
    (50.0, 55.0, 70.0, 92.0),
    (45.0, 50.0, 66.0, 91.0),
    (70.0, 72.0, 84.0, 96.0),
)
CUT = Section(
    time_min=20.0,
    radius_cm=(0.0, 4.0, 7.0, 9.0, 10.0),
    height_cm=(0.0, 1.0, 2.0, 3.0, 4.0),
    temp_c=TEMPS,
    delta_e=3.0,
    crust_mm=2.0,
)
HOLED = replace(CUT, radius_cm=(3.0, 6.0, 9.0, 11.0, 12.0))


def cake_cut(section: Section = CUT, tin: Tin = ROUND) -> CakeCut:
    """A cut to draw, its core wanted at 95 °C."""
    return CakeCut(section, tin, 3.0, 45.0, 95.0, "#c89650")
