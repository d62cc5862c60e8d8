"""Eggs of a corrected formula."""

import pytest

from krume.design.slip.eggs import egg_lines, egg_mass_g, egg_words, eggs_of
from tests.design.slip.demo import formula


def _masses(name: str, factor: float) -> list[float]:
    return [(line.mass_g or 0.0) * factor for line in formula(name).lines]


@pytest.mark.parametrize(
    ("name", "factor", "count", "make_up_g", "left_g"),
    [
        ("F2", 1.0, 5, 0.0, 0.0),
        ("F2", 1.2, 6, 0.0, 0.0),
        ("F2", 1.3, 6, 25.5, 25.5),
        ("F2", 140 / 130, 5, 19.615385, 31.384615),
        ("F4", 0.75, 3, 0.0, 0.0),
        ("F5", 2.0, 10, 0.0, 0.0),
    ],
)
def test_eggs_are_counted_with_what_is_needed_beside(
    name: str, factor: float, count: int, make_up_g: float, left_g: float
) -> None:
    found = eggs_of(formula(name), _masses(name, factor))
    assert found.count == count
    assert found.make_up_g == pytest.approx(make_up_g)
    assert found.waste_g == pytest.approx(left_g)


def test_yolks_and_whites_that_cancel_out_still_open_an_egg() -> None:
    found = eggs_of(formula("F5"), _masses("F5", 1.1))
    assert found.waste_g > 0
    assert [part.part for part in found.parts] == ["yolk", "white"]
    assert egg_words(found).startswith("yolks 77 g = 4 + 7 g, whites 184.3 g = ")


def test_a_formula_without_eggs_counts_none() -> None:
    found = eggs_of(formula("C2"), _masses("C2", 1.0))
    assert (found.count, found.mass_g) == (None, None)
    assert egg_lines(formula("C2")) == ()


def test_all_egg_lines_count_into_the_mass() -> None:
    assert egg_mass_g(formula("F5"), _masses("F5", 1.0)) == pytest.approx(237.5)
    assert egg_mass_g(formula("C5"), _masses("C5", 1.0)) == pytest.approx(120.0)
