"""`krume plan`: a list a day on a narrow terminal, the list to buy, and the one JSON object."""

import re
from pathlib import Path

import icalendar
import pytest

from tests.cli.conftest import Run

TWELVE = "Order 12\nDate: Saturday 2027-06-12\nHand-over: 09:00\n\n12 T1\n"


@pytest.mark.parametrize("name", ["101", "102"])
def test_the_answer_fits_its_schema_and_holds_the_contract(run: Run, name: str) -> None:
    said = run("plan", name, "--json")
    assert said.code == 0
    result = said.json["result"]
    assert {"tasks", "last_out", "proven", "tightest"} <= set(result)
    assert {"name", "start", "end", "who", "uses"} <= set(result["tasks"][0])
    assert result["tasks"][0]["start"] == "2027-06-10T08:00:00+02:00"


@pytest.mark.parametrize("columns", [40, 80])
def test_each_day_is_a_list_that_fits(run: Run, columns: int) -> None:
    said = run("plan", "101", columns=columns)
    assert said.code == 0
    lines = said.out.splitlines()
    assert all(len(line) <= columns for line in lines)
    heads = [line for line in lines if re.fullmatch(r"\w+day 2027-06-1\d", line)]
    assert heads == ["Thursday 2027-06-10", "Friday 2027-06-11", "Saturday 2027-06-12"]
    assert "To buy" in lines
    words = " ".join(said.out.split())
    assert "8 eggs EU M" in words and "Last cake out Thu 2027-06-10 09:06." in words


def test_a_clash_says_its_ways_out_and_leaves_with_four(run: Run) -> None:
    said = run("plan", "-", typed=TWELVE)
    assert said.code == 4
    words = " ".join(said.out.split())
    assert "No answer within these limits." in words
    assert "8 of 12 fit in the fridge" in words and "Borrow 4 more places" in words
    assert "--answer 'line 5=8 T1'" in words
    assert "This would be the plan with 12 places in the fridge." in words


def test_a_start_and_a_calendar_file_are_taken(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "a.ics"
    said = run("plan", "101", "--start", "2027-06-10T09:30", "--ics", str(path), "--json")
    assert said.json["result"]["first_start"] == "2027-06-10T09:30:00+02:00"
    assert len(icalendar.Calendar.from_ical(path.read_bytes()).walk("VEVENT")) > 10


@pytest.mark.parametrize("words", [("plan",), ("plan", "101", "--start", "soon")])
def test_wrong_usage_leaves_with_two(run: Run, words: tuple[str, ...]) -> None:
    said = run(*words)
    assert said.code == 2


def test_a_question_leaves_with_three_and_shows_no_plan(run: Run) -> None:
    said = run("plan", "101", "--on", "2027-07-01")
    assert said.code == 3
    assert "had to stand ready" in said.out and "To buy" not in said.out
