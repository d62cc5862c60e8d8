"""`krume book`: made, loaded, refused."""

from pathlib import Path

from tests.cli.conftest import Run


def test_loading_the_demo_says_what_is_there_and_where(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "own"
    said = run("book", "demo", "--book", str(path))
    assert said.code == 0
    assert "13  formulas" in said.out
    assert said.out.splitlines()[-1] == str(path)
    assert run("read", "F7", "--book", str(path)).code == 0


def test_the_answer_holds_counts_path_and_digest(run: Run, tmp_path: Path) -> None:
    said = run("book", "demo", "--json", "--book", str(tmp_path)).json["result"]
    assert said["path"] == str(tmp_path)
    assert said["counts"]["tortes"] == 4
    assert len(said["sha256"]) == 64


def test_a_text_of_ones_own_is_kept_and_named(run: Run, tmp_path: Path) -> None:
    run("book", "demo", "--book", str(tmp_path))
    (tmp_path / "formulas" / "F1.txt").write_text("Mine\n", encoding="utf-8")
    said = run("book", "demo", "--book", str(tmp_path))
    assert said.code == 0
    assert "formulas/F1.txt differs" in said.out
    assert (tmp_path / "formulas" / "F1.txt").read_text(encoding="utf-8") == "Mine\n"


def test_a_folder_of_other_things_is_refused(run: Run, tmp_path: Path) -> None:
    (tmp_path / "photo.jpg").write_bytes(b"x")
    for words in (("book", "demo"), ("book", "init")):
        said = run(*words, "--json", "--book", str(tmp_path))
        assert said.code == 5
        assert said.json["problems"][0]["code"] == "store"
    assert [p.name for p in tmp_path.iterdir()] == ["photo.jpg"]


def test_an_empty_book_is_ready_for_texts(run: Run, tmp_path: Path) -> None:
    assert run("book", "init", "--book", str(tmp_path / "b")).code == 0
    (tmp_path / "b" / "formulas" / "mine.txt").write_text(
        "Mine\n\n100 g white rice flour\n", encoding="utf-8"
    )
    assert run("read", "mine", "--book", str(tmp_path / "b")).code == 0
