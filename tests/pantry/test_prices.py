"""A price serves a line by the ingredient it means, then by its words; eggs go by size."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.evidence import packed_text
from krume.pantry import (
    PriceList,
    egg_price,
    find,
    is_shell_egg,
    old_prices,
    price_of,
    read_prices,
)

HEAD = "item,price,per\n"
DEMO = packed_text("demo/prices.csv")


def listed(*rows: str) -> PriceList:
    read = read_prices(HEAD + "".join(f"{row}\n" for row in rows), eggs_region="eu")
    assert read.problems == ()
    return read.value


def asked(*rows: str) -> list[tuple[str, str]]:
    read = read_prices(HEAD + "".join(f"{row}\n" for row in rows))
    return [(problem.code, problem.where) for problem in read.problems]


def served(prices: PriceList, name: str) -> str | None:
    found = price_of(prices, name, find(name).key)
    return None if found is None else found.price.item


def test_every_price_of_the_demo_is_read() -> None:
    read = read_prices(DEMO, eggs_region="eu")
    assert (len(read.value.prices), read.problems, read.notices) == (37, (), ())
    assert read.value.currency == ""


@pytest.mark.parametrize(
    ("name", "item"),
    [
        ("milk", "whole milk"),
        ("butter, soft", "butter"),
        ("cold butter", "butter"),
        ("whipping cream", "whipping cream, 35 % fat"),
        ("powdered gelatine", "powdered gelatine, 200 bloom"),
        ("dark chocolate", "dark chocolate, 60 %"),
        ("ground hazelnuts, toasted", "ground hazelnuts"),
        ("lemon zest", "lemon zest"),
        ("orange zest", "orange zest"),
        ("egg white, pasteurised", "pasteurised egg white"),
        ("icing sugar", "icing sugar"),
        ("teff", "teff flour"),
        ("almonds", None),
        ("unheard-of powder", None),
    ],
)
def test_a_line_finds_its_price(name: str, item: str | None) -> None:
    assert served(read_prices(DEMO).value, name) == item


def test_a_price_under_another_name_is_told_apart_from_the_same_name() -> None:
    prices = listed("whole milk,1.20,kg", "butter,9.20,kg")
    milk = price_of(prices, "milk", find("milk").key)
    butter = price_of(prices, "cold butter", find("cold butter").key)
    assert milk is not None
    assert not milk.is_same_name
    assert butter is not None
    assert butter.is_same_name


def test_of_two_prices_for_one_good_the_very_name_serves() -> None:
    prices = listed("granulated sugar,1.10,kg", "caster sugar,1.40,kg")
    found = price_of(prices, "caster sugar", find("caster sugar").key)
    assert found is not None
    assert (found.price.item, found.others) == ("caster sugar", ())


def test_two_prices_that_fit_equally_are_both_given() -> None:
    prices = listed("granulated sugar,1.10,kg", "caster sugar,1.40,kg")
    found = price_of(prices, "superfine sugar", find("caster sugar").key)
    assert found is not None
    assert [price.item for price in (found.price, *found.others)] == [
        *("granulated sugar", "caster sugar")
    ]


def test_a_price_of_what_the_pantry_does_not_know_serves_the_same_words_only() -> None:
    read = read_prices(HEAD + "fonio flour,8.00,kg\n")
    assert [notice.code for notice in read.notices] == ["price-by-words"]
    assert price_of(read.value, "fonio flour", None) is not None
    assert price_of(read.value, "fonio", None) is None


def test_eggs_are_priced_by_size_and_serve_no_other_size() -> None:
    prices = listed('"eggs, EU M",0.32,each', '"EU L eggs",0.38,each')
    assert [str(p.amount) for size in ("eu-m", "eu-l") if (p := egg_price(prices, size))] == [
        *("0.32", "0.38")
    ]
    assert egg_price(prices, "us-large") is None
    assert price_of(prices, "eggs", find("eggs").key) is None


def test_fresh_eggs_and_their_parts_are_shell_eggs_and_what_comes_in_a_carton_is_not() -> None:
    words = ("eggs", "egg yolks", "egg whites", "pasteurised egg white", "butter", "duck egg")
    assert [is_shell_egg(find(word).key) for word in words] == [True] * 3 + [False] * 3
    assert not is_shell_egg(None)


@pytest.mark.parametrize(
    ("rows", "found"),
    [
        (("buckweat flour,4,kg",), ("price-name-open", "prices.csv line 2")),
        (("rice flour,4,kg",), ("price-name-open", "prices.csv line 2")),
        (("eggs,0.30,each",), ("price-egg-size", "prices.csv line 2")),
        (("butter,9,kg", "Butter,8,kg"), ("price-twice", "prices.csv line 3")),
        (("butter,9,kg", "butter,9,kg"), ("price-twice", "prices.csv line 3")),
        (("butter,€9,kg", "milk,£1,kg"), ("currency-mixed", "prices.csv line 3")),
        (('"eggs, EU M",0.3,each', '"EU M eggs",0.4,each'), ("price-twice", "prices.csv line 3")),
    ],
)
def test_what_cannot_be_settled_is_asked(rows: tuple[str, ...], found: tuple[str, str]) -> None:
    assert asked(*rows) == [found]


def test_a_name_that_stands_twice_has_no_price_until_it_is_settled() -> None:
    read = read_prices(HEAD + "butter,9,kg\nbutter,8,kg\nmilk,1,kg\n")
    assert [price.item for price in read.value.prices] == ["milk"]


def test_mixed_currencies_leave_no_price_at_all() -> None:
    assert read_prices(HEAD + "butter,€9,kg\nmilk,£1,kg\n").value.prices == ()
    assert read_prices(HEAD + "butter,€9,kg\nmilk,1,kg\n").value.currency == "EUR"


@pytest.mark.parametrize("row", ["buckweat flour,4,kg", "rice flour,4,kg", "eggs,0.30,each"])
def test_every_option_of_a_question_settles_it(row: str) -> None:
    (problem,) = read_prices(f"{HEAD}{row}\n").problems
    assert problem.options
    for option in problem.options:
        assert read_prices(f"{HEAD}{option.line}\n").problems == ()


def test_a_thing_that_is_no_ingredient_is_never_asked_by_its_spelling() -> None:
    assert asked("box and board,2.40,each", "labels,0.06,each", "electricity,0.34,kWh") == []


def test_only_a_price_with_a_date_grows_old() -> None:
    text = "item,price,per,date\nbutter,9,kg,2026-01-01\nmilk,1,kg,2027-06-01\nsalt,1,kg,\n"
    prices = read_prices(text).value.prices
    today = date(2027, 6, 10)
    assert [price.item for price in old_prices(prices, today, 180)] == ["butter"]
    assert old_prices(prices, date(2026, 6, 30), 180) == ()
    assert [p.item for p in old_prices(prices, date(2026, 7, 1), 180)] == ["butter"]


@given(st.text(max_size=200))
def test_no_list_stops_the_reader(text: str) -> None:
    assert isinstance(read_prices(HEAD + text).value, PriceList)
