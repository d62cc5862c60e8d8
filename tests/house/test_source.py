"""What the program's source never does."""

import ast
from collections.abc import Iterator

import pytest

from tests.house.source import SRC, Module, modules

BROAD = {"Exception", "BaseException"}
# Where a fault of the program is caught once, to be told kindly; the only two.
LAST_RESORTS = {"krume.cli.errors", "krume.web.errors"}
CLOCK_CALLS = {
    *(("datetime", name) for name in ("now", "today", "utcnow")),
    *(("date", name) for name in ("now", "today")),
    *(("time", name) for name in ("time", "time_ns", "localtime", "gmtime")),
}
CLOCK_DOORS = ("krume.usecases.asking.clock", "krume.store.moment")
# What touches the machine: files, the environment, other programs, the network, chance.
OUTSIDE = {
    *("os", "pathlib", "shutil", "tempfile", "socket", "subprocess", "http", "time"),
    *("random", "secrets", "platformdirs", "fcntl", "glob"),
}
PURE_BUT_TABLES = {"evidence"}
UP_FROM_STORE = {"store", "usecases", "cli", "web", ""}
OTHER_WORDS = {"recipe": "formula", "pan": "tin", "todo": "an issue", "fixme": "an issue"}


def broad_excepts(module: Module) -> Iterator[str]:
    """Each handler that catches everything."""
    for node in ast.walk(module.tree):
        if isinstance(node, ast.ExceptHandler):
            named = (
                {n.id for n in ast.walk(node.type) if isinstance(n, ast.Name)}
                if node.type
                else BROAD
            )
            if named & BROAD and module.name not in LAST_RESORTS and not _re_raises(node):
                yield module.at(node)


def _re_raises(handler: ast.ExceptHandler) -> bool:
    last = handler.body[-1]
    return isinstance(last, ast.Raise) and last.exc is None


def test_nothing_catches_everything() -> None:
    assert [place for module in modules() for place in broad_excepts(module)] == []


def test_a_guard_is_never_an_assert() -> None:
    found = [m.at(n) for m in modules() for n in ast.walk(m.tree) if isinstance(n, ast.Assert)]
    assert found == []


def calls(module: Module) -> Iterator[tuple[ast.Call, str, str]]:
    """Each call with its owner's name (or nothing) and its own."""
    for node in ast.walk(module.tree):
        if not isinstance(node, ast.Call):
            continue
        if isinstance(node.func, ast.Name):
            yield node, "", node.func.id
        elif isinstance(node.func, ast.Attribute):
            owner = node.func.value
            name = owner.attr if isinstance(owner, ast.Attribute) else getattr(owner, "id", "")
            yield node, name, node.func.attr


def test_nothing_prints_past_the_command_line() -> None:
    found = [
        m.at(node)
        for m in modules()
        for node, owner, name in calls(m)
        if (owner, name) == ("", "print")
    ]
    assert found == []


def test_only_the_clock_door_reads_the_clock() -> None:
    found = [
        m.at(node)
        for m in modules()
        if m.name not in CLOCK_DOORS
        for node, owner, name in calls(m)
        if (owner, name) in CLOCK_CALLS
    ]
    assert found == []


def imported(module: Module) -> Iterator[tuple[ast.stmt, str]]:
    """Each import outside type checking, by the top name of what it imports."""
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Import):
            yield from ((node, alias.name.partition(".")[0]) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node, node.module.partition(".")[0]


def test_below_the_store_nothing_touches_the_machine() -> None:
    found = [
        f"{m.at(node)} {name}"
        for m in modules()
        if m.folder not in UP_FROM_STORE | PURE_BUT_TABLES
        for node, name in imported(m)
        if name in OUTSIDE
    ]
    assert found == []


def test_below_the_store_nothing_opens_a_file() -> None:
    found = [
        m.at(node)
        for m in modules()
        if m.folder not in UP_FROM_STORE | PURE_BUT_TABLES
        for node, owner, name in calls(m)
        if (owner, name) == ("", "open") or (owner and name in {"read_text", "write_text"})
    ]
    assert found == []


def names(module: Module) -> Iterator[tuple[ast.AST, str]]:
    """Each name that the module gives to something."""
    for node in ast.walk(module.tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef):
            yield node, node.name
        elif isinstance(node, ast.arg):
            yield node, node.arg
        elif isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store):
            yield node, node.id


def test_one_thing_has_one_word() -> None:
    found = [
        f"{m.at(node)} {name}: say {OTHER_WORDS[word]}"
        for m in modules()
        for node, name in names(m)
        for word in name.lower().split("_")
        if word in OTHER_WORDS
    ]
    assert found == []


def test_every_module_says_what_it_is_for() -> None:
    assert [m.name for m in modules() if not ast.get_docstring(m.tree)] == []


def test_every_public_function_and_class_has_a_docstring() -> None:
    bare = [
        f"{m.at(node)} {name}"
        for m in modules()
        for name, node in [*m.public_functions(), *_classes(m)]
        if not ast.get_docstring(node)
    ]
    assert bare == []


def _classes(module: Module) -> Iterator[tuple[str, ast.ClassDef]]:
    for node in module.tree.body:
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            yield node.name, node


@pytest.mark.parametrize(
    ("line", "reads"),
    [
        ("datetime.datetime.now()", True),
        ("datetime.now(tz)", True),
        ("date.today()", True),
        ("time.time()", True),
        ("datetime.time(8, 0)", False),
        ("usecases.now(studio)", False),
    ],
)
def test_a_look_at_the_clock_is_seen(line: str, reads: bool) -> None:
    module = Module("m", SRC / "m.py", line, ast.parse(line))
    assert any((owner, name) in CLOCK_CALLS for _, owner, name in calls(module)) is reads


@pytest.mark.parametrize(
    ("handler", "is_broad"),
    [
        ("except Exception: pass", True),
        ("except (OSError, BaseException) as e: raise ValueError from e", True),
        ("except: pass", True),
        ("except Exception:\n    undo()\n    raise", False),
        ("except OSError: pass", False),
    ],
)
def test_a_broad_except_is_seen(handler: str, is_broad: bool) -> None:
    text = f"try: work()\n{handler}"
    module = Module("krume.m", SRC / "m.py", text, ast.parse(text))
    assert bool(list(broad_excepts(module))) is is_broad
