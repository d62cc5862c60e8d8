"""Variations: the figures of the studio, what may not move, and what comes back to its parent."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from krume.design import Formula, balance
from krume.design.varying import (
    PLAIN_OIL,
    Change,
    Variation,
    Wish,
    lines_named,
    per_gram,
    role_of,
    swap_wanted,
    vary,
    weights_g,
)
from krume.pantry import find, ingredient, ingredients
from tests.agreement import agrees
from tests.design.varying.studio import demo

COVERS = ["drafting", "moving", "weights", "parts_of"]
BUTTER = Wish(fat="butter-82-ciqual", fat_name="butter")
NUTS = sorted(
    item.key
    for item in ingredients()
    if item.role == "nut"
    and per_gram(item).fat_g is not None
    and per_gram(item).water_g is not None
)


def varied(name: str, swap: str, wish: Wish | None = None) -> Variation:
    """A demo formula with one swap."""
    wanted = swap_wanted(demo(name), swap)
    assert not wanted.problems, wanted.problems
    return vary(demo(name), wanted.value.changes, wish or Wish())


def masses(made: Variation) -> dict[str, float | None]:
    """Grams of the child's lines by name."""
    return {line.name: line.mass_g for line in made.formula.lines}


def fat_g(formula: Formula) -> float:
    """Fat that the known lines bring."""
    held = [
        (line.mass_g or 0.0) * (per_gram(ingredient(line.ingredient)).fat_g or 0.0)
        for line in formula.lines
        if line.ingredient is not None
    ]
    return sum(held)


@pytest.mark.source("usda-sr28", "12120, 12151, 12036: fat 60.75, 45.32, 51.46 g per 100 g")
@pytest.mark.parametrize(
    ("swap", "gap_g", "oil_g", "butter_g"),
    [("hazelnut=sunflower", "3.7", "3.7", "4.5"), ("hazelnut=pistachio", "6.2", "6.2", "7.5")],
)
def test_the_fat_that_goes_with_the_hazelnuts_is_made_up(
    swap: str, gap_g: str, oil_g: str, butter_g: str
) -> None:
    made = varied("F1", swap)
    assert agrees(made.gaps.fat_g, gap_g)
    assert agrees(masses(made)["sunflower oil"], oil_g)
    assert agrees(masses(varied("F1", swap, BUTTER))["butter"], butter_g)


def test_a_formula_with_a_fat_of_its_own_makes_up_with_that() -> None:
    made = varied("F2", "sweet rice flour=desiccated coconut")
    assert [x.line.name for x in made.lines if x.is_changed and x.line][-1] == "butter"
    assert made.left.fat_g == pytest.approx(0, abs=0.1)


def test_no_fat_at_all_leaves_the_gap_as_it_is() -> None:
    made = varied("F1", "hazelnut=sunflower", Wish(fat="none"))
    assert made.left == made.gaps
    assert made.made_up is None


def test_as_much_oil_as_the_butter_had_fat_and_its_water_from_the_milk() -> None:
    made = varied("F6", "butter=sunflower oil")
    grams = masses(made)
    milk = grams["milk"] or 0.0
    assert grams["sunflower oil"] == pytest.approx(123.0 - (milk - 30) * 0.0327, abs=0.06)
    assert milk > 50
    assert made.left.water_g == pytest.approx(0, abs=0.1)


def test_an_egg_of_a_tart_becomes_its_water_and_its_fat() -> None:
    grams = masses(varied("F7", "egg=water"))
    assert grams["cold butter"] == pytest.approx(110 + 51 * 0.0951 / 0.82, abs=0.06)
    assert grams["water"] == pytest.approx((51 * 0.7615 - 5.9 * 0.154) / 0.999, abs=0.06)


def test_a_part_of_a_line_leaves_the_rest_in_its_place() -> None:
    made = varied("F1", "10 g buckwheat flour=cocoa")
    assert [line.name for line in made.formula.lines][:2] == ["buckwheat flour", "cocoa powder"]
    assert [line.mass_g for line in made.formula.lines][:2] == [40.0, 10.0]


def test_what_comes_goes_into_a_line_of_the_same_thing() -> None:
    made = varied("F2", "teff flour=white rice flour")
    assert masses(made)["white rice flour"] == 60
    assert "teff flour" not in masses(made)


def test_an_unknown_sugar_stays_unknown_and_moves_nothing() -> None:
    made = vary(
        demo("F2"), (Change(None, 0.0, find("blackcurrant puree").key, "blackcurrant", 60.0),)
    )
    assert made.gaps.sugar_g is None
    assert masses(made)["caster sugar"] == 130


def test_half_a_band_is_the_weight_of_a_gram() -> None:
    weights = weights_g(balance(demo("F1")))
    half = {"fat": 0.175 * 104, "sugar": 0.275 * 104, "starch": 0.10 * 104}
    assert weights == pytest.approx({**half, "water": 0.70 * 104 * 0.7615})


def test_a_cream_without_bands_of_percent_is_weighed_by_its_mass() -> None:
    weights = weights_g(balance(demo("C2")))
    assert weights["fat"] == pytest.approx(0.05 * 853)
    assert weights["water"] == pytest.approx(0.10 * 853)


@given(st.sampled_from(NUTS), st.sampled_from([0.1, 0.5, 1.0]))
def test_fat_closes_to_the_step_and_the_other_lines_stay(key: str, step_g: float) -> None:
    parent = demo("F1")
    made = vary(parent, (Change(4, 40.0, key, "new", 40.0),), Wish(step_g=step_g))
    if made.gaps.fat_g is not None and made.gaps.fat_g > 0:
        assert abs(fat_g(made.formula) - fat_g(parent)) <= step_g / 2 + 1e-6
    changed = {x.before.name for x in made.lines if x.before is not None and x.is_changed}
    assert changed <= {"ground hazelnuts"}
    for each in made.lines:
        if each.line is not None and each.line.ingredient == PLAIN_OIL:
            steps = (each.line.mass_g or 0.0) / step_g
            assert steps == pytest.approx(round(steps), abs=1e-6)


@given(st.sampled_from(NUTS))
def test_there_and_back_again_is_the_parent_within_a_step(key: str) -> None:
    parent = demo("F1")
    there = vary(parent, (Change(4, 40.0, key, "new", 40.0),))
    # A fatter nut has no line to take its fat from: there is nothing to bring back then.
    assume(there.gaps.fat_g is not None and there.gaps.fat_g > -0.05)
    place = next((n for n, x in enumerate(there.formula.lines) if x.ingredient == key), 4)
    back = vary(there.formula, (Change(place, 40.0, "hazelnuts", "ground hazelnuts", 40.0),))
    old = {x.ingredient: x.mass_g for x in parent.lines}
    new = {x.ingredient: x.mass_g for x in back.formula.lines}
    for ingredient_key in {*old, *new}:
        assert (new.get(ingredient_key) or 0) == pytest.approx(
            old.get(ingredient_key) or 0, abs=0.1 + 1e-9
        )


@pytest.mark.parametrize("name", ["F1", "F2", "F3", "F4", "F5", "F6", "F7", "C1", "C2", "C3"])
def test_a_thing_for_itself_changes_nothing(name: str) -> None:
    formula = demo(name)
    for at, line in enumerate(formula.lines):
        if line.ingredient is None or line.mass_g is None:
            continue
        made = vary(formula, (Change(at, line.mass_g, line.ingredient, line.name, line.mass_g),))
        assert made.formula.lines == formula.lines


@pytest.mark.parametrize("name", ["F1", "F2", "F3", "F4", "F5", "F6"])
def test_eggs_salt_and_flavours_never_move(name: str) -> None:
    formula = demo(name)
    still = {x for x in formula.lines if role_of(x) in ("egg", "salt", "flavour", "acid", "binder")}
    for swap in ("butter=oil", "milk=soya drink", "sugar=honey", "hazelnut=walnut", "oil=butter"):
        wanted = swap_wanted(formula, swap)
        if wanted.problems:
            continue
        made = vary(formula, wanted.value.changes)
        assert still <= set(made.formula.lines)
        assert lines_named(made.formula, "no such thing") == ()
