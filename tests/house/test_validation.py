"""The house plugin: what becomes a row, what fails, and when the page counts as whole."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.agreement import Agreement
from tests.validation import ROOT, Cited, read_citation, row_of

REASON = "the source rounds twice"
PLUGIN = ("conftest.py", "agreement.py", "validation.py", "browser.py")

SUITE = """
import pytest
from tests.agreement import agrees, reads

@pytest.mark.source("b1998", "Table 2")
@pytest.mark.parametrize(("x", "printed"), [(2.04, "2.0"), (3.0, "3.0")])
def test_the_second(x, printed):
    assert agrees(x, printed)

@pytest.mark.source("a1998", "Table | 1")
def test_the_first():
    assert reads("cake", "cake")

@pytest.mark.source("c1998", "p. 3")
@pytest.mark.xfail(strict=True, reason="the source rounds twice")
def test_the_accepted_miss():
    assert agrees(2.2, "2.0")

def test_uncited():
    assert True
"""


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A small project with the plugin, the page's own test and the suite above."""
    (tmp_path / "tests" / "house").mkdir(parents=True)
    (tmp_path / "docs").mkdir()
    for name in PLUGIN:
        shutil.copy(ROOT / "tests" / name, tmp_path / "tests")
    own = "house/test_validation_is_current.py"
    shutil.copy(ROOT / "tests" / own, tmp_path / "tests" / own)
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    (tmp_path / "tests" / "test_suite.py").write_text(SUITE, encoding="utf-8")
    return tmp_path


def run_in(project: Path, *words: str, write: bool = False) -> str:
    """What a run of the project's tests prints."""
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", *(words or ("tests",))],
        cwd=project,
        env={"PATH": "/usr/bin:/bin", "KRUME_WRITE_DOCS": "1" if write else ""},
        capture_output=True,
        text=True,
    )
    return done.stdout + done.stderr


def test_a_whole_run_writes_the_page_in_one_order_and_then_agrees_with_it(project: Path) -> None:
    assert "5 passed, 1 xfailed" in run_in(project, write=True)
    rows = (project / "docs" / "validation.md").read_text(encoding="utf-8").splitlines()[-4:]
    where = "test_suite.py test_the"
    assert rows == [
        f"| a1998 | Table \\| 1 | {where}_first | cake | cake |  | agrees |",
        f"| b1998 | Table 2 | {where}_second[2.04-2.0] | 2.0 | 2.040 | 0.8 | agrees |",
        f"| b1998 | Table 2 | {where}_second[3.0-3.0] | 3.0 | 3.000 | 0.0 | agrees |",
        f"| c1998 | p. 3 | {where}_accepted_miss | 2.0 | 2.200 | 4.0 | accepted miss: {REASON} |",
    ]
    assert "5 passed, 1 xfailed" in run_in(project)


def test_a_changed_value_makes_the_page_stale(project: Path) -> None:
    run_in(project, write=True)
    suite = project / "tests" / "test_suite.py"
    suite.write_text(SUITE.replace("2.04", "2.03"), encoding="utf-8")
    told = run_in(project)
    assert "1 failed" in told
    assert "KRUME_WRITE_DOCS=1" in told


def test_a_row_that_no_test_makes_any_more_makes_the_page_stale(project: Path) -> None:
    run_in(project, write=True)
    suite = project / "tests" / "test_suite.py"
    suite.write_text(SUITE.replace(', (3.0, "3.0")', ""), encoding="utf-8")
    assert "1 failed" in run_in(project)


SHARED = ("tests", "-n", "2", "--dist", "loadfile")


def test_several_processes_make_one_table(project: Path) -> None:
    assert "5 passed, 1 xfailed" in run_in(project, *SHARED, write=True)
    page = (project / "docs" / "validation.md").read_text(encoding="utf-8")
    assert "5 passed, 1 xfailed" in run_in(project)
    suite = project / "tests" / "test_suite.py"
    suite.write_text(SUITE.replace(', (3.0, "3.0")', ""), encoding="utf-8")
    told = run_in(project, *SHARED)
    assert ("1 failed" in told, "KRUME_WRITE_DOCS=1" in told) == (True, True)
    assert (project / "docs" / "validation.md").read_text(encoding="utf-8") == page


def test_a_run_of_some_tests_neither_writes_nor_complains_of_what_it_left_out(
    project: Path,
) -> None:
    run_in(project, write=True)
    page = (project / "docs" / "validation.md").read_text(encoding="utf-8")
    assert "failed" not in run_in(project, "tests", "-k", "first or current")
    assert "1 failed" in run_in(project, "tests", "-k", "first or current", write=True)
    assert (project / "docs" / "validation.md").read_text(encoding="utf-8") == page


@pytest.mark.parametrize(
    ("old", "new", "failures", "is_written"),
    [
        ("agrees(x, printed)", "agrees(x + 1, printed)", "3 failed", False),
        ('reads("cake", "cake")', "missing_name", "2 failed", False),
        ("assert True", "assert False", "1 failed", True),
    ],
)
def test_a_failing_cited_test_keeps_the_page_from_being_written(
    project: Path, old: str, new: str, failures: str, is_written: bool
) -> None:
    suite = project / "tests" / "test_suite.py"
    suite.write_text(SUITE.replace(old, new), encoding="utf-8")
    assert failures in run_in(project, write=True)
    assert (project / "docs" / "validation.md").exists() is is_written


def test_a_cited_test_that_compares_nothing_fails(project: Path) -> None:
    suite = project / "tests" / "test_suite.py"
    suite.write_text(SUITE.replace('reads("cake", "cake")', "True"), encoding="utf-8")
    assert "compares nothing" in run_in(project, "tests/test_suite.py")


def test_a_miss_that_agrees_after_all_fails(project: Path) -> None:
    suite = project / "tests" / "test_suite.py"
    suite.write_text(SUITE.replace("2.2", "2.0"), encoding="utf-8")
    assert "[XPASS(strict)]" in run_in(project, "tests/test_suite.py")


@pytest.mark.parametrize("words", [(), ("key",), ("", "p. 1"), ("key", "p. 1", "more")])
def test_a_citation_is_a_key_and_a_place(words: tuple[str, ...]) -> None:
    with pytest.raises(pytest.UsageError, match="write source"):
        read_citation("tests/test_x.py::test_y", pytest.mark.source(*words).mark)


def test_a_row_cannot_break_the_table() -> None:
    found = Agreement("1\n2", "1|2", None, None, None, holds=False)
    row = row_of(Cited("a test", "key", "p. 1"), found, "")
    assert row.line == "| key | p. 1 | a test | 1 2 | 1\\|2 |  | MISS |"
