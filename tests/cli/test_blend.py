"""`krume blend`: the contract's answer, the exit codes, and a page a baker reads at a glance."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.usecases.blends import FLOURS, LIMITS

WITHOUT_TEFF = ("blend", "--from", FLOURS, "--match", "F2", "--without", "teff")
LIMITED = (*WITHOUT_TEFF, *(word for limit in LIMITS for word in ("--limit", limit)))


def test_the_answer_holds_what_the_contract_says(run: Run) -> None:
    said = run(*LIMITED, "--json")
    assert said.code == 0
    result = said.json["result"]
    masses = {part["ingredient"]: part["mass_g"] for part in result["parts"]}
    assert sum(masses.values()) == 105
    squares = [(result["got"][name] - want) ** 2 for name, want in result["target"].items()]
    assert result["distance"] == pytest.approx(sum(squares) ** 0.5, abs=1e-9)
    assert result["proven"] is True
    assert len(result["composition"]) == 6
    for name, held in result["got"].items():
        mean = sum(g * result["composition"][key][name] for key, g in masses.items()) / 105
        assert held == pytest.approx(mean)


def test_the_page_shows_before_and_now_then_the_next_step(run: Run) -> None:
    lines = run(*LIMITED).out.splitlines()
    assert lines[0] == "The blend of F2, without teff flour"
    rice = next(line.split() for line in lines if line.startswith("  white rice flour"))
    assert rice[3] == "40"
    teff = next(line.split() for line in lines if line.startswith("  teff flour"))
    assert teff[2:] == ["20", "–"]
    order = ["was g", "wanted", "Distance", "Next: bake one small one", "Other flours"]
    places = [next(at for at, line in enumerate(lines) if word in line) for word in order]
    assert places == sorted(places)


@pytest.mark.parametrize("columns", [40, 80])
def test_no_line_but_one_to_copy_is_wider_than_the_screen(run: Run, columns: int) -> None:
    said = run(*LIMITED, "--cakes", "10", columns=columns)
    wide = [line for line in said.out.splitlines() if len(line) > columns]
    assert wide == []


def test_limits_that_clash_are_exit_4_with_lines_to_copy(run: Run) -> None:
    said = run(*WITHOUT_TEFF, "--limit", "starch >= 60", "--limit", "potato starch <= 20",
               "--limit", "maize starch <= 10 g")  # fmt: skip
    assert said.code == 4
    assert said.out.startswith("No answer within these limits.")
    assert "--answer '--limit=starch >= " in said.out
    assert "was g" not in said.out


def test_a_name_of_two_goods_is_exit_3(run: Run) -> None:
    said = run("blend", "--from", "rice flour, potato starch", "--match", "F2", "--json")
    assert said.code == 3
    (problem,) = said.json["problems"]
    assert problem["where"] == "--from 1"
    assert len(problem["options"]) == 3


def test_a_limit_that_is_not_read_is_exit_3_with_examples(run: Run) -> None:
    said = run(*WITHOUT_TEFF, "--limit", "quite a lot of rice")
    assert said.code == 3
    assert "buckwheat <= 16 g; sweet rice 9 g" in said.out


def test_writing_needs_a_formula(run: Run) -> None:
    said = run("blend", "--from", FLOURS, "--want", "protein 6", "--write", "new.txt")
    assert said.code == 2


def test_a_formula_may_come_by_standard_input(run: Run) -> None:
    text = "Test\n\n60 g white rice flour\n40 g potato starch\n"
    said = run("blend", "--from", FLOURS, "--match", "-", "--json", typed=text)
    assert said.code == 0
    assert said.json["result"]["match"]["total_g"] == 100


def test_the_written_text_is_there_and_is_not_overwritten_unasked(
    run: Run, write: Callable[[str], str]
) -> None:
    new = write("mine\n")
    said = run(*LIMITED, "--write", new)
    assert said.code != 0
    assert Path(new).read_text(encoding="utf-8") == "mine\n"
    assert run(*LIMITED, "--write", new, "--replace").code == 0
    assert Path(new).read_text(encoding="utf-8").startswith("Tidewick vanilla sponge, without")


def test_the_cards_paths_stand_alone_on_their_lines(run: Run, tmp_path: Path) -> None:
    lines = run(*LIMITED, "--out", str(tmp_path / "out"), columns=40).out.splitlines()
    paths = [line for line in lines if line.startswith(str(tmp_path))]
    assert len(paths) == 3
    assert all(Path(path).is_file() for path in paths)


def test_what_is_wanted_alone_is_a_list_with_percents(run: Run) -> None:
    said = run("blend", "--from", FLOURS, "--want", "protein 6", "--limit", "starch 30..50")
    assert said.code == 0
    assert "100 g of blend" in said.out
    assert " %" in said.out


def test_every_answer_is_plain_json(run: Run) -> None:
    for words in (("--cakes", "3"), ("--also", "starch"), ("--most-flours", "5"), ("--stock",)):
        said = run(*LIMITED, *words, "--json")
        assert json.loads(said.out)["ok"] is True
        assert said.json["command"] == "blend"
