"""Imports point one way, through doors, and stay light."""

import ast
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.house.source import ROOT, SRC, Module, modules

HEAVY = (
    "numpy",
    "scipy",
    "pandas",
    "ortools",
    "rich",
    "click",
    "lark",
    "rapidfuzz",
    "typst",
    "jinja2",
    "sqlite3",
)


def past_the_door(module: Module) -> Iterator[str]:
    """Each import of another folder's module past that folder's door."""
    for node in ast.walk(module.tree):
        named = [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
        if isinstance(node, ast.ImportFrom) and node.module:
            named = [node.module]
        for name in named:
            parts = name.split(".")
            if parts[0] == "krume" and len(parts) > 2 and parts[1] != module.folder:
                yield f"{module.at(node)} imports {name}: import from {'.'.join(parts[:2])}"


def contracts_told(folder: Path) -> tuple[int, str]:
    """Exit code and words of the import checker over a source tree."""
    tool = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run(
        [tool, "--no-logo", "--no-cache"],
        cwd=folder,
        env=os.environ | {"PYTHONPATH": str(folder / "src")},
        capture_output=True,
        text=True,
    )
    return done.returncode, done.stdout + done.stderr


def test_imports_keep_every_contract() -> None:
    code, words = contracts_told(ROOT)
    assert code == 0, words


@pytest.mark.parametrize(
    ("files", "broken"),
    [
        ({"base/far.py": "from krume.cli import main"}, "Imports point down"),
        ({"misplaced/__init__.py": ""}, "Imports point down"),
        (
            {"size/a.py": "from krume.size import b", "size/b.py": "from krume.size import a"},
            "circle",
        ),
        ({"pantry/colours.py": "import rich"}, "command line's libraries"),
        ({"usecases/shortcut.py": "import sqlite3"}, "database stays"),
        ({"cli/paper.py": "import typst"}, "typesetter stays"),
    ],
    ids=["upward", "undeclared", "circle", "rich", "sql", "typst"],
)
def test_a_broken_contract_is_seen(files: dict[str, str], broken: str, tmp_path: Path) -> None:
    shutil.copytree(ROOT / "src", tmp_path / "src", ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / ".importlinter", tmp_path)
    for name, text in files.items():
        path = tmp_path / "src" / "krume" / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(f"{text}\n", encoding="utf-8")
    code, words = contracts_told(tmp_path)
    assert code != 0
    assert any(broken in line for line in words.splitlines() if "BROKEN" in line), words


def test_a_folder_is_entered_by_its_door() -> None:
    assert [past for module in modules() for past in past_the_door(module)] == []


@pytest.mark.parametrize(
    ("line", "is_past"),
    [
        ("from krume.bake.solver import solve", True),
        ("import krume.bake.solver", True),
        ("from krume.bake import solver", False),
        ("from krume.plan.tasks import Task", False),
        ("from krume import __version__", False),
    ],
)
def test_an_import_past_a_door_is_seen(line: str, is_past: bool) -> None:
    module = Module("krume.plan.day", SRC / "plan" / "day.py", line, ast.parse(line))
    assert bool(list(past_the_door(module))) is is_past


def loaded_after(code: str) -> set[str]:
    """Top names of the modules that a fresh interpreter holds after running some code."""
    tail = "\nimport sys; print(*{name.partition('.')[0] for name in sys.modules})"
    done = subprocess.run([sys.executable, "-c", code + tail], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return set(done.stdout.splitlines()[-1].split())


def test_the_door_of_the_library_loads_nothing_heavy() -> None:
    assert loaded_after("import krume") & set(HEAVY) == set()


@pytest.mark.parametrize("words", [["--help"], ["read", "--help"], ["calc", "--help"]])
def test_help_loads_what_it_needs_and_no_more(words: list[str]) -> None:
    code = (
        f"import sys; sys.argv = ['krume', *{words!r}]\n"
        "from krume.cli import main\n"
        "try:\n    code = main()\nexcept SystemExit as end:\n    code = end.code\n"
        "if code: raise RuntimeError(code)"
    )
    heavy = set(HEAVY) - {"click"}
    assert loaded_after(code) & heavy == set()


def test_what_a_fresh_process_loads_is_seen() -> None:
    assert "csv" in loaded_after("import csv")
