"""The ingredient list: by mass at mixing, allergens standing out, shares of what the name says."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.label import (
    contains_line,
    kitchen_line,
    may_contain_line,
    share_text,
    statement,
)
from tests.label.studio import lots, of, product

ALL = "F1 F2 F3 F4 F5 F6 F7 C1 C2 C3 C4 C5 S1 T1 T2 T3 TART".split()


@pytest.mark.parametrize("market", ["us", "eu"])
@pytest.mark.parametrize("name", ALL)
def test_the_list_goes_down_by_mass_at_mixing(name: str, market: str) -> None:
    masses = [item.mass_g for item in statement(product(name), lots(), market=market).items]
    known = [mass for mass in masses if mass is not None]
    assert len(known) == len(masses)
    assert known == sorted(known, reverse=True)


@pytest.mark.parametrize(
    ("name", "us", "eu"),
    [
        ("T1", "egg;milk;tree nut (hazelnut)", "egg;milk;nuts (hazelnut)"),
        ("T2", "egg;milk", "egg;milk"),
        ("T3", "egg;milk;tree nut (walnut)", "egg;milk;nuts (walnut)"),
        ("TART", "egg;milk;soybean", "egg;milk;soybean"),
    ],
)
def test_what_each_torte_contains_is_declared_in_the_words_of_the_market(
    name: str, us: str, eu: str
) -> None:
    assert statement(product(name), lots(), market="us").contains == tuple(us.split(";"))
    assert statement(product(name), lots(), market="eu").contains == tuple(eu.split(";"))


def test_in_the_eu_each_allergen_stands_in_capitals_and_in_brackets_where_unnamed() -> None:
    text = statement(product("T1"), lots(), market="eu").text
    for words in ("EGG", "whole MILK", "butter (MILK)", "whipping cream (MILK)", "HAZELNUTS"):
        assert words in text


def test_in_the_us_no_word_stands_in_capitals() -> None:
    assert not re.search(r"[A-Z]{2}", statement(product("T1"), lots(), market="us").text)


def test_the_gelatine_says_its_animal() -> None:
    assert "gelatine (beef)" in statement(product("T3"), lots(), market="eu").text


def test_traces_come_from_the_lots() -> None:
    assert may_contain_line(statement(product("TART"), lots(), market="us")) == (
        "May contain: tree nuts"
    )
    assert may_contain_line(statement(product("T3"), lots(), market="us")) == ""


def test_the_us_line_of_allergens() -> None:
    found = statement(product("T1"), lots(), market="us")
    assert contains_line(found) == "Contains: egg, milk, tree nut (hazelnut)"


@pytest.mark.parametrize(
    ("name", "goods"),
    [("T1", {"hazelnuts"}), ("T2", {"lemon juice", "lemon zest"}), ("T3", set()),
     ("TART", {"buckwheat flour"}), ("F5", {"orange juice", "orange zest"}), ("F4", {"walnuts"}),
     ("F6", {"butter"})],
)  # fmt: skip
def test_a_share_is_printed_of_what_the_name_speaks_of(name: str, goods: set[str]) -> None:
    items = statement(product(name), lots(), market="eu").items
    assert {item.name for item in items if item.quid_pct is not None} == goods


def test_the_share_is_of_the_finished_cake() -> None:
    item = next(i for i in statement(product("F4"), lots(), market="eu").items if i.quid_pct)
    assert item.quid_pct == pytest.approx(100 * 115 / 465)
    assert "WALNUTS (25 %)" in statement(product("F4"), lots(), market="eu").text


def test_above_the_finished_mass_grams_are_said_instead() -> None:
    text = "Lemon loaf\nFamily: butter\nTin: round 20 x 5 cm\nBaked: 10 mm high, 100 g\n\n"
    made = of(text + "150 g lemon juice\n50 g potato starch\n")
    assert "150 g per 100 g" in statement(made, (), market="eu").text


def test_without_a_baked_mass_the_share_is_not_known_and_closes_the_label() -> None:
    made = of("Lemon loaf\nFamily: butter\nOven: 170 C\n\n50 g lemon juice\n50 g potato starch\n")
    unknown = statement(made, (), market="eu").unknown
    assert [u.closes for u in unknown] == ["label"]
    assert "Baked:" in unknown[0].opens


@pytest.mark.parametrize(
    ("share", "text"),
    [(25.0, "25 %"), (24.5, "25 %"), (5.0, "5 %"), (4.74, "4.5 %"), (0.75, "1 %")],
)
def test_a_share_is_rounded_once_and_halves_go_up(share: float, text: str) -> None:
    assert share_text(share) == text


@pytest.mark.parametrize("name", ALL)
def test_behind_the_us_clause_stand_only_small_amounts(name: str) -> None:
    found = statement(product(name), lots(), market="us")
    if "contains 2 % or less of" not in found.text:
        return
    behind = found.text.split("contains 2 % or less of: ")[1]
    for item in found.items:
        assert item.share_pct is not None
        is_behind = behind == item.text or f"{item.text}," in behind or behind.endswith(item.text)
        assert is_behind is (item.share_pct <= 2.0), item.name


def test_the_kitchens_other_nuts_are_told_and_no_freedom_from_nuts() -> None:
    found = statement(product("T2"), lots(), market="eu")
    line = kitchen_line(found, {"nuts (walnut)": "F4", "nuts (hazelnut)": "F1"})
    assert line == "Made where nuts are used: hazelnut, walnut."
    assert kitchen_line(found, {}) == ""


def test_the_nut_that_is_in_it_is_not_told_twice() -> None:
    found = statement(product("T1"), lots(), market="eu")
    assert kitchen_line(found, {"nuts (hazelnut)": "F1"}) == ""


@given(st.sampled_from(["zorb powder", "praline paste", "baking powder", "marzipan", "jam"]))
def test_adding_goods_that_are_not_known_never_opens_a_label(words: str) -> None:
    text = "Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n"
    assert statement(of(text), (), market="eu").unknown == ()
    assert statement(of(f"{text}5 g {words}\n"), (), market="eu").unknown != ()


def test_goods_without_grams_close_the_label() -> None:
    made = of("Cream\n\n200 g whipping cream\nsugar to taste\n")
    assert "its mass" in [u.what for u in statement(made, (), market="eu").unknown]
