"""A cake of no known formula on its rack."""

import pytest

from krume.bake import plain_cake_minutes
from krume.base import OutOfRangeError


def _minutes(diameter: float = 20, height: float = 5, mass: float = 482, **more: float) -> float:
    return plain_cake_minutes(diameter, height, mass, count=16, **more).best  # type: ignore[arg-type]


def test_higher_heavier_and_hotter_rooms_take_longer() -> None:
    base = _minutes()
    assert _minutes(height=7, mass=675) > base
    assert _minutes(mass=700) > base
    assert _minutes(room_c=25.0) > base
    assert _minutes(goal_c=40.0) < base
    assert _minutes(start_c=80.0) < base


def test_a_small_cake_is_cold_before_a_big_one_of_its_kind() -> None:
    assert _minutes(12, 5, 482 * (12 / 20) ** 2) < _minutes()


def test_the_minutes_are_an_interval_of_whole_ends() -> None:
    found = plain_cake_minutes(20, 5, 482, count=16)
    assert found.low < found.best < found.high
    assert found.low == int(found.low)


@pytest.mark.parametrize(
    ("sizes", "more", "words"),
    [
        ((0, 5, 482), {}, "diameter is 0 cm"),
        ((20, 0, 482), {}, "height is 0 cm"),
        ((20, 5, 9000), {}, "no cake is"),
        ((20, 5, 482), {"goal_c": 21.0}, "never brings it to 21"),
        ((20, 5, 482), {"goal_c": 96.0}, "nothing has to cool"),
        ((20, 5, 482), {"room_c": 50.0}, "room is 50"),
        ((20, 5, 482), {"start_c": 140.0}, "start is 140"),
    ],
)
def test_what_is_no_cake_or_never_cools_is_refused(
    sizes: tuple[float, float, float], more: dict[str, float], words: str
) -> None:
    with pytest.raises(OutOfRangeError, match=words):
        _minutes(*sizes, **more)
