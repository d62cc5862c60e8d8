"""Random tortes against an integration over their own section, done apart from `krume.build`."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import dblquad, quad

from krume.build.coat import Body, coat_ml
from krume.build.outline import Outline
from tests.build.studio import torte_of

MM = st.integers(4, 25)
COAT = st.integers(1, 9)
DENSITY = {"F1": 482.0 / (math.pi * 100 * 5.0), "C1": 0.75, "C5": 0.80}


def level_radius(z: float, across: float, rim: float, dome: float) -> float:
    """Radius [cm] of a domed body at a height."""
    if z <= rim or dome == 0:
        return across / 2
    ball = (across**2 / 4 + dome**2) / (2 * dome)
    return math.sqrt(max(0.0, ball**2 - (z - rim - dome + ball) ** 2))


def turned_ml(across: float, rim: float, dome: float) -> float:
    """Volume of a turned body, wall and dome apart, because its edge has a corner."""
    wall, _ = quad(lambda z: math.pi * level_radius(z, across, rim, dome) ** 2, 0, rim)
    cap, _ = quad(lambda z: math.pi * level_radius(z, across, rim, dome) ** 2, rim, rim + dome)
    return wall + cap


@settings(max_examples=120)
@given(MM, MM, st.integers(10, 80), COAT)
def test_a_domed_torte_weighs_what_its_turned_section_weighs(
    layer: int, cream: int, dome: int, coat: int
) -> None:
    torte = torte_of(
        f"2 layers of F1, {layer} mm\n{cream} mm C1 between the layers\n"
        f"{dome} mm C1 on top, domed\n{coat} mm C5 around and on top"
    )
    rim, cap = (2 * layer + cream) / 10, dome / 10
    inner = turned_ml(20.0, rim, cap)
    outer = turned_ml(20.0 + coat / 5, rim, cap + coat / 10)
    sponge = math.pi * 100 * 2 * layer / 10
    want = sponge * DENSITY["F1"] + (inner - sponge) * DENSITY["C1"]
    want += (outer - inner) * DENSITY["C5"]
    assert torte.mass_g == pytest.approx(want, rel=1e-7)
    assert sum(x.mass_g or 0 for x in torte.layers) == pytest.approx(torte.mass_g, abs=0.1)
    assert torte.height_mm == pytest.approx(2 * layer + cream + dome + coat)
    assert torte.skin is not None
    assert torte.skin.side_cm2 == pytest.approx(math.pi * (20 + coat / 5) * rim)


@settings(max_examples=60)
@given(st.integers(10, 30), st.integers(10, 25), MM, COAT)
def test_a_square_torte_in_its_frame_holds_what_a_double_integral_holds(
    long: int, wide: int, cream: int, coat: int
) -> None:
    torte = torte_of(
        f"1 sheet of F3, 12 mm, trimmed to {min(long, 33)} x {min(wide, 22)} cm\n"
        f"{cream} mm C1 on the sheet\n{coat} mm C5 around and on top"
    )
    long_cm, wide_cm = max(long, min(wide, 22)), min(long, min(wide, 22))

    def whole(grown: float, top: float) -> float:
        found, _ = dblquad(
            lambda _x, _y: (12 + cream) / 10 + top, 0, long_cm + grown, 0, wide_cm + grown
        )
        return found

    coat_want = whole(coat / 5, coat / 10) - whole(0.0, 0.0)
    assert torte.layers[-1].volume_ml == pytest.approx(coat_want, rel=1e-9)


@given(st.floats(8, 40), st.floats(5, 120), st.floats(0.05, 1), st.floats(0.1, 15))
def test_a_coat_over_a_dome_is_the_difference_of_two_turned_bodies(
    across: float, rim_mm: float, share: float, thick_mm: float
) -> None:
    dome = share * across / 2
    inner = turned_ml(across, rim_mm / 10, dome)
    body = Body(Outline(across), rim_mm + dome * 10, inner, dome * 10)
    thick = thick_mm / 10
    over = turned_ml(across + 2 * thick, rim_mm / 10, dome + thick) - inner
    wall, _ = quad(lambda r: 2 * math.pi * r * rim_mm / 10, across / 2, across / 2 + thick)
    assert coat_ml(body, thick_mm, covers_top=True) == pytest.approx(over, rel=1e-6, abs=1e-6)
    assert coat_ml(body, thick_mm, covers_top=False) == pytest.approx(wall, rel=1e-6, abs=1e-6)
