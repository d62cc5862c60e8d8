"""Options of a label on its way to paper."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run


def text_of(folder: Path) -> str:
    """The label that was written as plain text."""
    return next(folder.glob("*.txt")).read_text(encoding="utf-8")


def test_everything_typed_stands_on_the_label(run: Run, tmp_path: Path) -> None:
    out = tmp_path / "out"
    done = run(
        "label", "T3", "--market", "eu", "--no-panel", "--out", str(out), "--labels", "roll-102",
        "--made", "2027-06-11", "--made-part", "C2=2027-06-10", "--net", "1574", "--code",
        "270611-1", "--link", "https://cakes.example/t3", "--maker", "A. Baker, 1 Quay, Orl",
    )  # fmt: skip
    assert done.code == 0
    assert sorted(path.suffix for path in out.iterdir()) == [".html", ".json", ".pdf", ".txt"]
    text = text_of(out)
    for said in ("Use by: 12 June 2027.", "1574 g", "Lot 270611-1", "A. Baker, 1 Quay, Orl"):
        assert said in text


@pytest.mark.parametrize("said", ["C2", "=2027-06-10", "C2=soon", "C2=2027-13-01"])
def test_a_part_without_a_day_is_wrong_usage(run: Run, said: str) -> None:
    assert run("label", "T3", "--made-part", said).code == 2


def test_a_part_nobody_has_is_named_with_those_there_are(run: Run) -> None:
    done = run("label", "T3", "--made", "2027-06-11", "--made-part", "C9=2027-06-10")
    assert done.code == 3
    assert "there are: F4, C2, C4, S1" in " ".join(done.err.split())


@pytest.mark.parametrize(
    ("option", "value", "said"),
    [
        ("--net", "0", "no net weight"), ("--net", "-3", "no net weight"),
        ("--net", "nan", "no net weight"), ("--link", "javascript:1", "cannot stand in the code"),
        ("--area", "-5", "no area"), ("--area", "nan", "no area"),
    ],
)  # fmt: skip
def test_what_cannot_be_printed_is_refused_and_nothing_is_written(
    run: Run, tmp_path: Path, option: str, value: str, said: str
) -> None:
    out = tmp_path / "out"
    done = run("label", "T3", "--no-panel", "--out", str(out), option, value)
    assert done.code == 3
    assert said in " ".join(done.err.split())
    assert not out.exists()


def test_the_text_before_a_sale_stands_alone(run: Run) -> None:
    out = run("label", "T3", "--market", "eu", "--before-sale").out
    assert out.startswith("Net-loft ring torte: before you order")
    assert out.rstrip().endswith("Local law decides what else must be told before a sale.")
    both = run("label", "102", "--market", "eu", "--before-sale").out
    assert both.count("before you order") == 3
