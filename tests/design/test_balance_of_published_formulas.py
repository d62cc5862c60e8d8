"""The arithmetic of the bands on published wheat formulas, as their books print the percents."""

import pytest

from krume.design import balance, band, read
from krume.design.balance import Balance
from krume.design.ratios import best_of
from tests.agreement import agrees

ANGEL = """\
Angel cake
Family: angel

244 g egg whites
250 g sugar
100 g cake flour
3.6 g cream of tartar
"""
BROWNIES = """\
Brownies

9 oz shortening
1 lb 10 oz sugar
12 oz fresh eggs
15 oz all-purpose flour
6 oz cocoa
4 1/4 oz chopped walnuts
"""
PANCAKES = """\
Pancakes

4 lb all-purpose flour
3 1/4 oz baking powder
4 1/2 oz sugar
1 lb 12 oz fresh eggs
84 oz water
16 oz vegetable oil
"""
HIGH_RATIO = """\
White cake

800 g cake flour
800 g sugar
40 g baking powder
20 g salt
400 g emulsified shortening
480 g skim milk
480 g egg whites
"""
LIGHT_SPONGE = """\
Light sponge

8 oz eggs
4 oz sugar
4 oz cake flour
"""


def balanced(text: str) -> Balance:
    found = read(text)
    assert not found.problems, found.problems
    return balance(found.value)


def percent(text: str, key: str) -> float | None:
    return best_of(balanced(text).percent[key])


# For 100 g of flour the printed grams are the percents.
@pytest.mark.source("lowe-experimental-cookery", "experiment 69, standard formula in grams")
@pytest.mark.parametrize(
    ("key", "printed"),
    [("egg_white", "244"), ("sugar", "250"), ("cream_of_tartar", "3.6")],
)
def test_an_angel_cake_of_100_g_flour_has_its_grams_as_percents(key: str, printed: str) -> None:
    assert agrees(percent(ANGEL, key), printed)


@pytest.mark.source("lowe-experimental-cookery", "angel cake: flour, gram of it per gram of white")
def test_the_most_flour_of_the_book_is_the_least_white_of_the_band() -> None:
    whites = band("angel", "egg_white")
    assert whites is not None
    assert agrees(100 / whites.low, "0.4")
    most, beyond = (
        {each.code for each in balanced(ANGEL.replace("100 g cake", f"{g} g cake")).findings}
        for g in (97.6, 97.7)
    )
    assert "egg_white-low" not in most
    assert "egg_white-low" in beyond


@pytest.mark.source("tea-bakers-percent-2015", "2, brownies")
@pytest.mark.parametrize(
    ("key", "printed"),
    [("added_fat", "60"), ("sugar", "173"), ("egg", "80"), ("cocoa", "40"), ("nut", "28.33")],
)
def test_a_formula_in_ounces_has_the_percents_of_the_teachers_key(key: str, printed: str) -> None:
    assert agrees(percent(BROWNIES, key), printed)


@pytest.mark.source("tea-bakers-percent-2015", "4, pancakes")
@pytest.mark.parametrize(
    ("key", "printed"),
    [("baking_powder", "5.08"), ("sugar", "7.03"), ("egg", "43.75"), ("liquid", "131.25"),
     ("added_fat", "25")],
)  # fmt: skip
def test_pounds_and_ounces_add_up_as_in_the_teachers_key(key: str, printed: str) -> None:
    assert agrees(percent(PANCAKES, key), printed)


@pytest.mark.source("gisslen-bakers-percent", "sample cake formula, 800 g flour")
@pytest.mark.parametrize(
    ("key", "printed"),
    [("sugar", "100"), ("baking_powder", "5"), ("salt", "2.5"), ("added_fat", "50"),
     ("liquid", "60"), ("egg_white", "60")],
)  # fmt: skip
def test_the_sample_cake_has_its_printed_percents(key: str, printed: str) -> None:
    assert agrees(percent(HIGH_RATIO, key), printed)


@pytest.mark.source("gisslen-bakers-percent", "sample cake formula, sum of the percents")
def test_the_percents_of_the_sample_cake_add_up_to_the_printed_sum() -> None:
    found = balanced(HIGH_RATIO)
    total, flour = best_of(found.total_g), best_of(found.flour_g)
    assert total is not None
    assert flour is not None
    assert agrees(100 * total / flour, "377.5")


@pytest.mark.source("friberg-2003", "the lightest sponge: 4 oz each of sugar and flour to 8 oz egg")
def test_a_light_sponge_has_twice_its_flour_in_egg() -> None:
    found = balanced(LIGHT_SPONGE)
    assert agrees(best_of(found.percent["egg"]), "200")
    assert agrees(best_of(found.percent["sugar"]), "100")
    assert agrees(best_of(found.sugar_per_egg), "0.5")
