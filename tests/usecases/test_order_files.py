"""The files of an order: its sheet in three forms, and what was checked."""

from pathlib import Path

from krume.usecases import Asked, make_sheets


def test_an_orders_sheets_carry_its_hold_and_name_what_opens_it(
    demo: Asked, tmp_path: Path
) -> None:
    answer = make_sheets("101", demo, out=tmp_path / "out")
    assert answer.exit_code == 0
    kinds = {file.kind for file in answer.result.files}
    assert {"order-sheet", "torte-plan", "bench-card", "index"} <= kinds
    (hold,) = answer.result.held
    assert "L-008" in hold.opens
    for file in answer.result.files:
        if file.format == "html":
            assert "L-008" in Path(file.path).read_text(encoding="utf-8"), file.path


def test_a_contradiction_writes_nothing(demo: Asked, tmp_path: Path) -> None:
    answer = make_sheets("102", demo, out=tmp_path / "out")
    assert answer.exit_code == 3
    assert [problem.code for problem in answer.problems] == ["diet-contradiction"]
    assert not (tmp_path / "out").exists()


def test_the_checks_say_what_was_judged(demo: Asked, tmp_path: Path) -> None:
    checks = {c.name: c for c in make_sheets("101", demo, out=tmp_path / "out").result.checks}
    assert checks["diet"].passed is False and checks["cold"].passed is True
