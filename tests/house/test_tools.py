"""The checkers of types and style find nothing."""

import subprocess
import sys

import pytest

from tests.house.source import ROOT

PLACES = ("src", "tests", "run.py", "benchmarks")


@pytest.mark.parametrize(
    "words",
    [
        [
            "mypy",
            "--no-error-summary",
            "--cache-dir",
            ".mypy_cache",
            "src",
            "tests",
            "run.py",
            "benchmarks",
        ],
        ["ruff", "check", "--quiet", "--output-format=concise", *PLACES],
        ["ruff", "format", "--check", "--quiet", *PLACES],
    ],
    ids=["mypy", "ruff", "layout"],
)
def test_a_checker_finds_nothing(words: list[str]) -> None:
    done = subprocess.run([sys.executable, "-m", *words], cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
