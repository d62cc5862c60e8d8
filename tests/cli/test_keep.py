"""`krume keep`: the one JSON object, and the page for a person."""

import pytest

from tests.cli.conftest import Run


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART", "C1", "F1", "101", "102"])
def test_the_answer_fits_its_schema(run: Run, name: str) -> None:
    answer = run("keep", name, "--json")
    assert answer.code == 0
    assert {"cold_hours", "room_hours", "reasons", "cautions"} <= set(answer.json["result"])


def test_t1_keeps_three_to_five_days_by_its_custard(run: Run) -> None:
    result = run("keep", "T1", "--json").json["result"]
    assert (result["cold_hours"]["low"], result["cold_hours"]["high"]) == (72, 120)
    assert result["reasons"][0].startswith("C1 ")
    assert "common practice" in result["reasons"][0]


@pytest.mark.parametrize("columns", [40, 100])
def test_the_page_says_days_reasons_and_cautions_and_never_that_it_is_safe(
    run: Run, columns: int
) -> None:
    out = " ".join(run("keep", "T1", columns=columns).out.split())
    assert "3 to 5 days" in out
    assert "Cold chain" in out
    assert "licensing authority decide" in out
    assert "safe" not in out.casefold()
    assert all(len(line) <= columns for line in run("keep", "T1", columns=columns).out.splitlines())


def test_what_nobody_knows_says_so(run: Run) -> None:
    out = run("keep", "-", typed="Blue wobble\n\n100 g water\n").out
    assert "how long is not known" in out


def test_a_custard_torte_shows_how_it_cools_and_that_only_a_log_shows_it(run: Run) -> None:
    out = " ".join(run("keep", "T1", "--fridge", "4").out.split())
    assert "How C1 cools: predicted" in out
    assert "a fridge of 4 °C" in out
    assert "A prediction is no evidence" in out
    assert run("keep", "T1", "--json").json["result"]["cooling"]["verdict"] == "not-shown"


def test_a_fridge_too_warm_is_refused_with_what_to_do(run: Run) -> None:
    answer = run("keep", "T1", "--fridge", "7")
    assert answer.code == 3
    assert "never brings custard to 5 °C" in answer.out + answer.err


@pytest.mark.parametrize("columns", [40, 80])
def test_freezing_and_the_road_are_told_when_they_are_asked_for(run: Run, columns: int) -> None:
    said = run("keep", "101", "--freeze", "--outside", "30", "--heat", "0=60,1=60", columns=columns)
    out = " ".join(said.out.split())
    assert "takes freezing with some loss" in out
    assert "out of the freezer into the fridge by Friday" in out
    assert "on the road: predicted" in out
    assert "35 of 240 minutes count as warm" in out
    assert "information, no promise" in out
    assert all(len(line) <= columns for line in said.out.splitlines())


def test_all_that_was_asked_for_fits_the_schema(run: Run) -> None:
    answer = run(
        "keep", "T3", "--freeze", "--road", "40", "--packs", "500", "--box", "foam",
        "--heat", "0=20,8=85", "--ready", "18:00", "--json",
    )  # fmt: skip
    result = answer.json["result"]
    assert answer.code == 0
    assert result["freezing"][0]["takes"] == "no"
    assert result["road"][0]["verdict"] == "not-shown"
    assert {place["place"] for place in result["places"]} == {"uk", "eu"}
