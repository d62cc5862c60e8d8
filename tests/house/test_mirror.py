"""The tests mirror the program, so that either is found from the other."""

from tests.house.source import ROOT, SRC, TESTS, modules

UNTESTED = {"__init__", "__main__"}
OWN_SUBJECT = {"house", "contract", "examples"}
FORBIDDEN_NAMES = {"utils", "util", "helpers", "helper", "common", "core", "misc", "manager"}


def test_every_module_has_its_test_module() -> None:
    missing = []
    for module in modules():
        if module.path.stem in UNTESTED:
            continue
        below = module.path.relative_to(SRC)
        wanted = TESTS / below.parent / f"test_{below.stem.lstrip('_')}.py"
        if not wanted.is_file():
            missing.append(str(wanted.relative_to(ROOT)))
    assert missing == []


def test_every_test_module_names_the_module_it_tests() -> None:
    strangers = []
    for path in sorted(TESTS.rglob("test_*.py")):
        below = path.relative_to(TESTS)
        if len(below.parts) == 1 or below.parts[0] in OWN_SUBJECT:
            continue
        subject = path.stem.removeprefix("test_")
        stems = {found.stem.lstrip("_") for found in (SRC / below.parent).glob("*.py")}
        if not any(subject == stem or subject.startswith(f"{stem}_") for stem in stems):
            strangers.append(str(path.relative_to(ROOT)))
    assert strangers == []


def test_no_module_has_a_name_that_says_nothing() -> None:
    named = [*SRC.rglob("*"), *TESTS.rglob("*")]
    vague = [p for p in named if p.stem.removeprefix("test_").lstrip("_") in FORBIDDEN_NAMES]
    assert vague == []
