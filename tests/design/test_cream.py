"""Figures of creams, as their bands count them."""

import pytest

from krume.design.cream import cream_figures
from krume.design.formula import Formula
from krume.design.ratios import Value
from krume.design.shares import sums
from tests.design import planned as p


def figures(family: str, made: Formula) -> dict[str, Value]:
    return cream_figures(family, made, sums(made.lines))


@pytest.mark.parametrize(
    ("family", "made", "key", "value"),
    [
        ("custard-lightened", p.C1, "gelatine_g_kg", 1000 * 8 / 941.5),
        ("custard-lightened", p.C1, "custard_per_cream", 691.5 / 250),
        ("custard-lightened", p.C1, "yolk_per_milk", 100 * 87.5 / 400),
        ("custard-lightened", p.C1, "starch_per_milk", 100 * 35 / 400),
        ("set-cream", p.C2, "gelatine_g_kg", 1000 * 8 / 853),
        ("set-cream", p.C2, "sugar_g_kg", 1000 * 85 / 853),
        ("set-cream", p.C2, "density_g_ml", 0.72),
        ("ganache", p.C3, "chocolate_per_cream", 1.0),
        ("ganache", p.C3, "butter_per_chocolate", 100 * 20 / 180),
        ("jelly", p.C4, "gelatine_g_l", 1000 * 5 * 1.08 / 390),
        ("jelly", p.C4, "sugar_g_l", 1000 * 60 * 1.08 / 390),
        ("cooked-white-buttercream", p.C5, "sugar_per_white", 190 / 120),
        ("cooked-white-buttercream", p.C5, "butter_per_white", 2.5),
        ("syrup", p.S1, "sugar_per_water", 1.0),
        ("syrup", p.S1, "spirit_pct", 0.0),
    ],
)
def test_a_figure_of_a_cream_is_its_sum(family: str, made: Formula, key: str, value: float) -> None:
    assert figures(family, made)[key] == pytest.approx(value, rel=1e-12)


def test_a_jelly_without_a_density_has_no_grams_per_litre() -> None:
    bare = p.formula((p.CURRANT, 300), (p.SUGAR, 60), (p.GELATINE, 5), tin=None)
    assert figures("jelly", bare)["gelatine_g_l"] is None


def test_a_percent_that_is_written_beside_a_word_is_read_from_it() -> None:
    dark = p.formula(
        p.line(3, p.CHOCOLATE, 180, read="180 g dark chocolate, 60 %"), (p.CREAM, 180), tin=None
    )
    assert figures("ganache", dark)["chocolate_cocoa_pct"] == 60.0
    assert figures("ganache", p.C3)["chocolate_cocoa_pct"] is None


def test_a_cream_with_a_line_without_mass_has_no_grams_per_kilogram() -> None:
    open_end = p.formula((p.CREAM, 420), (p.SUGAR, None), (p.GELATINE, 8), tin=None)
    assert figures("set-cream", open_end)["gelatine_g_kg"] is None


def test_the_butter_of_a_custard_buttercream_is_counted_on_its_custard() -> None:
    lines = ((p.MILK, 400), p.parts(4, 4, "yolk", 17.5), (p.MAIZE, 30), (p.BUTTER, 450))
    found = figures("custard-buttercream", p.formula(*lines, tin=None))
    assert found["butter_per_custard"] == pytest.approx(450 / 500, rel=1e-12)
