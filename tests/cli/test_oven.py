"""`krume oven`: what is known first, lines that are written down, records with their reasons."""

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner

from krume.cli import krume_command
from krume.usecases import Asked, load_demo
from tests.cli.conftest import Run, Said

Own = Callable[..., Said]


@pytest.fixture
def own(tmp_path: Path) -> Own:
    """Run a command line on a demo book that the test may change."""
    load_demo(Asked(book=tmp_path / "book"))

    def run(*words: str, columns: int = 80) -> Said:
        found = CliRunner().invoke(
            krume_command, [*words, "--book", str(tmp_path / "book")],
            env={"COLUMNS": str(columns)}, catch_exceptions=False,
        )  # fmt: skip
        return Said(found.exit_code, found.stdout, found.stderr)

    return run


def test_the_answer_fits_its_schema_and_holds_what_is_promised(run: Run) -> None:
    said = run("oven", "--json")
    assert said.code == 0
    (oven,) = said.json["result"]["ovens"]
    assert (oven["name"], oven["offset_c"], oven["dial_c"]) == ("deck", -12.0, 182.0)
    assert (oven["bakes"], oven["statuses"], oven["offset_from"]) == (
        4,
        ["invented"],
        "studio.toml",
    )
    assert oven["heat"]["low"] < oven["heat"]["best"] < oven["heat"]["high"]
    assert len(said.json["result"]["records"]) == 4


@pytest.mark.parametrize("columns", [40, 80])
def test_the_dial_comes_first_and_every_line_fits(run: Run, columns: int) -> None:
    said = run("oven", "--list", columns=columns)
    assert max(len(line) for line in said.out.splitlines()) <= columns
    words = " ".join(said.out.split())
    assert (
        words.index("turn the dial to 182 °C") < words.index("Reads low") < words.index("Records")
    )
    assert "1 deck: F2, 519 g, dial 160, 33 min, core 89, invented" in words


def test_without_the_list_there_is_none(run: Run) -> None:
    assert "Records" not in run("oven").out


def test_what_is_said_is_written_down_and_taken_out_again(own: Own) -> None:
    said = own("oven", "--reading", "dial 160: 148, 152, 144", "--bake",
               "F1, dial 182, 40 min, core 95", "--list")  # fmt: skip
    assert said.code == 0
    words = " ".join(said.out.split())
    assert "Written down: the reading of 2027-06-10. Written down: the bake of 2027-06-10." in words
    assert "from 3 looks" in words and "from 1 bake." in words
    assert "it is invented, and real bakes count in its place" in words
    again = " ".join(own("oven", "--forget", "2").out.split())
    assert again.startswith("Taken out: F1, dial 182, 40 min, core 95.")
    assert "from 4 bakes (invented)" in again


def test_a_line_that_asks_is_answered_with_a_whole_line(own: Own) -> None:
    said = own("oven", "--reading", "dial 325: 148", "--json")
    assert said.code == 3
    (problem,) = said.json["problems"]
    assert [o["line"] for o in problem["options"]] == ["dial 325 C: 148", "dial 325 F: 148"]
    answered = own("oven", "--reading", "dial 325: 148", "--answer", "--reading=dial 325 F: 148")
    assert answered.code == 0


def test_what_cannot_be_is_refused_with_words(own: Own) -> None:
    said = own("oven", "--bake", "F1, dial 182, 38 min, core 130")
    assert said.code == 3
    assert "above the 101 °C at which this batter boils" in " ".join((said.out + said.err).split())
    assert own("oven", "--forget", "99").code == 3


def test_an_oven_that_was_mended_begins_anew(own: Own) -> None:
    own("oven", "--bake", "F1, dial 182, 40 min, core 95, 2027-05-01")
    said = own("oven", "--until", "2027-05-31", "--json").json["result"]
    assert [oven["name"] for oven in said["ovens"]] == ["deck", "deck until 2027-05-31"]
    assert [oven["bakes"] for oven in said["ovens"]] == [4, 1]
