"""`krume fridge`: the one JSON object, and the page for a person in a cold sweat."""

import pytest

from tests.cli.conftest import Run


def test_the_answer_fits_its_schema(run: Run) -> None:
    answer = run("fridge", "T1", "--since", "22:30", "--json")
    assert answer.code == 0
    result = answer.json["result"]
    assert result["verdict"] == "discard"
    assert result["hours"] == 9.5
    assert [order["name"] for order in result["orders"]] == ["101"]


@pytest.mark.parametrize("columns", [40, 80])
def test_the_page_says_first_what_is_thrown_away_then_which_order_stops(
    run: Run, columns: int
) -> None:
    out = run("fridge", "T1", "--since", "22:30", columns=columns).out
    flat = " ".join(out.split())
    assert flat.index("DISCARD T1 Orl hazel torte") < flat.index("Order 101")
    assert "begin by Friday" in flat
    assert "the local authority in England" in flat
    assert all(len(line) <= columns for line in out.splitlines())


def test_without_evidence_it_asks_and_keeps_nothing(run: Run) -> None:
    answer = run("fridge", "C2")
    assert answer.code == 3
    assert "Since when was it off?" in " ".join(answer.out.split())
    assert "NOT SHOWN" in answer.out


def test_a_reading_in_the_food_keeps_it(run: Run) -> None:
    said = run("fridge", "T1", "--since", "22:30", "--food", "5", "--json").json["result"]
    assert said["verdict"] == "keep"


def test_a_moment_that_is_none_is_refused_with_how_to_type_one(run: Run) -> None:
    answer = run("fridge", "T1", "--since", "soon")
    assert answer.code == 3
    assert "2027-06-09 22:30" in answer.out + answer.err


@pytest.mark.parametrize("reading", ["41F", "5,0", "5 °C"])
def test_a_reading_is_typed_as_the_thermometer_shows_it(run: Run, reading: str) -> None:
    said = run("fridge", "T1", "--since", "22:30", "--food", reading, "--json").json["result"]
    assert said["product_c"] == pytest.approx(5)
    refused = run("fridge", "T1", "--food", "warm")
    assert refused.code == 2
    assert "no temperature" in refused.err
