"""`krume trace`: the list to call from, writing down, and the one JSON object."""

import shutil
from pathlib import Path

import pytest

from tests.cli.conftest import Run


@pytest.fixture
def own(book: Path, tmp_path: Path) -> str:
    """A copy of the demo book that the test may write in."""
    return str(shutil.copytree(book, tmp_path / "own"))


def test_the_answer_fits_its_schema_for_every_kind_of_name(run: Run, own: str) -> None:
    for words in (
        ("101",), ("101", "--write"), ("L270610-1",), ("B270610-1",), ("L-008",), ("T1",),
        ("7781", "--ingredient", "butter"),
    ):  # fmt: skip
        said = run("trace", *words, "--book", own, "--json")
        assert said.code == 0, words
        assert said.json["result"]["cautions"]


@pytest.mark.parametrize("columns", [40, 80])
def test_those_to_call_come_first_and_every_line_fits(run: Run, own: str, columns: int) -> None:
    run("trace", "101", "--write", "--book", own)
    said = run("trace", "L-008", "--book", own, columns=columns)
    assert said.code == 0
    assert max(len(line) for line in said.out.splitlines()) <= columns
    words = " ".join(said.out.split())
    assert words.index("L-008 is in 1 making.") < words.index("call these first")
    assert words.index("M. Tarrow, order 101") < words.index("tell them first")


def test_what_is_written_down_is_shown_with_what_is_not_known(run: Run, own: str) -> None:
    said = run(
        "trace", "101", "--write", "--lot", "F1 eggs=E-1", "--batch", "F1=2027-06-09",
        "--batch", "S1=?", "--made", "2027-06-10", "--book", own,
    )  # fmt: skip
    assert said.code == 0
    assert "Written down: L270610-1" in said.out
    assert "B270609-1  F1, made 2027-06-09" in said.out
    assert "S1, which batch is not known" in said.out
    assert "which batch of S1 went in is not known" in " ".join(said.out.split())


def test_an_unknown_lot_is_asked_and_nothing_is_said_of_it(run: Run) -> None:
    said = run("trace", "L-08", "--json")
    assert said.code == 3
    (problem,) = said.json["problems"]
    assert problem["code"] == "lot-unknown"
    assert "lot L-008" in [option["line"] for option in problem["options"]]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("101", "--lot", "butter oil=L-1"), "no ingredient of it"),
        (("101", "--batch", "F9=2027-06-01"), "none of its formulas"),
        (("101", "--write", "--made", "2027-06-11"), "still to come"),
    ],
)
def test_what_is_typed_wrongly_is_said_and_nothing_is_written(
    run: Run, own: str, words: tuple[str, ...], told: str
) -> None:
    said = run("trace", *words, "--book", own)
    assert said.code == 3
    assert told in " ".join(said.err.split())
    assert '"is_written": false' in run("trace", "101", "--book", own, "--json").out


def test_the_list_is_written_as_four_files_and_their_paths_stand_last(
    run: Run, own: str, tmp_path: Path
) -> None:
    said = run("trace", "L-008", "--book", own, "--out", str(tmp_path / "list"))
    paths = [Path(line) for line in said.out.splitlines() if line.startswith("/")]
    assert {path.suffix for path in paths} == {".pdf", ".html", ".csv", ".json"}
    assert all(path.is_file() for path in paths)
