"""The program's own files, read as text and as syntax; nothing of it is imported here."""

import ast
import csv
from collections.abc import Iterator
from dataclasses import dataclass
from fnmatch import fnmatch
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SRC = ROOT / "src" / "krume"
TESTS = ROOT / "tests"

Function = ast.FunctionDef | ast.AsyncFunctionDef


@dataclass(frozen=True, slots=True)
class Module:
    """One module of the program: its path below `src/krume`, its text and its syntax."""

    name: str
    path: Path
    text: str
    tree: ast.Module

    @property
    def folder(self) -> str:
        """The folder of the work that the module belongs to; empty for the package's own."""
        parts = self.path.relative_to(SRC).parts
        return parts[0] if len(parts) > 1 else ""

    def functions(self) -> Iterator[Function]:
        """All functions and methods, nested ones too."""
        for node in ast.walk(self.tree):
            if isinstance(node, Function):
                yield node

    def public_functions(self) -> Iterator[tuple[str, Function]]:
        """Functions of the module and methods of its classes that do not start with a mark."""
        yield from _public(self.tree.body, "")
        for node in self.tree.body:
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
                yield from _public(node.body, f"{node.name}.")

    def at(self, node: ast.AST) -> str:
        """Where a node stands, as file and line."""
        return f"{self.path.relative_to(ROOT)}:{getattr(node, 'lineno', 1)}"


def _public(body: list[ast.stmt], prefix: str) -> Iterator[tuple[str, Function]]:
    for node in body:
        if isinstance(node, Function) and not node.name.startswith("_"):
            yield prefix + node.name, node


@cache
def modules() -> tuple[Module, ...]:
    """Every module under `src/krume`."""
    found = []
    for path in sorted(SRC.rglob("*.py")):
        text = path.read_text(encoding="utf-8")
        name = ".".join(path.relative_to(SRC.parent).with_suffix("").parts)
        found.append(Module(name.removesuffix(".__init__"), path, text, ast.parse(text)))
    return tuple(found)


@cache
def kept_files() -> tuple[Path, ...]:
    """Every file of the project that `.gitignore` does not leave out."""
    ignored = [line.rstrip("/") for line in (ROOT / ".gitignore").read_text().split()]
    return tuple(sorted(_kept_below(ROOT, [*ignored, ".git"])))


def _kept_below(folder: Path, ignored: list[str]) -> Iterator[Path]:
    for path in folder.iterdir():
        if any(fnmatch(path.name, pattern) for pattern in ignored):
            continue
        if path.is_dir():
            yield from _kept_below(path, ignored)
        else:
            yield path


@cache
def source_keys() -> frozenset[str]:
    """The keys of `data/sources.csv`."""
    with (SRC / "data" / "sources.csv").open(encoding="utf-8", newline="") as table:
        return frozenset(row["key"] for row in csv.DictReader(table))
