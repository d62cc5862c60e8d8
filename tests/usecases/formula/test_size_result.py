"""What the size job answers says the same thing twice: in words and in numbers."""

from itertools import pairwise

import pytest

from krume.usecases import Asked, SizeWish, size_formula

WISH = SizeWish(("round 24 x 7 cm",))


@pytest.mark.parametrize("name", ["F1", "F2", "F4", "F5", "F6"])
def test_the_lines_of_each_option_add_up_to_its_total(demo: Asked, name: str) -> None:
    for option in size_formula(name, WISH, demo).result.options:
        assert sum(line.mass_g or 0 for line in option.lines) == pytest.approx(option.total_g)


def test_each_line_keeps_its_place_and_what_it_was_before(demo: Asked) -> None:
    result = size_formula("F1", WISH, demo).result
    for option in result.options:
        assert sum(line.before_g or 0 for line in option.lines) == pytest.approx(542.0)
        assert option.lines[0].name == "buckwheat flour"


def test_more_batter_stands_deeper_in_the_same_tin(demo: Asked) -> None:
    options = size_formula("F2", WISH, demo).result.options
    ordered = sorted(options, key=lambda option: option.factor)
    assert len(ordered) > 1
    assert all((a.depth_cm or 0) < (b.depth_cm or 0) for a, b in pairwise(ordered))


def test_the_density_says_whose_word_it_is(demo: Asked) -> None:
    density = size_formula("F2", WISH, demo).result.density
    assert density.value_g_ml == pytest.approx(0.48)
    assert density.status != "declared"
    own = size_formula("C2", WISH, demo).result.density
    assert (own.value_g_ml, own.status) == (0.72, "declared")


def test_two_tins_share_the_batter_at_one_depth(demo: Asked) -> None:
    wish = SizeWish(("round 18 x 7 cm", "round 12 x 7 cm"))
    option = size_formula("F2", wish, demo).result.options[0]
    assert sum(option.shares_g) == pytest.approx(option.total_g, rel=1e-6)
    assert option.shares_g[0] / option.shares_g[1] == pytest.approx(18**2 / 12**2, rel=1e-6)
