"""`krume check`: strips for a person, figures for a program."""

from collections.abc import Callable

import pytest

from tests.cli.conftest import Run

STARCHY = (
    "Starchy\nFamily: separated\n\n20 g white rice flour\n80 g potato starch\n"
    "5 eggs, EU M\n130 g caster sugar\n"
)


@pytest.mark.parametrize("columns", [40, 80, 120])
def test_each_band_is_a_strip_with_the_value_on_it(run: Run, columns: int) -> None:
    said = run("check", "F2", columns=columns)
    assert said.code == 0
    assert "separated sponge, 519 g in all" in said.out
    strips = [line for line in said.out.splitlines() if "*" in line and "]" in line]
    assert len(strips) == 8
    assert max(len(line) for line in said.out.splitlines()) <= columns
    assert "usual 200–340 %" in said.out


def test_a_chiffon_says_what_100_is_and_how_its_egg_is_judged(run: Run) -> None:
    assert "100 is 90 g of flour; the egg is judged by its parts" in run("check", "F5").out


def test_a_narrow_band_shows_its_second_digit_and_its_whole_name(run: Run) -> None:
    said = run("check", "F3").out
    assert "0.36 %" in said
    assert "Batter on the sheet    0.53 g/cm2" in said


def test_a_finding_comes_before_the_strips(run: Run, write: Callable[[str], str]) -> None:
    said = run("check", write(STARCHY))
    assert said.code == 0
    assert said.out.index("Outside: ") < said.out.index("]")
    assert "usual is 30 to 50" in said.out
    assert "Everything that has a band" not in said.out


def test_unknown_figures_say_unknown(run: Run, write: Callable[[str], str]) -> None:
    said = run("check", write(STARCHY.replace("5 eggs, EU M", "5 eggs")), "--book", "nowhere")
    assert said.code == 3
    assert "unknown" in said.out


def test_the_program_gets_every_digit(run: Run) -> None:
    result = run("check", "F2", "--json").json["result"]
    assert result["percent"]["egg"] == pytest.approx(242.857142857, abs=1e-9)
    assert result["findings"] == []


def test_an_explanation_stands_in_the_result(run: Run) -> None:
    result = run("check", "F2", "--json", "--explain", "egg").json["result"]
    assert result["explain"]["key"] == "percent.egg"
    assert result["explain"]["inputs"]


def test_a_figure_that_is_none_is_asked_back(run: Run) -> None:
    said = run("check", "F2", "--explain", "strach")
    assert said.code == 3
    assert "--answer --explain=percent.starch" in said.err
    again = run("check", "F2", "--explain", "strach", "--answer", "--explain=percent.starch")
    assert again.code == 0


@pytest.mark.parametrize("columns", [40, 80])
def test_what_to_weigh_twice_is_said_at_the_end(run: Run, columns: int) -> None:
    said = run("check", "F3", columns=columns)
    words = " ".join(said.out.split())
    assert "Weigh twice: xanthan gum, caster sugar. Weigh the eggs (by count ± 16 g)." in words
    assert "One step of 0.1 g of xanthan gum too much or too little moves xanthan by 0.14" in words
    assert "Every line" not in words


@pytest.mark.parametrize("columns", [40, 80])
def test_the_table_has_a_row_for_each_line_that_moves_something(run: Run, columns: int) -> None:
    said = run("check", "F1", "--lines", columns=columns)
    table = said.out[said.out.index("Every line") :]
    for name in ("eggs", "caster sugar", "buckwheat flour", "lemon juice"):
        assert name in table
    assert "Move no figure with a band: ground" in " ".join(table.split())
    assert max(len(line) for line in said.out.splitlines()) <= columns


def test_the_program_gets_the_lines_to_weigh_twice(run: Run) -> None:
    result = run("check", "F3", "--json").json["result"]
    assert {"line", "name", "part", "step_g", "step_effect", "figure", "low", "high", "text"} <= (
        result["weigh_twice"][0].keys()
    )
    assert result["lines"] is None


def test_a_formula_nobody_can_place_has_no_table(run: Run, write: Callable[[str], str]) -> None:
    said = run("check", write("Odd\n\n20 g white rice flour\n"), "--lines")
    assert "which weighing matters cannot be said" in " ".join(said.out.split())
    assert "Every line" not in said.out
