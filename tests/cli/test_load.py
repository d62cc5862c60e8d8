"""`krume load`: minutes of each with the others in, and the exit codes."""

from tests.cli.conftest import Run


def test_the_answer_holds_each_load_alone_and_together(run: Run) -> None:
    said = run("load", "F3", "F3 @5", "--json")
    assert said.code == 0
    result = said.json["result"]
    assert (result["tins"], result["last"], result["oven_c"]) == (2, 2, 190)
    for load in result["loads"]:
        assert load["minutes"]["low"] >= load["alone_min"]["low"]
        assert load["check_from_min"] == load["minutes"]["low"]
        assert load["later_min"] > 0
        assert load["heat_pct"] > 0
    assert [load["in_min"] for load in result["loads"]] == [0, 5]
    assert result["oven_kwh"] > 0


def test_the_page_says_who_is_last_first(run: Run) -> None:
    lines = run("load", "2 F3").out.splitlines()
    assert lines[0].startswith("2 tins in one oven: F3 comes out last, likely at ")
    assert lines[1] == "Oven 190 °C, no fan."
    assert any(line.startswith("1. 2 x F3, ") for line in lines)
    assert any("Start checking at " in line and "alone " in line for line in lines)


def test_a_weak_oven_and_a_wide_gap_are_taken_from_the_options(run: Run) -> None:
    plain = run("load", "2 F3", "--json").json["result"]["loads"][0]
    apart = run("load", "2 F3", "--gap", "10", "--json").json["result"]["loads"][0]
    assert apart["heat_pct"] < plain["heat_pct"]
    weak = run("load", "2 F3", "--power", "600", "--json")
    assert weak.json["result"]["loads"][0]["air_c"] > plain["air_c"] + 5
    assert "oven-weak" in [notice["code"] for notice in weak.json["notices"]]


def test_too_many_tins_is_four_and_no_load_is_three(run: Run) -> None:
    full = run("load", "3 F3")
    assert full.code == 4
    assert "3 tins would be in at once, and this oven takes 2" in full.out
    assert run("load", "F3 @x").code == 3
    assert run("load").code == 2
    assert run("load", "C1").code == 4
