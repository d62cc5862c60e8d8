"""Imports point one way, through doors, and stay light."""

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import grimp
import pytest

from tests.house.source import ROOT

HEAVY = ("numpy", "scipy", "rich", "click", "lark", "rapidfuzz", "typst", "jinja2", "sqlite3")


def past_the_door(graph: grimp.ImportGraph) -> Iterator[str]:
    """Each import of another folder's module past that folder's door."""
    for importer in sorted(graph.modules):
        own = importer.split(".")[:2]
        for imported in sorted(graph.find_modules_directly_imported_by(importer)):
            parts = imported.split(".")
            if len(parts) > 2 and parts[:2] != own:
                yield f"{importer} imports {imported}: import from {'.'.join(parts[:2])}"


def test_imports_keep_every_contract() -> None:
    tool = Path(sys.executable).with_name("lint-imports")
    done = subprocess.run(
        [tool, "--no-logo", "--no-cache"], cwd=ROOT, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_a_folder_is_entered_by_its_door() -> None:
    assert list(past_the_door(grimp.build_graph("krume", cache_dir=None))) == []


def test_an_import_past_a_door_is_seen() -> None:
    graph = grimp.ImportGraph()
    graph.add_import(importer="krume.plan.day", imported="krume.bake.solver")
    graph.add_import(importer="krume.plan.day", imported="krume.bake")
    graph.add_import(importer="krume.bake.oven", imported="krume.bake.solver")
    assert list(past_the_door(graph)) == [
        "krume.plan.day imports krume.bake.solver: import from krume.bake"
    ]


def loaded_after(code: str) -> set[str]:
    """Top names of the modules that a fresh interpreter holds after running some code."""
    tail = "\nimport sys; print(*{name.partition('.')[0] for name in sys.modules})"
    done = subprocess.run(
        [sys.executable, "-c", code + tail], capture_output=True, text=True, check=True
    )
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
