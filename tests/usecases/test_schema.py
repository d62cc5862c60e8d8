"""A schema is made from the types a command answers with, and every real answer fits it."""

from dataclasses import dataclass
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from krume.base import NotFoundError
from krume.usecases import ANSWERS, answer_type, command_schema

CONTRACT = {
    "read": {"name", "family", "lines", "tin", "oven", "steps"},
    "check": {"family", "basis", "total_g", "flour_g", "percent", "findings"},
    "size": {"factor", "options"},
    "sheet": {"files", "held", "checks", "summary"},
    "book": {"counts", "path", "sha256"},
}
INSIDE = {
    "ReadLine": {"read", "amount", "unit", "mass_g", "basis", "ingredient", "part"},
    "ReadOven": {"temp_c", "fan"},
    "CheckFinding": {"code", "value", "low", "high", "status", "text"},
    "SizeFactor": {"by_volume", "by_area"},
    "SizeOption": {"factor", "lines", "eggs", "depth_cm", "fill", "text"},
    "SizeEggs": {"count", "size", "make_up_g"},
    "SheetFile": {"kind", "path"},
}


def schema(command: str) -> dict[str, Any]:
    found: dict[str, Any] = command_schema(command).result
    return found


@pytest.mark.parametrize("command", list(ANSWERS))
def test_a_schema_is_itself_a_valid_one(command: str) -> None:
    Draft202012Validator.check_schema(schema(command))
    assert schema(command)["$schema"].endswith("2020-12/schema")


@pytest.mark.parametrize(("command", "keys"), CONTRACT.items())
def test_the_keys_of_the_contract_are_required(command: str, keys: set[str]) -> None:
    name = answer_type(command).__name__
    assert keys <= set(schema(command)["$defs"][name]["required"])


@pytest.mark.parametrize(("name", "keys"), INSIDE.items())
def test_the_keys_inside_are_required_too(name: str, keys: set[str]) -> None:
    found = [s["$defs"][name] for s in map(schema, CONTRACT) if name in s["$defs"]]
    assert found
    assert all(keys <= set(one["required"]) for one in found)


def answer(**changed: object) -> dict[str, object]:
    whole: dict[str, object] = {
        "krume": 1,
        "command": "book",
        "ok": True,
        "result": {"path": "a", "counts": {"formulas": 1}, "sha256": "0", "added": [],
                   "same": [], "kept": [], "replaced": [], "file": None},
        "problems": [],
        "notices": [],
        "sources": [],
        "made_by": {"krume": "0", "data": "0"},
    }  # fmt: skip
    return whole | changed


PROBLEM = {"code": "a", "where": "b", "read": "c", "ask": "d", "options": []}


def test_a_whole_answer_fits() -> None:
    Draft202012Validator(schema("book")).validate(answer())
    Draft202012Validator(schema("book")).validate(answer(ok=False, result={}, problems=[PROBLEM]))


@pytest.mark.parametrize(
    "changed",
    [
        {"krume": 2},
        {"command": "size"},
        {"result": {}},
        {"result": {"path": "a"}},
        {"problems": [PROBLEM]},
        {"ok": False},
        {"ok": False, "problems": [{"code": "a"}]},
        {"notices": [{"code": "a"}]},
        {"sources": ["a", "a"]},
        {"more": 1},
    ],
)
def test_an_answer_that_breaks_the_contract_does_not_fit(changed: dict[str, object]) -> None:
    assert not Draft202012Validator(schema("book")).is_valid(answer(**changed))


def test_an_unknown_command_is_answered_with_those_there_are() -> None:
    with pytest.raises(NotFoundError, match="There are: read, check"):
        command_schema("cook")


@dataclass(frozen=True, slots=True)
class Unknowable:
    """A result with a field no schema can say."""

    field: set[int]


def test_a_type_that_has_no_schema_is_a_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("krume.usecases.schema.answer_type", lambda _: Unknowable)
    with pytest.raises(TypeError, match="has no schema"):
        command_schema("read")
