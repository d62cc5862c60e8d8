"""What a formula itself says of its cooling."""

import pytest

from krume.base import Interval
from krume.design import read
from krume.usecases import Asked, BakeWish, cooling_after
from krume.usecases.bake.bake import bake_ground
from krume.usecases.bake.own_cooling import own_cooling_min


def _minutes(line: str) -> Interval | None:
    return own_cooling_min(read(f"Cake\n{line}\n\n100 g sugar\n\nCooled: 5 min\n").value)


@pytest.mark.parametrize(
    ("line", "low", "high"),
    [
        ("Cooled: 75 to 110 min (measured)", 75, 110),
        ("Cooling: 75-110 minutes", 75, 110),
        ("cooled: 90 min", 90, 90),
        ("Cooled: 2 h", 120, 120),
        ("Cooled: 1.5 to 2 hours", 90, 120),
        ("Cooled: 110 – 75 min", 75, 110),
    ],
)
def test_a_line_of_the_text_is_read_with_both_ends(line: str, low: float, high: float) -> None:
    found = _minutes(line)
    assert found is not None
    assert (found.low, found.high) == (low, high)


@pytest.mark.parametrize(
    "line",
    [
        "",
        "Cooled: overnight",
        "Cold: 30 min",
        "Cooled: 2 houses",
        "Cooled: 0 min",
        "Cooled: 9999 min",
    ],
)
def test_a_step_and_words_without_minutes_are_no_line(line: str) -> None:
    assert _minutes(line) is None


def test_the_cakes_own_minutes_stand_beside_the_models(demo: Asked) -> None:
    ground = bake_ground("F1", BakeWish(), demo)
    assert ground.batter is not None
    assert ground.tin is not None
    assert ground.oven is not None
    said = read("Cake\nFamily: separated\nCooled: 75 to 110 min\n\n100 g sugar\n").value
    found = cooling_after(said, ground.batter, ground.tin, ground.oven, count=16).result
    assert found is not None
    assert found.own_min == Interval(75, 92.5, 110)
    assert found.lines[-1].startswith("By its own text it is cold after 75–110 min")
