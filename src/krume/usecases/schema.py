"""The JSON Schema of a command's answer, made from the types the command answers with."""

from dataclasses import fields, is_dataclass
from datetime import date, datetime
from decimal import Decimal
from importlib import import_module
from pathlib import PurePath
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from krume.base import NotFoundError, Notice, Problem
from krume.usecases.asking.answer import Answer, Explanation
from krume.usecases.asking.as_json import Json

DIALECT = "https://json-schema.org/draft/2020-12/schema"

_SIMPLE: dict[type, dict[str, Json]] = {
    NoneType: {"type": "null"},
    bool: {"type": "boolean"},
    int: {"type": "integer"},
    float: {"type": "number"},
    Decimal: {"type": "number"},
    str: {"type": "string"},
    date: {"type": "string", "format": "date"},
    datetime: {"type": "string", "format": "date-time"},
}


ANSWERS: dict[str, tuple[str, str]] = {
    "read": ("asking.read", "ReadResult"),
    "check": ("formula.check", "CheckResult"),
    "blend": ("blend.result", "BlendResult"),
    "size": ("formula.size_result", "SizeResult"),
    "vary": ("vary.result", "VaryResult"),
    "slip": ("slip.result", "SlipResult"),
    "bake": ("bake.result", "BakeResult"),
    "load": ("oven.together_result", "TogetherResult"),
    "oven": ("own_oven.result", "OvenResult"),
    "build": ("torte.result", "BuildResult"),
    "fill": ("torte.fill_result", "FillResult"),
    "fridge": ("keep.fridge_result", "FridgeResult"),
    "keep": ("keep.keep", "KeepResult"),
    "plan": ("plan.result", "PlanResult"),
    "eggs": ("eggs.result", "EggsResult"),
    "label": ("label.result", "LabelResult"),
    "gluten": ("label.gluten_result", "GlutenResult"),
    "room": ("pantry.room_list", "RoomListResult"),
    "cost": ("cost.result", "CostResult"),
    "sheet": ("sheets.result", "SheetResult"),
    "trace": ("trace.result", "TraceResult"),
    "calc": ("calc", "SumList"),
    "book": ("book.book", "BookResult"),
}
"""Each command's module of this folder and the type it answers with."""


def answer_type(command: str) -> type:
    """Type a command answers with, its module imported now."""
    module, name = ANSWERS[command]
    found: type = getattr(import_module(f"krume.usecases.{module}"), name)
    return found


def command_schema(command: str) -> Answer[dict[str, Json]]:
    """Schema of everything a command can answer with --json."""
    if command not in ANSWERS:
        message = f"No schema is called '{command}'. There are: {', '.join(ANSWERS)}."
        raise NotFoundError(message, field="COMMAND", got=command, want=", ".join(ANSWERS))
    return Answer(_envelope(command, answer_type(command)))


def _envelope(command: str, kind: type) -> dict[str, Json]:
    names: dict[str, Json] = {}
    results = [_of(kind, names), *(_sums(names) if command == "calc" else [])]
    _allow_explanation(kind, names)
    known: Json = results[0] if len(results) == 1 else {"anyOf": list(results)}
    parts: dict[str, Json] = {
        "krume": {"const": 1},
        "command": {"const": command},
        "ok": {"type": "boolean"},
        "result": {"anyOf": [known, {"type": "object", "maxProperties": 0}]},
        "problems": {"type": "array", "items": _of(Problem, names)},
        "notices": {"type": "array", "items": _of(Notice, names)},
        "sources": {"type": "array", "items": {"type": "string"}, "uniqueItems": True},
        "made_by": {
            "type": "object",
            "properties": {"krume": {"type": "string"}, "data": {"type": "string"}},
            "required": ["krume", "data"],
        },
    }
    return {
        "$schema": DIALECT,
        "title": f"krume {command}",
        "type": "object",
        "properties": parts,
        "required": list(parts),
        "additionalProperties": False,
        "if": {"properties": {"ok": {"const": True}}},
        "then": {"properties": {"result": known, "problems": {"maxItems": 0}}},
        "else": {"properties": {"problems": {"minItems": 1}}},
        "$defs": names,
    }


def _sums(names: dict[str, Json]) -> list[dict[str, Json]]:
    """The answer of each quick sum: its name, what was given, and its own values."""
    from krume.calc import SUMS

    return [
        {
            "type": "object",
            "properties": {
                "sum": {"const": declared.name},
                "inputs": {"type": "object", "additionalProperties": {"type": "string"}},
                "explain": _of(Explanation, names),
                **{output.name: {"description": output.meaning} for output in declared.outputs},
            },
            "required": ["sum", "inputs"],
            "additionalProperties": False,
        }
        for declared in SUMS.values()
    ]


def _allow_explanation(kind: type, names: dict[str, Json]) -> None:
    """A result may hold the explanation of one of its figures beside its own keys."""
    declared = names.get(kind.__name__)
    if isinstance(declared, dict) and isinstance(keys := declared["properties"], dict):
        keys["explain"] = _of(Explanation, names)


def _of(kind: Any, names: dict[str, Json]) -> dict[str, Json]:
    if kind in _SIMPLE:
        return dict(_SIMPLE[kind])
    if isinstance(kind, type) and is_dataclass(kind):
        return _reference(kind, names)
    if isinstance(kind, type) and issubclass(kind, PurePath):
        return {"type": "string"}
    return _composed(kind, names)


def _composed(kind: Any, names: dict[str, Json]) -> dict[str, Json]:
    origin, inner = get_origin(kind), get_args(kind)
    if origin in (Union, UnionType):
        return {"anyOf": [_of(one, names) for one in inner]}
    if origin is Literal:
        return {"enum": list(inner)}
    if origin is tuple:
        return {"type": "array", "items": _of(inner[0], names)}
    if origin is dict:
        return {"type": "object", "additionalProperties": _of(inner[1], names)}
    message = f"{kind} has no schema"
    raise TypeError(message)


def _reference(kind: type, names: dict[str, Json]) -> dict[str, Json]:
    if kind.__name__ not in names:
        names[kind.__name__] = None
        hints = get_type_hints(kind)
        keys: dict[str, Json] = {f.name: _of(hints[f.name], names) for f in fields(kind)}
        names[kind.__name__] = {
            "type": "object",
            "description": (kind.__doc__ or "").strip().partition("\n")[0],
            "properties": keys,
            "required": list(keys),
            "additionalProperties": False,
        }
    return {"$ref": f"#/$defs/{kind.__name__}"}
