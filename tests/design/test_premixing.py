"""A premix: grams with their dust, an order in which nothing small hides, a bowl with room."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.design import PremixPart, premix
from krume.design.premixing import mixing_order

CLASS_KIT = (
    PremixPart("white rice flour", 26.0),
    PremixPart("potato starch", 22.0),
    PremixPart("millet flour", 16.0),
    PremixPart("sweet rice flour", 6.0),
    PremixPart("xanthan gum", 0.25),
)
MASSES = st.lists(st.floats(0.5, 500), min_size=1, max_size=8)


def test_ten_kits_are_weighed_with_two_percent_for_dust() -> None:
    made = premix(CLASS_KIT, 10, step_g=0.1)
    assert made.portion_g == pytest.approx(70.25)
    assert made.total_g == pytest.approx(716.6, abs=0.1)
    assert made.masses_g[0] == pytest.approx(265.2, abs=0.1)


def test_what_a_scale_cannot_show_asks_a_finer_one() -> None:
    made = premix(CLASS_KIT, 10, step_g=1.0)
    assert made.too_fine == (False, False, False, False, True)
    assert made.masses_g[-1] == pytest.approx(2.55, abs=0.06)


def test_a_little_gum_meets_as_much_flour_before_it_meets_more() -> None:
    steps = mixing_order([PremixPart("rice", 40.0), PremixPart("gum", 2.0)])
    assert [step.add_g for step in steps] == [2.0, 2.0, 4.0, 8.0, 16.0, 10.0]
    assert steps[-1].in_bowl_g == 42.0


@given(MASSES)
def test_the_steps_add_up_to_all_of_it_and_none_outweighs_the_bowl(masses: list[float]) -> None:
    parts = [PremixPart(str(at), round(mass, 1)) for at, mass in enumerate(masses)]
    steps = mixing_order(parts)
    assert steps[-1].in_bowl_g == pytest.approx(sum(part.mass_g for part in parts))
    bowl_g = 0.0
    for step in steps:
        assert bowl_g == 0 or step.add_g <= 1.5 * bowl_g + 1e-6
        bowl_g = step.in_bowl_g


@given(MASSES)
def test_the_smallest_part_goes_first(masses: list[float]) -> None:
    parts = [PremixPart(str(at), mass) for at, mass in enumerate(masses)]
    assert mixing_order(parts)[0].add_g == min(masses)


def test_light_flour_needs_a_larger_bowl() -> None:
    heavy = premix([PremixPart("a", 100.0, 0.8)], 2).bowl_ml
    light = premix([PremixPart("a", 100.0, 0.4)], 2).bowl_ml
    assert light == pytest.approx(2 * heavy)


@pytest.mark.parametrize("cakes", [0, -1, 1001])
def test_no_cake_and_far_too_many_are_refused(cakes: int) -> None:
    with pytest.raises(OutOfRangeError):
        premix(CLASS_KIT, cakes)
