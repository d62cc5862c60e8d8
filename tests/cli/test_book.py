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
    mine = tmp_path / "F1.txt"
    mine.write_text("Mine\n\n100 g white rice flour\n", encoding="utf-8")
    book = ("--book", str(tmp_path / "book"))
    assert run("book", "init", *book).code == 0
    assert "Taken in: 1." in run("book", "import", str(mine), *book).out
    said = run("book", "demo", *book)
    assert said.code == 0
    assert "formulas/F1.txt differs" in said.out
    assert "Mine" in run("read", "F1", *book).out


def test_a_folder_of_other_things_is_refused(run: Run, tmp_path: Path) -> None:
    (tmp_path / "photo.jpg").write_bytes(b"x")
    for words in (("book", "demo"), ("book", "init")):
        said = run(*words, "--json", "--book", str(tmp_path))
        assert said.code == 5
        assert said.json["problems"][0]["code"] == "store"
    assert [p.name for p in tmp_path.iterdir()] == ["photo.jpg"]


def test_what_goes_out_comes_in_again_equal(run: Run, tmp_path: Path) -> None:
    own, other, out = (str(tmp_path / name) for name in ("own", "other", "out"))
    first = run("book", "demo", "--json", "--book", own).json["result"]
    said = run("book", "export", out, "--json", "--book", own).json["result"]
    assert said["file"] == out
    again = run("book", "import", out, "--json", "--book", other).json["result"]
    assert again["sha256"] == first["sha256"] == said["sha256"]
    assert again["counts"] == first["counts"]
    plain = run("check", "F2", "--json", "--book", out).json["result"]
    assert plain == run("check", "F2", "--json", "--book", own).json["result"]


def test_a_changed_text_is_taken_when_it_is_said_and_the_backup_brings_it_back(
    run: Run, tmp_path: Path
) -> None:
    book = ("--book", str(tmp_path / "book"))
    run("book", "demo", *book)
    assert run("book", "backup", *book).code == 0
    mine = tmp_path / "F1.txt"
    mine.write_text("Mine\n\n100 g white rice flour\n", encoding="utf-8")
    assert "Yours, kept as they are: 1." in run("book", "import", str(mine), *book).out
    assert "Replaced: 1." in run("book", "import", str(mine), "--replace", *book).out
    assert "Mine" in run("read", "F1", *book).out
    assert run("book", "restore", *book).code == 0
    assert "Orl hazel sponge" in run("read", "F1", *book).out
    assert run("book", "verify", *book).code == 0


def test_a_damaged_book_is_refused_and_says_how_to_go_on(run: Run, tmp_path: Path) -> None:
    book = tmp_path / "book"
    run("book", "demo", "--book", str(book))
    run("book", "backup", "--book", str(book))
    path = book / "book.sqlite3"
    data = bytearray(path.read_bytes())
    data[4096:] = b"\x55" * (len(data) - 4096)
    path.write_bytes(data)
    said = run("book", "verify", "--json", "--book", str(book))
    assert said.code == 5
    assert "book restore" in said.json["problems"][0]["ask"]
    assert run("book", "restore", "--book", str(book)).code == 0
    assert run("book", "verify", "--book", str(book)).code == 0


def test_what_cannot_be_done_is_said_with_the_way_on(run: Run, tmp_path: Path) -> None:
    nowhere, plain = tmp_path / "nowhere", tmp_path / "plain"
    assert run("book", "verify", "--json", "--book", str(nowhere)).code == 3
    assert run("book", "restore", "--json", "--book", str(nowhere)).code == 3
    run("book", "demo", "--book", str(tmp_path / "book"))
    run("book", "export", str(plain), "--book", str(tmp_path / "book"))
    said = run("book", "backup", "--json", "--book", str(plain))
    assert said.code == 5
    assert "folder of plain texts" in said.json["problems"][0]["ask"]
    assert run("book", "export", str(plain), "--book", str(tmp_path / "book")).code == 5
    assert run("book", "import", str(tmp_path / "none.txt"), "--book", str(nowhere)).code == 3
    assert not nowhere.exists()
