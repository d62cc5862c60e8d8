"""`krume size`: options a person can choose by."""

import pytest

from tests.cli.conftest import Run


@pytest.mark.parametrize("columns", [40, 80])
def test_options_are_numbered_and_the_best_is_first(run: Run, columns: int) -> None:
    said = run("size", "F2", "--tin", "round 8in x 3in", columns=columns)
    assert said.code == 0
    assert "1. Change nothing" in said.out
    assert said.out.index("1. ") < said.out.index("2. 6 eggs")
    assert "Factor: by area 1.0323, by volume 1.1237" in " ".join(said.out.split())
    assert max(len(line) for line in said.out.splitlines()) <= columns


def test_grams_stand_under_each_other(run: Run) -> None:
    said = run("size", "F2", "--tin", "sheet 13x9 in", "--depth", "1.1").out
    assert "   32.0  g white rice flour\n" in said
    assert "    7.2  g sweet rice flour\n" in said
    assert "  415.2  g in all\n" in said


def test_a_depth_may_say_its_own_unit(run: Run) -> None:
    words = ("size", "F2", "--tin", "sheet 13x9 in", "--json", "--depth")
    assert run(*words, "11 mm").json["result"] == run(*words, "1.1").json["result"]


def test_a_tin_is_asked_with_words_to_copy(run: Run) -> None:
    said = run("size", "F2", "--tin", "8in")
    assert said.code == 3
    assert "--answer '--tin=round 8 in'" in said.out
    assert run("size", "F2", "--tin", "8in", "--answer", "--tin=round 8 in").code == 0


def test_several_tins_are_filled_together(run: Run) -> None:
    words = ("size", "F2", "--tin", "round 18 x 7 cm", "--tin", "round 12 x 7 cm", "--json")
    result = run(*words).json["result"]
    assert len(result["tins"]) == 2
    assert len(result["options"][0]["shares_g"]) == 2


@pytest.mark.parametrize("words", [("--depth", "0"), ("--depth", "-1"), ("--depth", "nan"),
                                   ("--eggs", "half"), ("--scale", "0")])  # fmt: skip
def test_a_wish_that_is_none_is_refused(run: Run, words: tuple[str, str]) -> None:
    said = run("size", "F2", "--tin", "round 20 x 7 cm", *words, "--json")
    assert said.code in (2, 3)
    assert said.json["ok"] is False


def test_clashing_limits_are_exit_4_with_both_named(run: Run) -> None:
    said = run("size", "F2", "--tin", "round 20 x 5 cm", "--depth", "6", "--json")
    assert said.code == 4
    (problem,) = said.json["problems"]
    assert problem["code"] == "limits-clash"
    assert "5.0 cm" in problem["ask"]
    assert said.json["result"]["factor"]["by_area"] == pytest.approx(1)
