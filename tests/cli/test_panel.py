"""A nutrition panel on a terminal: columns side by side, narrow ones below each other."""

import pytest

from tests.cli.conftest import Run


def test_columns_stand_side_by_side_where_there_is_room(run: Run) -> None:
    out = run("label", "T1", "--market", "eu", columns=80).out
    head = next(line for line in out.splitlines() if "per 100 g" in line)
    assert "per portion" in head
    assert "of which saturates" in out


def test_columns_stand_below_each_other_on_a_narrow_page(run: Run) -> None:
    out = run("label", "T1", "--market", "eu", columns=40).out
    assert out.index("Nutrition, per 100 g") < out.index("Nutrition, per portion of")
    assert max(len(line) for line in out.splitlines() if "/" not in line) <= 40


def test_a_us_panel_with_two_columns_keeps_the_serving_in_its_head(run: Run) -> None:
    out = run("label", "T1", "--market", "us", "--per-100-g", columns=80).out
    assert "Nutrition, 15 servings per container, serving size 1/15 cake" in out
    assert "per serving" in out
    assert "per 100 g" in out


def test_the_slices_line_and_its_caution_stand_on_the_page(run: Run) -> None:
    out = " ".join(run("label", "T1", "--market", "eu").out.split())
    assert "Carbohydrate in 1 of 12 slices" in out
    assert "no dose of insulin rests on it" in out


def test_of_a_cake_without_slices_the_page_says_how_to_ask(run: Run) -> None:
    assert "--slices" in run("label", "F1", "--market", "eu").out
    assert "1 of 8 slices" in run("label", "F1", "--market", "eu", "--slices", "8").out


def test_a_spread_is_shown_where_it_is_asked_for(run: Run) -> None:
    assert "As lots of the goods differ" not in run("label", "T1", "--market", "eu").out
    assert "As lots of the goods differ" in run("label", "T1", "--market", "eu", "--spread").out


@pytest.mark.parametrize("slices", ["0", "-4", "401"])
def test_slices_that_cannot_be_are_refused_in_one_sentence(run: Run, slices: str) -> None:
    done = run("label", "T1", "--slices", slices)
    assert done.code != 0
    assert "Type 1 to 400" in done.out + done.err


@pytest.mark.parametrize("market", ["us", "eu"])
def test_the_answer_with_all_that_may_be_asked_fits_its_schema(run: Run, market: str) -> None:
    options = ("--spread", "--per-100-g", "--by-slice", "--slices", "10", "--json")
    answer = run("label", "T1", "--market", market, *options)
    assert answer.code == 0
    rows = answer.json["result"]["nutrition"]["panel"]["rows"]
    assert all(set(row["spread"]) == {"low", "best", "high"} for row in rows)
    slices = answer.json["result"]["nutrition"]["carbohydrate"]["slices"]
    assert [each["count"] for each in slices] == [10]
