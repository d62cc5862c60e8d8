"""Single settings of `studio.toml` changed in place: every other sign of the text stays."""

import json
import re
import tomllib
from collections.abc import Mapping
from typing import cast

from krume.base import InputError, as_text

Setting = str | float | bool | None
"""A value to write; None takes the line out."""

_TABLE = re.compile(r"^\s*\[(?P<name>[^\[\]]+)\]\s*(?:#.*)?$")
_HEAD = re.compile(r"^\s*\[")
_LINE = re.compile(
    r"""^(?P<lead>\s*(?P<key>[A-Za-z0-9_-]+)\s*=\s*)
    (?P<value>"(?:[^"\\]|\\.)*"|'[^']*'|[^\s#"'\[{][^#"'\[{]*?)
    (?P<tail>\s*(?:\#.*)?)$""",
    re.VERBOSE,
)


def with_settings(text: str, table: str, settings: Mapping[str, Setting]) -> str:
    r"""A text with some settings of one table written anew; comments and all others stay.

    >>> with_settings("[oven]\noffset_c = -12 # six readings\n", "oven", {"offset_c": -9.5})
    '[oven]\noffset_c = -9.5 # six readings\n'
    """
    before = _parsed(text)
    lines, end = text.splitlines(keepends=True), _line_end(text)
    start, stop = _span(lines, table)
    if start is None:
        lines = [*lines, *([] if not lines or lines[-1].endswith("\n") else [end])]
        lines += [end, f"[{table}]{end}"] if lines else [f"[{table}]{end}"]
        start, stop = len(lines), len(lines)
    inside = _changed(lines[start:stop], settings, end)
    edited = "".join([*lines[:start], *inside, *lines[stop:]])
    _verify(before, edited, table, settings)
    return edited


def _line_end(text: str) -> str:
    return "\r\n" if "\r\n" in text else "\n"


def _span(lines: list[str], table: str) -> tuple[int | None, int]:
    """Lines between a table's own head and the next head."""
    start: int | None = None
    for number, line in enumerate(lines):
        if start is not None and _HEAD.match(line):
            return start, number
        match = _TABLE.match(line.rstrip("\r\n"))
        if match is not None and match["name"].strip() == table:
            start = number + 1
    return start, len(lines)


def _changed(lines: list[str], settings: Mapping[str, Setting], end: str) -> list[str]:
    """Lines of a table with its settings; a new one stands behind the last setting."""
    left = dict(settings)
    kept: list[str] = []
    for line in lines:
        body = line.rstrip("\r\n")
        match = _LINE.match(body)
        if match is None or match["key"] not in left:
            kept.append(line)
            continue
        value = left.pop(match["key"])
        if value is not None:
            mark = line[len(body) :]
            kept.append(f"{match['lead']}{_written(value)}{match['tail']}{mark}")
    added = [f"{key} = {_written(v)}{end}" for key, v in left.items() if v is not None]
    last = max((n for n, line in enumerate(kept, 1) if line.strip()), default=0)
    if added and last and not kept[last - 1].endswith("\n"):
        kept[last - 1] += end
    return [*kept[:last], *added, *kept[last:]]


def _written(value: Setting) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
    return as_text(cast("float", value), 6)


def _parsed(text: str) -> dict[str, object]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        message = f"studio.toml cannot be read ({error}). Correct that line in its text first."
        raise InputError(message, field="studio.toml", got=str(error)) from error


def _verify(
    before: dict[str, object], edited: str, table: str, settings: Mapping[str, Setting]
) -> None:
    """The edited text must mean exactly what was wanted, or nothing is changed."""
    held = before.get(table, {})
    if isinstance(held, dict):
        wanted = {**held, **settings}
        wanted = {key: value for key, value in wanted.items() if value is not None}
        if _read_back(edited) == {**before, table: wanted}:
            return
    message = (
        f"The table [{table}] of studio.toml is written in a way that cannot be changed line by "
        "line. Edit its text. Nothing was changed."
    )
    raise InputError(message, field="studio.toml", where=f"[{table}]")


def _read_back(edited: str) -> dict[str, object] | None:
    try:
        return tomllib.loads(edited)
    except tomllib.TOMLDecodeError:
        return None
