"""A book with the demo studio, and one way to ask a command for its JSON."""

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Ask = Callable[..., tuple[int, dict[str, Any]]]


def run(*words: str, stdin: str | None = None) -> subprocess.CompletedProcess[str]:
    """The command line in a process of its own, as a person starts it."""
    return subprocess.run(
        [sys.executable, "-m", "krume", *words],
        input=stdin,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )


@pytest.fixture(scope="session")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A book of its own with the demo studio in it."""
    path = tmp_path_factory.mktemp("book")
    done = run("book", "demo", "--book", str(path))
    assert done.returncode == 0, done.stderr
    return path


@pytest.fixture(scope="session")
def ask(book: Path) -> Ask:
    """Exit code and envelope of a command asked with --json on the demo book."""

    def asked(*words: str, stdin: str | None = None) -> tuple[int, dict[str, Any]]:
        done = run(*words, "--json", "--book", str(book), stdin=stdin)
        assert done.stdout.strip(), done.stderr
        return done.returncode, json.loads(done.stdout)

    return asked
