"""From words to changes: which line, what comes, and every question with its words."""

import pytest

from krume.design import read
from krume.design.varying import (
    added_wanted,
    avoided,
    cut_wanted,
    diet_wanted,
    diet_wish,
    diet_wishes,
    given_twice,
    swap_wanted,
    together,
)
from krume.design.varying.matching import lines_named, said_of
from krume.design.varying.rules import (
    carrier_of,
    cocoa_rules,
    diet_swap,
    rule_of,
    swap_rules,
    unknowns_of,
)
from krume.pantry import ROLES, ingredients
from tests.design.varying.studio import demo

COVERS = ["matching", "diets", "rules"]

# formula, option, what was typed, the question's code, and words that must be in it
BAD = (
    ("F1", "swap", "hazelnut", "swap-unread", "A=B"),
    ("F1", "swap", "=walnut", "swap-unread", "A=B"),
    ("F1", "swap", "hazelnut=", "swap-unread", "A=B"),
    ("F1", "swap", "walnut=pecans", "no-such-line", "Its lines: buckwheat flour, white rice"),
    ("F1", "swap", "rice flour=teff", "which-line", "white rice flour, sweet rice flour"),
    ("F1", "swap", "hazelnut=oat drink", "composition-unknown", "supplier"),
    ("F1", "swap", "hazelnut=psyllium", "composition-unknown", "psyllium"),
    ("F1", "swap", "hazelnut=xylitol", "what-comes", "xylitol"),
    ("F1", "swap", "hazelnut=flurble", "what-comes", "flurble"),
    ("F1", "swap", "hazelnut=potato flour", "what-comes", "potato"),
    ("F1", "swap", "hazelnut=plant milk", "what-comes", "plant drink"),
    ("F1", "swap", "hazelnut=0 g walnuts", "what-comes", "grams"),
    ("F1", "swap", "hazelnut=99999999 g walnuts", "what-comes", "grams"),
    ("F1", "swap", "41 g hazelnut=walnuts", "too-much", "has 40 g"),
    ("F1", "swap", "0 g hazelnut=walnuts", "too-much", "has 40 g"),
    ("F1", "swap", "hazelnut=eggs", "egg-comes", "whole"),
    ("F3", "swap", "xanthan=walnuts", "composition-unknown", "xanthan"),
    ("F1", "cut", "sugar", "cut-unread", "sugar 20 %"),
    ("F1", "cut", "sugar 101 %", "too-much", "has 135 g"),
    ("F1", "cut", "sugar -136 g", "too-much", "has 135 g"),
    ("F1", "cut", "honey 10 %", "no-such-line", "Its lines"),
    ("F1", "add", "apple puree", "add-unread", "60 g apple puree"),
    ("F1", "add", "60 g eggs", "egg-comes", "whole"),
    ("F1", "add", "0 g apple puree", "what-comes", "grams"),
    ("F1", "add", "60 g flurble", "what-comes", "flurble"),
)
WAYS = {"swap": swap_wanted, "cut": cut_wanted, "add": added_wanted}


@pytest.mark.parametrize(("name", "way", "typed", "code", "words"), BAD)
def test_what_cannot_be_taken_is_asked_in_words(
    name: str, way: str, typed: str, code: str, words: str
) -> None:
    found = WAYS[way](demo(name), typed)
    (problem,) = found.problems
    assert problem.code == code
    assert words in problem.ask
    assert found.value.changes == ()


@pytest.mark.parametrize("typed", [bad[2] for bad in BAD if bad[1] == "swap"])
def test_every_option_of_a_swap_asks_less_than_before(typed: str) -> None:
    formula = demo("F3" if "xanthan" in typed else "F1")
    for option in swap_wanted(formula, typed).problems[0].options:
        again = swap_wanted(formula, option.line).problems
        assert [p.code for p in again] != [p.code for p in swap_wanted(formula, typed).problems]


@pytest.mark.parametrize(
    ("words", "place"),
    [("hazelnut", 4), ("ground hazelnuts", 4), ("40 g ground hazelnuts, toasted", 4), ("nuts", 4),
     ("buckwheat", 0), ("sugar", 6), ("salt", 7), ("sweet rice", 3), ("eggs", 5), ("egg", 5)],
)  # fmt: skip
def test_a_line_is_found_the_way_a_person_calls_it(words: str, place: int) -> None:
    assert lines_named(demo("F1"), words) == (place,)


@pytest.mark.parametrize(
    ("words", "grams", "percent", "name"),
    [("10 g rice flour", 10, None, "rice flour"), ("sugar -25 g", 25, None, "sugar"),
     ("0,5 kg sugar", 500, None, "sugar"), ("sugar 20 %", None, 20, "sugar"),
     ("20% of sugar", None, 20, "sugar"), ("sugar", None, None, "sugar")],
)  # fmt: skip
def test_an_amount_is_split_off_a_name(
    words: str, grams: float | None, percent: float | None, name: str
) -> None:
    said = said_of(words)
    assert (said.mass_g, said.share_pct, said.name) == (grams, percent, name)


def test_what_stands_in_for_a_ground_nut_is_ground_too() -> None:
    assert swap_wanted(demo("F1"), "hazelnut=pecans").value.changes[0].name == "ground pecans"
    assert swap_wanted(demo("F1"), "hazelnut=tahini").value.changes[0].name == "tahini"


def test_a_line_given_away_twice_is_asked() -> None:
    formula = demo("F1")
    swaps = ("30 g hazelnut=walnuts", "20 g hazelnut=pecans")
    wanted = together(swap_wanted(formula, swap) for swap in swaps)
    (problem,) = given_twice(formula, wanted.value, "--swap")
    assert "50 g" in problem.ask and "40 g" in problem.ask


@pytest.mark.parametrize("name", ["F1", "F2", "F3", "F4", "F5", "F6", "C1", "C5"])
def test_eggs_that_carry_are_a_limit_and_no_swap(name: str) -> None:
    formula = demo(name)
    eggs = [line for line in formula.lines if line.basis == "egg" or "white" in line.name]
    eggs = [line for line in eggs if line.ingredient and line.ingredient.startswith("egg")]
    for line in eggs:
        wanted = swap_wanted(formula, f"{line.name}=apple puree").value
        assert wanted.changes == ()
        assert "no swap here is known" in wanted.limits[0].text
    limits = diet_wanted(formula, diet_wish("egg-free")).value.limits  # type: ignore[arg-type]
    assert {limit.line for limit in limits} == set(eggs)


def test_no_egg_is_cut() -> None:
    wanted = cut_wanted(demo("F1"), "eggs 20 %").value
    assert wanted.changes == () and len(wanted.limits) == 1


def test_a_tart_can_do_without_its_egg() -> None:
    wish = diet_wish("egg-free")
    assert wish is not None
    assert diet_wanted(demo("F7"), wish).value.texts == ("egg = water",)


@pytest.mark.parametrize(
    ("name", "wish", "texts", "limits"),
    [
        ("F6", "dairy-free", ("butter = sunflower oil", "milk = rice drink"), 0),
        ("F4", "without nuts", ("ground walnuts = ground sunflower kernels",), 0),
        ("C2", "vegan", (), 3),
        ("C1", "vegetarian", (), 1),
        ("F1", "dairy-free", (), 0),
    ],
)
def test_a_diet_swaps_what_it_can_and_names_the_rest(
    name: str, wish: str, texts: tuple[str, ...], limits: int
) -> None:
    known = diet_wish(wish)
    assert known is not None
    found = diet_wanted(demo(name), known)
    assert found.value.texts == texts
    assert len(found.value.limits) == limits


def test_a_line_of_which_only_the_supplier_knows_is_told_and_not_taken_for_free_of_it() -> None:
    line = read("A\n\n40 g dark chocolate, 60 %\n10 g flurble\n").value.lines
    assert avoided(line[0], ("milk",)) is None
    assert avoided(line[1], ("milk",)) is None
    wish = diet_wish("no milk")
    assert wish is not None
    codes = [notice.code for notice in diet_wanted(demo("C3"), wish).notices]
    assert "diet-unknown" in codes


def test_every_pair_of_roles_has_a_rule() -> None:
    for one in ROLES:
        assert rule_of(one, "none").key in ("cut", "sugar-cut")
        assert rule_of("none", one).key in ("added", "fruit-added")
        for other in ROLES:
            assert rule_of(one, other) in swap_rules()


def test_every_diet_has_an_answer_for_every_row_of_the_pantry() -> None:
    for wish in diet_wishes():
        for word in wish.avoids:
            for item in ingredients():
                assert diet_swap(word, f"{item.role}:{item.key}").text


def test_green_is_said_only_where_there_is_soda() -> None:
    told = unknowns_of("nut:hazelnuts", "nut:sunflower-kernels-dried", frozenset({"soda"}))
    bare = unknowns_of("nut:hazelnuts", "nut:sunflower-kernels-dried", frozenset({"foam"}))
    assert any("green" in text for text in told)
    assert not any("green" in text for text in bare)


def test_both_rules_for_cocoa_are_there_and_differ() -> None:
    one, other = cocoa_rules()
    assert (one.liquid_per_g, one.sugar_per_g) == (0, 0)
    assert other.liquid_per_g > 0 and other.sugar_per_g > 0


def test_eggs_only_bind_in_a_tart() -> None:
    assert {carrier_of(f).kind for f in ("separated", "roulade", "angel", None)} == {"foam"}
    assert carrier_of("butter").kind == "set"
    assert carrier_of("tart").kind == "bind"
