"""krume.keep.egg_steps: only a heat that is said of the egg heats it."""

import pytest

from krume.design import read
from krume.keep.egg_steps import hottest_c, steps_heat_egg

CREAM = (
    "Cream\nFamily: set-cream\n\n200 g whipping cream\n2 egg yolks, EU M\n40 g milk\n20 g sugar\n"
    "4 g powdered gelatine\n\n"
)


@pytest.mark.parametrize(
    "steps",
    [
        "Whisk. Do not heat above 71 C.",
        "Boil the syrup to 118 C. Whisk the yolks cold.",
        "Bring the milk to the boil, cool to 30 C, stir in the yolks raw.",
        "Bring the milk to the boil, cool to 30 C, stir in the yolks.",
        "Bake the base at 180 C. Fold the raw eggs in.",
        "Preheat the oven to 180 C for the base. Stir the yolks in.",
        "Melt the gelatine at 80 C, fold into the yolks.",
        "Pour the boiling syrup at 118 C on the whites.",
        "Heat to 85 C. Off the heat add 1 raw egg yolk.",
        "Heat to 85 C. Whisk in the yolks.",
        "Heat to 80 C but not the eggs.",
    ],
)
def test_a_heat_of_something_else_leaves_the_egg_raw(steps: str) -> None:
    assert not steps_heat_egg(read(CREAM + steps, eggs_region="eu").value)


@pytest.mark.parametrize(
    "steps",
    [
        "Boil milk, yolks and sugar, stirring; keep it boiling 1 minute.",
        "Whisk the yolks. Boil the milk, pour it on and cook to 82 C.",
        "Warm the yolks to 82 C, not above 85 C.",
        "Whisk the yolks and sugar over steam to 72 C.",
        "Boil all, stirring.",
    ],
)
def test_a_heat_of_the_egg_or_of_all_heats_it(steps: str) -> None:
    assert steps_heat_egg(read(CREAM + steps, eggs_region="eu").value)


def test_the_hottest_reading_of_a_step_counts_and_none_is_no_heat() -> None:
    assert hottest_c("To 60 C, then 82,5 C") == 82.5
    assert hottest_c("Whisk.") == 0.0
