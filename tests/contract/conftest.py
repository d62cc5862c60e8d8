"""A book with the demo studio, and one way to ask a command for its JSON."""

import json
import subprocess
import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import pytest

Ask = Callable[..., tuple[int, dict[str, Any]]]


class Said(NamedTuple):
    """What one command line left behind."""

    code: int
    stdout: str
    stderr: str

    @property
    def answer(self) -> dict[str, Any]:
        """The JSON object on stdout."""
        value: dict[str, Any] = json.loads(self.stdout)
        return value


Many = Callable[..., list[Said]]

# Runs each list of words as the command `krume` does, with its own standard streams.
DRIVER = """
import io, json, sys
from krume.cli.group import krume_command, run

said = []
real = sys.stdout
for words in json.loads(sys.stdin.read()):
    sys.stdout = out = io.TextIOWrapper(io.BytesIO(), encoding="utf-8", write_through=True)
    sys.stderr = err = io.TextIOWrapper(io.BytesIO(), encoding="utf-8", write_through=True)
    code = run(krume_command, words, "krume")
    texts = [stream.buffer.getvalue().decode() for stream in (out, err)]
    said.append([code, *texts])
sys.stdout = real
real.write(json.dumps(said))
"""


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
def plain(book: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The same book as it is written out: a folder of plain texts and tables."""
    path = tmp_path_factory.mktemp("out") / "plain"
    done = run("book", "export", str(path), "--book", str(book))
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


@pytest.fixture(scope="session")
def told(ask: Ask) -> Ask:
    """As `ask`, but the same words are asked once a session: only for what writes nothing."""
    return cache(ask)


@pytest.fixture(scope="session")
def many(tmp_path_factory: pytest.TempPathFactory) -> Many:
    """Many command lines in one process of their own: exit code, stdout and stderr of each."""
    driver = tmp_path_factory.mktemp("driver") / "driver.py"
    driver.write_text(DRIVER, encoding="utf-8")

    def asked(calls: list[list[str]], *, cwd: Path | None = None) -> list[Said]:
        done = subprocess.run(
            [sys.executable, str(driver)],
            input=json.dumps(calls),
            capture_output=True,
            text=True,
            encoding="utf-8",
            cwd=cwd,
            check=True,
        )
        return [Said(*row) for row in json.loads(done.stdout)]

    return asked
