"""Bodies of a torte against an integration of their own, done by another program."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from krume.base import OutOfRangeError
from krume.build.outline import Outline
from krume.build.solids import body_ml, cap_arc_cm, cap_ml, cap_skin_cm2, round_cm, top_cm2

ACROSS = st.floats(4.0, 60.0)
SHARE = st.floats(0.02, 1.0)


def ball_radius_at(z: float, base_cm: float, high_cm: float) -> float:
    """Radius of a dome's level z, by the ball it is cut from."""
    ball = (base_cm**2 / 4 + high_cm**2) / (2 * high_cm)
    return math.sqrt(max(0.0, ball**2 - (ball - high_cm + z) ** 2))


@given(ACROSS, SHARE)
def test_a_dome_holds_what_the_sum_of_its_levels_holds(across: float, share: float) -> None:
    high = share * across / 2
    levels, _ = quad(lambda z: math.pi * ball_radius_at(z, across, high) ** 2, 0, high)
    assert cap_ml(across, high_cm=high) == pytest.approx(levels, rel=1e-7)


@given(ACROSS, SHARE)
def test_the_skin_of_a_dome_is_that_of_its_turned_arc(across: float, share: float) -> None:
    high = share * across / 2
    ball = (across**2 / 4 + high**2) / (2 * high)
    half = math.acos(max(-1.0, (ball - high) / ball))
    skin, _ = quad(lambda angle: 2 * math.pi * ball**2 * math.sin(angle), 0, half)
    arc, _ = quad(lambda _: ball, -half, half)
    assert cap_skin_cm2(across, high_cm=high) == pytest.approx(skin, rel=1e-7)
    assert cap_arc_cm(across, high_cm=high) == pytest.approx(arc, rel=1e-6)


def test_a_flat_dome_is_its_disc() -> None:
    assert cap_ml(20.0, high_cm=0.0) == 0.0
    assert top_cm2(Outline(20.0)) == pytest.approx(math.pi * 100)
    assert cap_arc_cm(20.0, high_cm=0.0) == 20.0


@pytest.mark.parametrize(("across", "high"), [(20.0, 10.1), (20.0, -1.0), (-2.0, 0.0)])
def test_more_than_half_a_ball_is_no_dome(across: float, high: float) -> None:
    with pytest.raises(OutOfRangeError):
        cap_ml(across, high_cm=high)


def test_a_body_is_its_wall_and_its_dome() -> None:
    half_ball = 2 / 3 * math.pi * 10**3
    assert body_ml(Outline(20.0), high_cm=5.0, dome_cm=10.0) == pytest.approx(
        math.pi * 100 * 5 + half_ball
    )
    assert body_ml(Outline(length_cm=30.0, width_cm=20.0), high_cm=5.0) == 3000.0


def test_an_outline_has_a_length_all_around() -> None:
    assert round_cm(Outline(length_cm=30.0, width_cm=20.0)) == 100.0
