"""The list beside the sheets: digests of files and texts, earlier runs kept, damage named."""

import hashlib
import json
from pathlib import Path

import pytest

from krume.base import StoreError
from krume.usecases import Asked, make_sheets
from krume.usecases.sheets.manifest import MANIFEST, read_manifest, sha256
from tests.usecases.conftest import Made


def test_every_file_is_listed_with_its_digest(sheets_101: Made) -> None:
    (run,) = read_manifest(sheets_101.folder)
    files = {path.name: path for path in sheets_101.folder.iterdir() if path.name != MANIFEST}
    assert {each.file for each in run.files} == set(files)
    for each in run.files:
        assert each.sha256 == hashlib.sha256(files[each.file].read_bytes()).hexdigest()


def test_the_texts_are_those_of_the_order_with_the_digest_of_their_bytes(
    demo: Asked, sheets_101: Made
) -> None:
    (run,) = read_manifest(sheets_101.folder)
    assert demo.book is not None
    names = {text.name for text in run.texts}
    assert {"101", "T1", "F1", "C1", "C5", "S1", "lots.csv", "studio.toml"} <= names
    assert not names & {"F2", "T2", "trials.csv"}
    for text in run.texts:
        assert text.sha256 == sha256((demo.book / text.key).read_bytes()), text.name


def test_a_card_rests_on_its_own_formula_and_an_orders_sheet_on_all(sheets_101: Made) -> None:
    (run,) = read_manifest(sheets_101.folder)
    rests = {each.file: set(each.made_of) for each in run.files}
    card = rests["f1-bench-card.pdf"]
    assert {"formulas/F1.txt", "orders/101.txt", "lots.csv", "studio.toml"} <= card
    assert not card & {"formulas/C1.txt", "tortes/T1.txt"}
    every = {f"formulas/{name}.txt" for name in ("F1", "C1", "C5", "S1")}
    assert every <= rests["order-sheet.pdf"]
    assert every | {"tortes/T1.txt"} <= rests["t1-torte-plan.pdf"]


def test_each_json_says_what_it_was_made_of(sheets_101: Made) -> None:
    (run,) = read_manifest(sheets_101.folder)
    by_key = {text.key: text for text in run.texts}
    paths = [each for each in run.files if each.file.endswith(".json")]
    assert len(paths) >= 10
    for each in paths:
        made_of = json.loads((sheets_101.folder / each.file).read_text("utf-8"))["made_of"]
        assert (made_of["program"], made_of["data"]) == (run.program, run.data)
        assert [text["sha256"] for text in made_of["texts"]] == [
            by_key[key].sha256 for key in each.made_of
        ]


def test_another_run_in_the_folder_keeps_what_it_did_not_write(demo: Asked, tmp_path: Path) -> None:
    make_sheets("F1", demo, out=tmp_path)
    make_sheets("F2", demo, out=tmp_path)
    assert [run.name for run in read_manifest(tmp_path)] == ["F1", "F2"]
    make_sheets("F1", demo, out=tmp_path, paper="a4")
    runs = read_manifest(tmp_path)
    assert [(run.name, run.paper) for run in runs] == [("F2", "a5"), ("F1", "a4")]
    listed = [each.file for run in runs for each in run.files]
    assert len(listed) == len(set(listed)) == 12


def test_a_folder_without_a_list_holds_no_run(tmp_path: Path) -> None:
    assert read_manifest(tmp_path) == ()


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"made": [{}]}', '{"made": 3}', '{"made": [{"texts": 1, "files": 2}]}']
)
def test_a_damaged_list_is_named_and_left_as_it_is(demo: Asked, tmp_path: Path, text: str) -> None:
    path = tmp_path / MANIFEST
    path.write_text(text, encoding="utf-8")
    with pytest.raises(StoreError, match="Move it away"):
        make_sheets("F1", demo, out=tmp_path)
    assert [each.name for each in tmp_path.iterdir()] == [MANIFEST]
    assert path.read_text(encoding="utf-8") == text
