"""A sheet older than its text says so, by name, with the command that renews it."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from krume.usecases import Asked, QuestionError, make_sheets, verify_sheets
from krume.usecases.sheets.manifest import MANIFEST, Run, read_manifest
from krume.usecases.sheets.verify import renewing
from tests.usecases.conftest import Made


def _edit(asked: Asked, inside: str, old: str, new: str) -> None:
    assert asked.book is not None
    path = asked.book / inside
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def _stale(folder: Path, asked: Asked) -> dict[str, str]:
    answer = verify_sheets(folder, asked)
    stale = {each.file: each.text for each in answer.result.verified if not each.is_fresh}
    assert [problem.where for problem in answer.problems] == list(stale)
    assert answer.exit_code == (3 if stale else 0)
    return stale


def test_fresh_sheets_are_all_as_written_and_nothing_is_written(
    demo: Asked, sheets_101: Made
) -> None:
    before = {path.name: path.read_bytes() for path in sheets_101.folder.iterdir()}
    answer = verify_sheets(sheets_101.folder, demo)
    assert answer.exit_code == 0
    assert answer.result.files == ()
    assert {each.file for each in answer.result.verified} == set(before) - {MANIFEST}
    assert {each.text for each in answer.result.verified} == {"as written"}
    assert {path.name: path.read_bytes() for path in sheets_101.folder.iterdir()} == before


def test_one_changed_formula_makes_just_its_own_sheets_stale(
    own_demo: Asked, tmp_path: Path
) -> None:
    out = tmp_path / "out"
    make_sheets("T1", own_demo, out=out)
    _edit(own_demo, "formulas/C5.txt", "300 g butter", "290 g butter")
    stale = _stale(out, own_demo)
    assert set(stale.values()) == {"older than its text C5"}
    assert "c5-bench-card.pdf" in stale
    assert "t1-torte-plan.pdf" in stale
    assert "index.html" in stale
    assert not {"f1-bench-card.pdf", "f1-blend-card.pdf", "c1-bench-card.pdf"} & set(stale)
    make_sheets("T1", own_demo, out=out)
    assert _stale(out, own_demo) == {}


def test_a_lot_that_changes_makes_what_it_is_judged_by_stale(
    own_demo: Asked, tmp_path: Path
) -> None:
    out = tmp_path / "out"
    make_sheets("F1", own_demo, out=out)
    _edit(own_demo, "lots.csv", "2028-02-18", "2027-02-19")
    stale = _stale(out, own_demo)
    assert len(stale) == 6
    assert set(stale.values()) == {"older than its text lots.csv"}


def test_a_hold_that_opens_makes_every_sheet_of_the_order_stale(
    own_demo: Asked, tmp_path: Path
) -> None:
    out = tmp_path / "out"
    make_sheets("101", own_demo, out=out)
    _edit(
        own_demo,
        "lots.csv",
        "specification,may contain wheat,,2027-04-04,,",
        "lab test,,<5,2027-04-04,2028-04-04,",
    )
    stale = _stale(out, own_demo)
    (run,) = read_manifest(out)
    assert set(stale) == {each.file for each in run.files}
    assert all("what holds its order has changed" in text for text in stale.values())


def test_a_contradiction_that_comes_in_later_is_named(own_demo: Asked, tmp_path: Path) -> None:
    out = tmp_path / "out"
    make_sheets("101", own_demo, out=out)
    _edit(own_demo, "orders/101.txt", "One guest has coeliac disease.", "No nuts please.")
    assert "its order now holds a contradiction" in _stale(out, own_demo)["s1-bench-card.pdf"]


def test_a_card_of_another_number_of_batches_is_stale_though_its_own_text_is_the_same(
    own_demo: Asked, tmp_path: Path
) -> None:
    out = tmp_path / "out"
    make_sheets("101", own_demo, out=out)
    _edit(own_demo, "tortes/T1.txt", "2 x 10 mm C1", "2 x 12 mm C1")
    stale = _stale(out, own_demo)
    assert stale["c1-bench-card.pdf"] == "another number of batches of C1 is needed"
    assert stale["t1-torte-plan.pdf"] == "older than its text T1"
    assert not {"c5-bench-card.pdf", "f1-bench-card.pdf"} & set(stale)


def test_sheets_of_an_order_that_is_over_are_no_older_for_it(
    own_demo: Asked, tmp_path: Path
) -> None:
    out = tmp_path / "out"
    make_sheets("101", own_demo, out=out)
    settings = "studio.toml"
    assert own_demo.book is not None
    text = (own_demo.book / settings).read_text(encoding="utf-8")
    _edit(own_demo, settings, "2027-06-10", "2027-08-01")
    assert "what holds" not in " ".join(_stale(out, own_demo).values())
    (own_demo.book / settings).write_text(text, encoding="utf-8")
    assert _stale(out, own_demo) == {}


def test_an_edited_and_a_lost_file_are_told_apart(demo: Asked, tmp_path: Path) -> None:
    make_sheets("F2", demo, out=tmp_path)
    (tmp_path / "f2-bench-card.html").write_text("x", encoding="utf-8")
    (tmp_path / "f2-bench-card.pdf").unlink()
    assert _stale(tmp_path, demo) == {
        "f2-bench-card.html": "changed since it was written",
        "f2-bench-card.pdf": "it is not in the folder",
    }


@pytest.mark.parametrize(
    ("name", "said"), [("__version__", "made by krume"), ("data_version", "made with data")]
)
def test_another_program_or_other_data_is_named(
    demo: Asked, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, said: str
) -> None:
    make_sheets("F2", demo, out=tmp_path)
    other = "9.9.9" if name == "__version__" else lambda: "another"
    monkeypatch.setattr(f"krume.usecases.sheets.verify.{name}", other)
    stale = _stale(tmp_path, demo)
    assert len(stale) == 6
    assert all(said in text for text in stale.values())


def test_a_text_that_is_gone_is_not_taken_for_fresh(own_demo: Asked, tmp_path: Path) -> None:
    out = tmp_path / "out"
    make_sheets("F2", own_demo, out=out)
    assert own_demo.book is not None
    (own_demo.book / "formulas" / "F2.txt").unlink()
    assert set(_stale(out, own_demo).values()) == {"its text F2 is there no more"}


def test_a_text_that_came_by_standard_input_cannot_be_shown_fresh(
    bare: Asked, tmp_path: Path
) -> None:
    typed = replace(bare, typed=b"Syrup\n\n100 g sugar\n100 g water\n\nBoil.\n")
    make_sheets("-", typed, out=tmp_path / "out")
    stale = _stale(tmp_path / "out", bare)
    assert stale
    assert all("by standard input" in text for text in stale.values())


def test_a_plain_file_is_read_again_where_it_was(
    bare: Asked, write: Callable[[str], str], tmp_path: Path
) -> None:
    path = write("Syrup\n\n100 g sugar\n100 g water\n\nBoil.\n")
    make_sheets(path, replace(bare, on=date(2027, 6, 10)), out=tmp_path / "out")
    assert _stale(tmp_path / "out", bare) == {}
    Path(path).write_text("Syrup\n\n100 g sugar\n90 g water\n\nBoil.\n", encoding="utf-8")
    assert _stale(tmp_path / "out", bare)


def test_the_command_that_renews_holds_day_paper_and_answers(tmp_path: Path) -> None:
    run = Run(
        "my text.txt", "formula", "2027-06-10", "2027-06-10", "a4", ("line 4=5 eggs, EU M",),
        "1", "2", (), (), (), (),
    )  # fmt: skip
    folder = tmp_path / "out"
    assert renewing(run, folder) == (
        f"krume sheet 'my text.txt' --out {folder} --paper a4 --on 2027-06-10 "
        "--answer 'line 4=5 eggs, EU M'"
    )


@pytest.mark.parametrize("name", ["empty", "missing"])
def test_a_folder_without_sheets_is_asked_about(demo: Asked, tmp_path: Path, name: str) -> None:
    (tmp_path / "empty").mkdir()
    with pytest.raises(QuestionError, match=r"Make them again|no folder"):
        verify_sheets(tmp_path / name, demo)
