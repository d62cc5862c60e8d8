"""Single settings of `studio.toml` changed in place: every other sign of the text stays."""

import json
import re
import tomllib
from collections.abc import Mapping
from typing import cast

from krume.base import InputError, as_text

Setting = str | float | bool | None
"""A value to write; None takes the line out."""

_TABLE = re.compile(r"^\s*(?P<open>\[\[?)(?P<name>[^\[\]]+)\]\]?\s*(?:#.*)?$")
_HEAD = re.compile(r"^\s*\[")
_LINE = re.compile(
    r"""^(?P<lead>\s*(?P<key>[A-Za-z0-9_-]+)\s*=\s*)
    (?P<value>"(?:[^"\\]|\\.)*"|'[^']*'|[^\s#"'\[{][^#"'\[{]*?)
    (?P<tail>\s*(?:\#.*)?)$""",
    re.VERBOSE,
)


def with_settings(
    text: str, table: str, settings: Mapping[str, Setting], *, is_listed: bool = False
) -> str:
    r"""A text with some settings of one table written anew; comments and all others stay.

    Table "" is what stands before the first head. Of a listed table, [[scales]], the first counts.

    >>> with_settings("[oven]\noffset_c = -12 # six readings\n", "oven", {"offset_c": -9.5})
    '[oven]\noffset_c = -9.5 # six readings\n'
    """
    before = _parsed(text)
    lines, end = text.splitlines(keepends=True), _line_end(text)
    start, stop = _span(lines, table, is_listed=is_listed)
    if start is None:
        head = f"[[{table}]]{end}" if is_listed else f"[{table}]{end}"
        lines = [*lines, *([] if not lines or lines[-1].endswith("\n") else [end])]
        lines += [end, head] if lines else [head]
        start, stop = len(lines), len(lines)
    inside = _changed(lines[start:stop], settings, end)
    edited = "".join([*lines[:start], *inside, *lines[stop:]])
    wanted = _wanted(before, table, settings, is_listed=is_listed)
    if wanted is None or _read_back(edited) != wanted:
        raise _too_clever(table)
    return edited


def _line_end(text: str) -> str:
    return "\r\n" if "\r\n" in text else "\n"


def _span(lines: list[str], table: str, *, is_listed: bool) -> tuple[int | None, int]:
    """Lines between a table's own head and the next head."""
    start: int | None = None if table else 0
    for number, line in enumerate(lines):
        if start is not None and _HEAD.match(line):
            return start, number
        match = _TABLE.match(line.rstrip("\r\n"))
        is_kind = match is not None and (match["open"] == "[[") is is_listed
        if is_kind and match is not None and match["name"].strip() == table:
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


def _wanted(
    before: dict[str, object], table: str, settings: Mapping[str, Setting], *, is_listed: bool
) -> dict[str, object] | None:
    """What the edited text must mean; None where the table is no table."""
    held = before.get(table, [] if is_listed else {}) if table else before
    if is_listed and isinstance(held, list):
        first = held[0] if held else {}
        changed = _with(first, settings)
        return None if changed is None else {**before, table: [changed, *held[1:]]}
    changed = _with(held, settings)
    return changed if changed is None or not table else {**before, table: changed}


def _with(held: object, settings: Mapping[str, Setting]) -> dict[str, object] | None:
    if not isinstance(held, dict):
        return None
    return {key: value for key, value in {**held, **settings}.items() if value is not None}


def _too_clever(table: str) -> InputError:
    where = f"The table [{table}]" if table else "The beginning"
    message = (
        f"{where} of studio.toml is written in a way that cannot be changed line by line. Edit its "
        "text. Nothing was changed."
    )
    return InputError(message, field="studio.toml", where=f"[{table}]")


def _read_back(edited: str) -> dict[str, object] | None:
    try:
        return tomllib.loads(edited)
    except tomllib.TOMLDecodeError:
        return None
