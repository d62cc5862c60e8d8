"""`krume eggs`: what to buy first, the bowls, the rest, and the one JSON object."""

import pytest

from tests.cli.conftest import Run


def test_the_answer_fits_its_schema_and_holds_what_is_promised(run: Run) -> None:
    said = run("eggs", "101", "--pack", "10", "--json")
    assert said.code == 0
    result = said.json["result"]
    assert {"buy", "crack", "formulas", "left", "takers", "proven", "spread"} <= set(result)
    (buy,) = result["buy"]
    assert (buy["size"], buy["count"], buy["packs"]) == ("eu-m", 8, [{"holds": 10, "count": 1}])
    assert result["proven"] is True
    assert "common-practice" in said.json["sources"]


@pytest.mark.parametrize("columns", [40, 80])
def test_what_to_buy_comes_first_and_every_line_fits(run: Run, columns: int) -> None:
    said = run("eggs", "101", "102", "--have", "10 EU M", "--shop", "EU L", columns=columns)
    assert said.code == 0
    assert max(len(line) for line in said.out.splitlines()) <= columns
    words = " ".join(said.out.split())
    assert words.index("Buy 10 EU L.") < words.index("Into the bowls") < words.index("Left over")
    assert "F4, Fri 11" in words and "4 EU L, 240 g" in words


def test_a_formula_twelve_times(run: Run) -> None:
    words = " ".join(run("eggs", "F1*12", "--pack", "6", "--pack", "10").out.split())
    assert "Buy 60 EU M: 6 packs of 10." in words
    assert "12 × 5 EU M, 255 g" in words


def test_the_left_over_and_who_takes_it_are_said(run: Run) -> None:
    words = " ".join(run("eggs", "T1*12").out.split())
    assert "30 whites, EU M, 1 005 g: 4 days cold from breaking." in words
    said = "C5 can take 600 g white of it, heated to 71 °C, in place of pasteurised."
    assert f"{said} Then 405 g white left." in words
    assert "buy 600 g, or in its place 600 g of the left-over white, heated to 71 °C" in words
    assert "Raw egg: not for the pregnant" in words


def test_a_text_on_standard_input_is_counted(run: Run) -> None:
    typed = "Sponge\n\n5 eggs, EU M\n100 g caster sugar\n100 g potato starch\n"
    assert "Buy 5 EU M." in run("eggs", "-", typed=typed).out


def test_too_few_eggs_leave_with_four_and_unread_ones_with_three(run: Run) -> None:
    short = run("eggs", "101", "--have", "3 EU M", "--shop", "none")
    assert short.code == 4 and "--answer '--shop=EU M'" in short.out
    unread = run("eggs", "101", "--have", "a few", "--json")
    assert unread.code == 3
    assert [p["code"] for p in unread.json["problems"]] == ["eggs-unread"]


@pytest.mark.parametrize("words", [(), ("101", "--pack", "0"), ("101", "--tolerance", "-1")])
def test_wrong_usage_leaves_with_two(run: Run, words: tuple[str, ...]) -> None:
    assert run("eggs", *words).code == 2


def test_a_cream_without_eggs_says_so(run: Run) -> None:
    assert "No egg is wanted." in run("eggs", "C2").out


def test_eggs_in_the_house_that_do_leave_nothing_to_buy(run: Run) -> None:
    assert "Nothing to buy" in run("eggs", "F1", "--have", "12 EU M").out
