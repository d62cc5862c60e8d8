"""`krume build`: the stack from the top down, slices, batches, and the one JSON object."""

import jsonschema
import pytest

from krume.usecases import command_schema
from tests.cli.conftest import Run

NAMES = ["T1", "T2", "T3", "TART"]


@pytest.mark.parametrize("name", NAMES)
def test_the_answer_fits_its_schema(run: Run, name: str) -> None:
    said = run("build", name, "--json")
    assert said.code == 0
    assert said.json["command"] == "build"
    jsonschema.validate(said.json, command_schema("build").result)


def test_an_answer_that_is_not_possible_fits_its_schema_too(run: Run) -> None:
    said = run("build", "-", "--json", typed="High\n\n3 layers of F1, 20 mm")
    assert said.code == 4
    assert said.json["result"]["mass_g"] is None
    assert "50 mm" in said.json["problems"][0]["ask"]
    jsonschema.validate(said.json, command_schema("build").result)


def test_the_stack_stands_as_the_torte_does(run: Run) -> None:
    lines = run("build", "T1").out.splitlines()
    rows = [line for line in lines if line.startswith("|")]
    assert len(rows) == 9
    assert "227.6" in rows[0] and "coat" in rows[0]
    assert "128.3" in rows[-1] and "layer 1" in rows[-1]
    (total,) = [line for line in lines if line.endswith("in all")]
    assert "66" in total and "1194.9" in total


@pytest.mark.parametrize(
    ("name", "words"),
    [
        (
            "T1",
            ["12 × 99.6 g, 5.31 cm outside, 30°", "half a batch, 22.8 g over", "3 whites, 100.5 g"],
        ),
        ("T2", ["a roll, Ø 74.4 mm, 1.96 turns", "12 × 62.8 g, 27.5 mm wide"]),
        ("T3", ["to spare: 0 mm", "gelatine of 9 to 10 g/kg", "147.2 g cut away"]),
        ("TART", ["10 × 59.4 g", "1 batch, 0.0 g over"]),
    ],
)
def test_what_a_person_needs_is_said(run: Run, name: str, words: list[str]) -> None:
    out = " ".join(run("build", name, columns=120).out.split())
    assert all(word in out for word in words)


@pytest.mark.parametrize("columns", [40, 80])
def test_a_question_says_what_to_type(run: Run, columns: int) -> None:
    said = run("build", "-", typed="Torte\n\n3 layers of F1, 14 mm\n9 mm C1 on the layer",
               columns=columns)  # fmt: skip
    assert said.code == 3
    assert "--answer 'line 4=9 mm C1 on each layer'" in said.out


def test_an_answer_on_the_command_line_is_an_edit(run: Run) -> None:
    text = "Torte\n\n3 layers of F1, 14 mm\n9 mm C1 on the layer"
    said = run("build", "-", "--answer", "line 4=9 mm C1 on each layer", "--json", typed=text)
    assert said.code == 0
    assert said.json["result"]["height_mm"] == pytest.approx(69.0)


def test_a_formula_is_no_torte(run: Run) -> None:
    said = run("build", "F1")
    assert said.code == 3
    assert "Name a torte." in said.err


def test_an_unknown_mass_is_a_word_in_the_stack(run: Run) -> None:
    said = run("build", "-", typed="Torte\n\n2 layers of F1, 14 mm\n9 mm F1 on the layer",
               columns=120)  # fmt: skip
    assert said.code == 3
    assert "unknown" in said.out


def test_on_a_narrow_terminal_each_band_stays_whole(run: Run) -> None:
    lines = run("build", "T1", columns=40).out.splitlines()
    rows = [line for line in lines if line.startswith("|")]
    assert len(rows) == 9
    assert all(row[5] == "|" for row in rows)
