"""One way to run the command line in this process, and a book with the demo studio."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from jsonschema import Draft202012Validator

from krume.cli import krume_command
from krume.store import Book, add_texts
from krume.usecases import ANSWERS, Asked, command_schema, load_demo


@dataclass(frozen=True, slots=True)
class Said:
    """What a command wrote, and its exit code."""

    code: int
    out: str
    err: str

    @property
    def json(self) -> dict[str, Any]:
        """The one object on standard output; it fits the schema of its command."""
        found = json.loads(self.out)
        assert isinstance(found, dict)
        if found["command"] in ANSWERS:
            Draft202012Validator(command_schema(found["command"]).result).validate(found)
        return found


Run = Callable[..., Said]


@pytest.fixture(scope="session")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A book of its own with the demo studio in it."""
    path = tmp_path_factory.mktemp("cli") / "book"
    load_demo(Asked(book=path))
    return path


@pytest.fixture
def run(book: Path) -> Run:
    """Run a command line on the demo book, as if in a terminal of some width."""

    def runs(*words: str, typed: str | bytes | None = None, columns: int = 80) -> Said:
        env = {"KRUME_BOOK": str(book), "COLUMNS": str(columns)}
        done = CliRunner().invoke(krume_command, [*words], input=typed, env=env)
        return Said(done.exit_code, done.stdout, done.stderr)

    return runs


@pytest.fixture
def write(tmp_path: Path) -> Callable[[str], str]:
    """Write a text to a file of its own; its path."""

    def writes(text: str) -> str:
        path = tmp_path / "text.txt"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return writes


@pytest.fixture
def own_book(tmp_path: Path) -> Callable[[dict[str, str]], Path]:
    """A book that holds just these texts."""

    def makes(files: dict[str, str]) -> Path:
        path = tmp_path / "own-book"
        add_texts(Book(path), {name: text.encode() for name, text in files.items()})
        return path

    return makes
