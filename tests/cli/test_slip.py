"""`krume slip`: what a hurried person reads first."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run

SLIP = ("slip", "F2", "--weighed", "white rice=40", "--weighed", "teff=26")


@pytest.mark.parametrize("columns", [40, 80])
def test_the_first_way_says_what_to_add(run: Run, columns: int) -> None:
    said = run(*SLIP, columns=columns)
    assert said.code == 0
    text = " ".join(said.out.split())
    assert "26.0 g teff flour: 6 OVER 20 planned" in text
    assert "1. Fill the blend up, keep 31.5 g in a jar Add white rice flour 12.0 g" in text
    assert text.index("1. ") < text.index("2. Leave it") < text.index("3. Less of the rest")
    assert max(len(line) for line in said.out.splitlines()) <= columns


def test_the_rest_of_the_ways_is_shown_when_asked(run: Run) -> None:
    assert "more ways: --all" in run(*SLIP).out
    everything = run(*SLIP, "--all").out
    assert "The surplus as a second cake" in everything
    assert "more ways" not in everything


def test_many_lines_stand_under_each_other(run: Run) -> None:
    said = run("slip", "F2", "--weighed", "sugar=140").out
    assert "   274.6  g eggs\n" in said
    assert "    16.0  g caster sugar\n" in said
    assert "spoon 10 g of caster sugar back: nothing is lost" in " ".join(said.split())


def test_the_json_answer_holds_the_contracts_keys(run: Run) -> None:
    result = run(*SLIP, "--json").json["result"]
    jar, leave, hold = result["options"]
    assert (jar["kind"], jar["factor"], jar["jar_g"]) == ("jar", 1.3, 31.5)
    assert [line["add_g"] for line in hold["lines"]] == [0, 0, 26, 7.8, 5.2]
    for key in ("kind", "factor", "lines", "jar_g", "eggs", "percent", "worst_shift_pct", "text"):
        assert key in leave


def test_a_way_that_is_declined_says_why(run: Run) -> None:
    said = run("slip", "F6", "--weighed", "white rice=66", "--all").out
    assert "No second cake: the surplus is 0.03 of a cake." in said


def test_the_bowl_is_asked_with_words_to_copy(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "own.txt"
    path.write_text(
        "Own\n\n40 g white rice flour\n20 g teff flour\n50 g caster sugar\n", encoding="utf-8"
    )
    words = ("slip", str(path), "--weighed", "teff=26", "--weighed", "sugar=50")
    said = run(*words)
    assert said.code == 3
    assert "--answer '--same-bowl=caster sugar'" in said.out
    assert run(*words, "--answer", "--same-bowl=caster sugar").code == 0
    assert run(*words, "--same-bowl", "nothing").code == 0


def test_spoilt_whites_begin_with_fresh_eggs(run: Run) -> None:
    said = run("slip", "F2", "--spoilt", "whites of 2 eggs").out
    assert "Break 2 fresh eggs" in said
    assert "for F6, F7, or" in " ".join(said.split())


def test_only_ways_that_keep_the_total(run: Run) -> None:
    kinds = [way["kind"] for way in run(*SLIP, "--total", "--json").json["result"]["options"]]
    assert kinds == ["jar", "hold-in-band", "hold"]


def test_a_choice_writes_files_and_says_the_formula_is_as_it_was(run: Run, tmp_path: Path) -> None:
    said = run(*SLIP, "--choose", "1", "--out", str(tmp_path / "out"))
    assert said.code == 0
    assert "The formula itself was not changed." in said.out
    paths = [line for line in said.out.splitlines() if line.startswith(str(tmp_path))]
    assert [Path(path).name for path in paths][-2:] == ["f2-slip.json", "sheets.json"]
    assert all(Path(path).is_file() for path in paths)


@pytest.mark.parametrize(
    "words",
    [("F2",), ("F2", "--weighed", "teff=26", "--out", "somewhere"),
     ("F2", "--weighed", "teff=26", "--scale", "0")],
)  # fmt: skip
def test_a_wish_that_is_none_is_wrong_usage(run: Run, words: tuple[str, ...]) -> None:
    assert run("slip", *words).code == 2


def test_a_negative_weight_is_refused_in_plain_words(run: Run) -> None:
    said = run("slip", "F2", "--weighed", "teff=-3")
    assert said.code == 3
    assert "less than nothing cannot lie in a bowl" in said.err + said.out
