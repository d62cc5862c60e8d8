"""Slopes of the balance: exact for one sum of masses over another."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.design import Formula, balance
from krume.design.bands import Band
from krume.design.matters.slope import Slope, judged, settled, slopes, with_masses
from tests.design.studio import C1, F1, F3, F5, formula, item

MADE = (F1, F3, F5, C1)
POTATO, RICE = "potato starch", "white rice flour"


def along(made: Formula, name: str, quantity: str) -> Slope:
    made = settled(made)
    index = next(at for at, line in enumerate(made.lines) if line.name == name)
    found = slopes(made, index, judged(balance(made)))
    return next(slope for band, slope in found.items() if band.quantity == quantity)


def value(made: Formula, quantity: str) -> float:
    return next(v for band, v in judged(balance(made)).items() if band.quantity == quantity)


def test_the_slope_of_a_share_is_its_own_derivative() -> None:
    # starch = 100 p / b with the starch inside the flour: 100 (b - p) / b^2, and -100 p / b^2.
    flour, starch = 104.0, 34.0
    inside = along(F1, POTATO, "starch")
    assert inside.per_g == pytest.approx(100 * (flour - starch) / flour**2, rel=1e-9)
    assert inside.bend_per_g == pytest.approx(1 / flour, rel=1e-9)
    assert along(F1, RICE, "starch").per_g == pytest.approx(-100 * starch / flour**2, rel=1e-9)


def test_outside_the_basis_a_line_bends_nothing() -> None:
    sugar = along(F1, "caster sugar", "sugar")
    assert sugar.per_g == pytest.approx(100 / 104, rel=1e-12)
    assert sugar.bend_per_g == pytest.approx(0, abs=1e-12)
    assert sugar.change(10) == pytest.approx(1000 / 104, rel=1e-12)


def test_a_tenth_of_a_gram_of_xanthan_is_a_seventh_of_a_point() -> None:
    assert along(F3, "xanthan gum", "xanthan").change(0.1) == pytest.approx(100 * 0.1 / 70)


@pytest.mark.parametrize("made", MADE, ids=lambda made: str(made.name))
@given(factor=st.floats(0.6, 1.25), pick=st.integers(0, 30))
def test_one_slope_tells_any_change_of_a_line(made: Formula, factor: float, pick: int) -> None:
    # Further out the family itself changes: with half its flour F1 is a nut sponge.
    made = settled(made)
    index = pick % len(made.lines)
    base = judged(balance(made))
    mass = made.lines[index].mass_g or 0.0
    after = judged(balance(with_masses(made, {index: mass * factor})))
    for band, slope in slopes(made, index, base).items():
        change = slope.change(mass * (factor - 1))
        assert change == pytest.approx(after[band] - base[band], rel=1e-7, abs=1e-9)


@pytest.mark.parametrize("made", MADE, ids=lambda made: str(made.name))
def test_slopes_of_a_share_weighted_by_mass_add_up_to_nothing(made: Formula) -> None:
    # A percent or a ratio does not change when every line grows alike; a load on a sheet does.
    made = settled(made)
    base = judged(balance(made))
    added: dict[Band, float] = dict.fromkeys(base, 0.0)
    for index, line in enumerate(made.lines):
        for band, slope in slopes(made, index, base).items():
            added[band] += slope.per_g * (line.mass_g or 0.0)
    for band, total in added.items():
        whole = base[band] if band.quantity == "batter_g_cm2" else 0.0
        assert total == pytest.approx(whole, abs=1e-7)


def test_taking_all_flour_away_leaves_nothing_to_divide_by() -> None:
    made = formula("One", (item(50, RICE), item(60, "caster sugar")), family="separated")
    assert along(made, RICE, "sugar").change(-50) is None
    assert value(made, "sugar") == 120


def test_an_unknown_family_has_no_figures_to_judge() -> None:
    assert judged(balance(formula("What", (item(50, RICE),)))) == {}
