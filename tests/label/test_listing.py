"""The lines of a list: order, shares, the clause, and a part's own list."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.label import ListStyle, Product, ProductPart, statement
from krume.label.listing import CLAUSE, Scope, additive_in, items_of, list_text
from krume.label.listing import ListStyle as Style
from krume.label.market_rules import market_rule
from krume.label.parts import opened
from krume.label.product import Used
from krume.pantry import MARKETS
from tests.label.studio import lots, of, product

BY_PART = ListStyle(by_part=True)
TORTES = ("T1", "T2", "T3", "TART")


def goods(name: str, key: str | None, grams: float, role: str = "") -> Used:
    return Used(name, key, name, role, grams, ("F",))


@pytest.mark.parametrize("market", MARKETS)
@pytest.mark.parametrize("name", TORTES)
def test_every_market_lists_every_ingredient_once_the_heaviest_first(
    name: str, market: str
) -> None:
    items = statement(product(name), lots(), market=market).items
    masses = [item.mass_g or 0.0 for item in items]
    assert masses == sorted(masses, reverse=True)
    assert len({item.text for item in items}) == len(items)


@pytest.mark.parametrize("market", MARKETS)
@pytest.mark.parametrize("name", TORTES)
def test_lists_of_parts_hold_the_same_goods_as_the_one_list(name: str, market: str) -> None:
    found = statement(product(name), lots(), market=market, style=BY_PART)
    assert found.contains == statement(product(name), lots(), market=market).contains
    assert len(found.parts) == len(product(name).parts)
    for item in found.items:
        held = {part.name for part in found.parts if item.text in part.text}
        assert held & set(item.of), item.text
    masses = [part.mass_g or 0.0 for part in found.parts]
    assert masses == sorted(masses, reverse=True)


def test_the_parts_of_a_torte_stand_by_what_they_weigh_in_it() -> None:
    found = statement(product("T1"), lots(), market="eu", style=BY_PART)
    assert [part.name for part in found.parts] == ["C1", "F1", "C5", "S1"]
    assert found.text.startswith("Vanilla custard cream (whole MILK, ")
    assert "; Lemon syrup (sugar, water, lemon juice)" in found.text


def test_the_clause_of_small_amounts_never_stands_inside_a_part() -> None:
    found = statement(product("T1"), lots(), market="us", style=BY_PART)
    assert CLAUSE not in found.text
    assert CLAUSE in statement(product("T1"), lots(), market="us").text


def test_equal_grams_stand_by_name_whatever_sums_they_come_from() -> None:
    parts = statement(product("T2"), lots(), market="eu", style=BY_PART).parts
    syrup = next(part for part in parts if part.name == "S1")
    assert syrup.text.startswith("sugar, water, lemon juice")


def test_goods_that_stand_in_a_torte_by_themselves_are_listed_without_brackets() -> None:
    nut = Used("hazelnuts", "hazelnuts", "hazelnuts", "nut", 30.0, ("hazelnuts",))
    sugar = Used("sugar", "sugar-granulated", "sugar", "sugar", 70.0, ("S",))
    parts = (
        ProductPart("hazelnuts", "hazelnuts", (nut,), 30.0),
        ProductPart("S", "Syrup", (sugar,), 70.0),
    )
    made = Product("Torte", "torte", (sugar, nut), 100.0, "assumed", {}, parts=parts)
    assert statement(made, (), market="eu", style=BY_PART).text == "Syrup (sugar); HAZELNUTS"


def test_a_formula_alone_has_one_list_whatever_is_wished() -> None:
    one = statement(product("F1"), lots(), market="eu")
    assert statement(product("F1"), lots(), market="eu", style=BY_PART).text == one.text


def test_a_share_is_of_the_whole_torte_in_either_setting() -> None:
    for style in (ListStyle(), BY_PART):
        text = statement(product("T1"), lots(), market="eu", style=style).text
        assert "HAZELNUTS (2.5 %)" in text
    assert "2.5 %" not in statement(product("T1"), lots(), market="us").text


@pytest.mark.parametrize(("share", "is_behind"), [(2.0, True), (2.01, False)])
def test_exactly_two_percent_may_stand_behind_the_clause(share: float, is_behind: bool) -> None:
    found = [
        opened(goods("sugar", "sugar-granulated", 100 - share), ()),
        opened(goods("salt", "salt", share), ()),
    ]
    rule = market_rule("us")
    items = items_of(found, Scope("Cake", 100.0, 90.0, None), rule, Style())
    assert (f"{CLAUSE}: salt" in list_text(items, rule)) is is_behind


@given(st.lists(st.integers(1, 10**7), min_size=2, max_size=6, unique=True))
def test_the_list_goes_down_whatever_the_grams(milligrams: list[int]) -> None:
    grams = [each / 1000 for each in milligrams]
    keys = ("sugar-granulated", "salt", "flour-rice-white", "starch-corn", "honey", "xanthan-gum")
    found = [opened(goods(k, k, g), ()) for k, g in zip(keys, grams, strict=False)]
    total = sum(grams)
    items = items_of(found, Scope("Cake", total, total, None), market_rule("eu"), Style())
    assert [item.mass_g for item in items] == sorted(grams, reverse=True)


@given(st.sampled_from(["<b>sugar</b>", "=1+1", "@cmd", "a\tb", "x; y, z (q", "‮nut"]))
def test_a_name_of_any_signs_is_kept_as_it_was_typed(name: str) -> None:
    found = [opened(goods(name, None, 5.0), ())]
    items = items_of(found, Scope("Cake", 5.0, 5.0, None), market_rule("eu"), Style())
    assert items[0].name == name
    assert list_text(items, market_rule("eu")).startswith(name)


def test_goods_that_are_an_additive_by_name_alone_have_their_class() -> None:
    found = additive_in(goods("gold leaf", None, 0.1))
    assert found is not None
    assert found.number == "E175"
    assert additive_in(goods("sugar", "sugar-granulated", 1.0)) is None


def test_what_two_lines_call_by_one_name_stands_in_one_place() -> None:
    made = of("Cream\nFamily: set-cream\n\n100 g sugar\n50 g caster sugar\n100 g butter\n")
    text = statement(made, (), market="eu").text
    assert len(re.findall("sugar", text)) == 1
