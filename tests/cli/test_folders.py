"""A folder's name is asked for when it is empty, and nothing is written."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run


@pytest.mark.parametrize("name", ["", "   "])
def test_an_empty_name_is_no_folder(
    run: Run, name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    said = run("sheet", "F1", "--out", name)
    assert said.code == 2 and "name is empty" in said.err
    assert list(tmp_path.iterdir()) == []


def test_a_named_folder_is_made(run: Run, tmp_path: Path) -> None:
    assert run("sheet", "S1", "--out", str(tmp_path / "sheets")).code == 0
    assert (tmp_path / "sheets").is_dir()
