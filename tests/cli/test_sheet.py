"""`krume sheet`: the paths it wrote, or one sentence on why it wrote nothing."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Run

TEXT = "Plain sponge\n\n100 g white rice flour\n5 eggs\n120 g caster sugar\n\nBake.\n"


@pytest.mark.parametrize("columns", [40])
def test_each_path_is_a_line_of_its_own_and_never_wrapped(
    run: Run, tmp_path: Path, columns: int
) -> None:
    out = tmp_path / "out"
    said = run("sheet", "101", "--out", str(out), columns=columns)
    assert said.code == 0
    paths = [Path(line) for line in said.out.splitlines() if line.startswith(str(tmp_path))]
    assert len(paths) == 35
    assert all(path.is_file() for path in paths)
    assert set(paths) == set(out.iterdir())


def test_the_answer_names_kind_and_path_of_each_file(run: Run, tmp_path: Path) -> None:
    result = run("sheet", "T2", "--out", str(tmp_path), "--json").json["result"]
    kinds = {"torte-plan", "bench-card", "blend-card", "cold-log", "index", "manifest"}
    assert {file["kind"] for file in result["files"]} == kinds
    assert all(Path(file["path"]).is_file() for file in result["files"])
    assert result["held"] == []


def test_an_open_question_writes_nothing(
    run: Run, write: Callable[[str], str], tmp_path: Path
) -> None:
    out = tmp_path / "out"
    said = run("sheet", write(TEXT), "--out", str(out), "--book", str(tmp_path / "none"))
    assert said.code == 3
    assert "Nothing was written." in said.out
    assert not out.exists()


@pytest.mark.parametrize("paper", ["a5", "a4", "letter"])
def test_the_paper_may_be_chosen(run: Run, tmp_path: Path, paper: str) -> None:
    assert run("sheet", "F1", "--out", str(tmp_path), "--paper", paper).code == 0


def test_a_file_in_place_of_the_folder_is_refused_and_kept(run: Run, tmp_path: Path) -> None:
    out = tmp_path / "out"
    out.write_bytes(b"hers")
    said = run("sheet", "F1", "--out", str(out))
    assert said.code == 5
    assert "could not be written" in said.err
    assert out.read_bytes() == b"hers"


def test_other_files_in_the_folder_stay(run: Run, tmp_path: Path) -> None:
    (tmp_path / "photo.jpg").write_bytes(b"x")
    assert run("sheet", "F1", "--out", str(tmp_path)).code == 0
    assert (tmp_path / "photo.jpg").read_bytes() == b"x"


def test_fresh_sheets_are_told_one_by_one_and_answer_0(run: Run, tmp_path: Path) -> None:
    run("sheet", "F2", "--out", str(tmp_path))
    said = run("sheet", "--verify", str(tmp_path))
    assert said.code == 0
    assert "6 of 6 files are as written" in said.out
    assert "f2-blend-card.pdf: as written" in said.out


def test_an_edited_sheet_answers_3_with_the_command_that_makes_it_again(
    run: Run, tmp_path: Path
) -> None:
    run("sheet", "F2", "--out", str(tmp_path), "--paper", "a4")
    with (tmp_path / "f2-bench-card.html").open("a", encoding="utf-8") as page:
        page.write("!")
    said = run("sheet", "--verify", str(tmp_path), "--json")
    assert said.code == 3
    (problem,) = said.json["problems"]
    assert problem["code"] == "sheet-not-fresh"
    assert problem["where"] == "f2-bench-card.html"
    assert problem["options"][0]["line"] == f"krume sheet F2 --out {tmp_path} --paper a4"


@pytest.mark.parametrize(
    "words",
    [
        ("F1",),
        ("--out", "x"),
        ("F1", "--verify", "x"),
        ("--verify", "x", "--out", "y"),
    ],
)
def test_a_text_and_a_folder_or_a_folder_to_check_is_wanted(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert run("sheet", *words).code == 2
    assert list(tmp_path.iterdir()) == []
