"""The tests mirror the program, so that either is found from the other.

A test module may look after several small modules of its folder: it then names those beside its
own in `COVERS`.
"""

import ast
from pathlib import Path

from tests.house.source import ROOT, SRC, TESTS, modules

UNTESTED = {"__init__", "__main__"}
OWN_SUBJECT = {"house", "contract", "examples", "journeys"}
# These look at a whole folder at once.
WHOLE_FOLDER = {"test_corpus.py", "test_bad_inputs.py", "test_laws.py"}
FORBIDDEN_NAMES = {"utils", "util", "helpers", "helper", "common", "core", "misc", "manager"}


def covered(test: Path) -> set[str]:
    """The names that a test module lists in `COVERS`."""
    for node in ast.parse(test.read_text(encoding="utf-8")).body:
        if isinstance(node, ast.Assign) and getattr(node.targets[0], "id", "") == "COVERS":
            return set(ast.literal_eval(node.value))
    return set()


def test_every_module_has_its_test_module() -> None:
    missing = []
    for module in modules():
        below = module.path.relative_to(SRC)
        name, folder = below.stem.lstrip("_"), TESTS / below.parent
        if module.path.stem in UNTESTED or (folder / f"test_{name}.py").is_file():
            continue
        if not any(name in covered(test) for test in folder.glob("test_*.py")):
            missing.append(str((folder / f"test_{name}.py").relative_to(ROOT)))
    assert missing == []


def test_what_is_covered_exists_and_has_no_test_module_of_its_own() -> None:
    wrong = []
    for test in sorted(TESTS.rglob("test_*.py")):
        for name in sorted(covered(test)):
            source = SRC / test.parent.relative_to(TESTS) / f"{name}.py"
            if not source.is_file() or (test.parent / f"test_{name}.py").is_file():
                wrong.append(f"{test.relative_to(ROOT)}: {name}")
    assert wrong == []


def test_every_test_module_names_the_module_it_tests() -> None:
    strangers = []
    for path in sorted(TESTS.rglob("test_*.py")):
        below = path.relative_to(TESTS)
        if len(below.parts) == 1 or OWN_SUBJECT & set(below.parts):
            continue
        subject = path.stem.removeprefix("test_")
        stems = {found.stem.lstrip("_") for found in (SRC / below.parent).glob("*.py")}
        named = any(subject == stem or subject.startswith(f"{stem}_") for stem in stems)
        if not named and not covered(path) and path.name not in WHOLE_FOLDER:
            strangers.append(str(path.relative_to(ROOT)))
    assert strangers == []


def test_no_module_has_a_name_that_says_nothing() -> None:
    named = [*SRC.rglob("*"), *TESTS.rglob("*")]
    vague = [p for p in named if p.stem.removeprefix("test_").lstrip("_") in FORBIDDEN_NAMES]
    assert vague == []
