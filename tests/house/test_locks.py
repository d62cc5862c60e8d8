"""The locks hold versions and hashes, agree with one another, and name no machine."""

import re
import tomllib
from itertools import pairwise

import pytest

from tests.house.source import ROOT

LOCKS = ROOT / "locks"
PIN = re.compile(r"^([a-z0-9-]+)==([^ ;\\]+)(?: ; ([^\\]+?))? \\$")
HASH = re.compile(r"^    --hash=sha256:[0-9a-f]{64}(?: \\)?$")


def pins(name: str) -> dict[tuple[str, str], str]:
    """Version by package and marker."""
    lines = (LOCKS / name).read_text(encoding="utf-8").splitlines()
    return {(m[1], m[3] or ""): m[2] for line in lines if (m := PIN.match(line))}


def wanted(name: str) -> set[str]:
    """The packages that an input file asks for."""
    lines = (LOCKS / name).read_text(encoding="utf-8").splitlines()
    return {re.split(r"[\[<>=]", line)[0] for line in lines if line and not line.startswith("-")}


@pytest.mark.parametrize("name", ["run.txt", "test.txt", "run.in", "test.in"])
def test_no_address_of_an_index_stands_in_a_lock(name: str) -> None:
    assert "://" not in (LOCKS / name).read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["run.txt", "test.txt"])
def test_a_lock_holds_pins_with_hashes_and_nothing_else(name: str) -> None:
    lines = (LOCKS / name).read_text(encoding="utf-8").splitlines()
    assert [line for line in lines if not PIN.match(line) and not HASH.match(line)] == []
    following = [after for line, after in pairwise(lines) if PIN.match(line)]
    assert all(HASH.match(line) for line in following)
    assert len(following) == len(pins(name)) > 0


@pytest.mark.parametrize(("source", "lock"), [("run.in", "run.txt"), ("test.in", "test.txt")])
def test_everything_asked_for_is_pinned(source: str, lock: str) -> None:
    assert wanted(source) <= {package for package, _ in pins(lock)}


def test_the_tests_run_on_the_very_versions_that_people_get() -> None:
    assert pins("run.txt").items() <= pins("test.txt").items()


def test_the_wheel_asks_for_what_the_lock_pins() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    asked = {re.split(r"[\[<>=~!; ]", line)[0] for line in project["dependencies"]}
    assert asked == wanted("run.in")
