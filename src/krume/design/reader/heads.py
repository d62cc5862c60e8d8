"""What the name and the key lines say: tin, oven, makes, baked, density, core."""

import re
from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Any, NamedTuple

from krume.base import Interval, Notice, Problem, Read
from krume.design.formula import BakedLine, OvenLine
from krume.design.reader.asking import Asking
from krume.design.reader.classifying import Kind
from krume.design.reader.headings import heading_of, plain
from krume.design.reader.keyfigures import baked_said, core_said, density_said, minutes_read
from krume.design.reader.keylines import KeyLine, family_said
from krume.design.reader.ovens import oven_of
from krume.size import Tin, read_tin

_WITH_GRAMS = ("g", "kg", "ml")
_TURNING = re.compile(r"[\u202a-\u202e\u2066-\u2069]")
"""Signs without a shape that turn the letters of a line round."""


class Head(NamedTuple):
    """The name and the key lines of a text."""

    name: str | None = None
    family: str | None = None
    tins: tuple[Tin, ...] = ()
    tin_line: int | None = None
    oven: OvenLine | None = None
    oven_line: int | None = None
    makes: str | None = None
    baked: BakedLine | None = None
    density_g_ml: float | None = None
    core_c: float | None = None
    bake_min: Interval | None = None
    keys: dict[str, str] = {}  # noqa: RUF012


def head_of(kinds: list[Kind], problems: list[Problem], notices: list[Notice]) -> Head:
    """Read the name and all key lines, with their questions."""
    name = _name(kinds)
    name = None if name is None else _TURNING.sub("", name)
    head = Head(name=name, keys={k.key.word: k.key.value for k in kinds if k.key})
    for kind in kinds:
        if kind.key is not None and kind.key.key in _READ_KEYS:
            head = _with_key(head, kind, kind.key, problems, notices)
    return head


_READ_KEYS = frozenset(("tin", "oven", "makes", "family", "baked", "density", "core", "minutes"))


def _name(kinds: list[Kind]) -> str | None:
    kind = next((k for k in kinds if k.kind == "name"), None)
    if kind is None:
        run = _name_before_run(kinds)
        if run is not None:
            return run
        return next((k.key.value for k in kinds if k.key and k.key.key == "name"), None)
    text = plain(kind.source).text
    for word in ("title:", "name:", "rezept:", "recipe:", "titel:"):
        if text.casefold().startswith(word):
            text = text[len(word) :]
    return text.strip(" :#=*") or text


def _name_before_run(kinds: list[Kind]) -> str | None:
    """`Quick sponge: 3 eggs, 90 g sugar` names the cake before its colon."""
    first = next((k for k in kinds if k.kind != "blank"), None)
    if (
        first is None
        or first.reading is None
        or len(first.reading.entries) < 2
        or ":" not in first.source
    ):
        return None
    words = plain(first.source).text.partition(":")[0].strip()
    return (
        words
        if words
        and not any(s.isdigit() for s in words)
        and heading_of(f"{words}:") == ("section", words)
        else None
    )


def _with_key(
    head: Head, kind: Kind, key: KeyLine, problems: list[Problem], notices: list[Notice]
) -> Head:
    value = key.value
    if key.key == "tin":
        return _with_tin(head, kind, value, problems, notices)
    if key.key == "oven":
        return _with_oven(head, kind, problems, notices)
    if key.key == "makes":
        return head._replace(makes=value)
    if key.key == "family":
        return head._replace(family=family_said(value))
    found = _FIGURES[key.key](kind.source, value)
    _told(found, kind, problems, notices)
    return head._replace(**{_FIELDS[key.key]: found.value})


_FIELDS = {
    "baked": "baked", "density": "density_g_ml", "core": "core_c", "minutes": "bake_min",
}  # fmt: skip
_FIGURES: dict[str, Callable[[str, str], Read[Any]]] = {
    "baked": baked_said, "density": density_said, "core": core_said, "minutes": minutes_read,
}  # fmt: skip


def _told(found: Read[Any], kind: Kind, problems: list[Problem], notices: list[Notice]) -> None:
    """What a key line asks and says, at its line."""
    where = f"line {kind.number}"
    problems.extend(Problem(p.code, where, p.read, p.ask, p.options) for p in found.problems)
    notices.extend(Notice(n.code, n.text, where) for n in found.notices)


def _with_tin(
    head: Head, kind: Kind, value: str, problems: list[Problem], notices: list[Notice]
) -> Head:
    found = _tins_of(kind.source, value)
    _told(found, kind, problems, notices)
    return head._replace(tins=(*head.tins, *found.value), tin_line=kind.number)


@lru_cache(maxsize=4096)
def _tins_of(source: str, value: str) -> Read[tuple[Tin, ...]]:
    prefix = source[: source.find(value)] if value and value in source else "Tin: "
    found = [read_tin(text, prefix=prefix) for text in _several(value)]
    return Read(
        tuple(one.value for one in found if one.value is not None),
        tuple(problem for one in found for problem in one.problems),
        tuple(notice for one in found for notice in one.notices),
    )


@lru_cache(maxsize=4096)
def _oven_of(source: str) -> Read[OvenLine | None]:
    asking = Asking(source)
    oven = oven_of(source, asking, keyed=True, has_grams=True)
    return Read(oven, tuple(asking.problems), tuple(asking.notices))


def _several(value: str) -> Iterator[str]:
    """Tins of one line: `round 20 x 7 cm or square 18 x 7 cm` are two."""
    for text in value.replace(";", " or ").split(" or "):
        if text.strip():
            yield text.strip()


def _with_oven(head: Head, kind: Kind, problems: list[Problem], notices: list[Notice]) -> Head:
    found = _oven_of(kind.source)
    oven = found.value
    _told(found, kind, problems, notices)
    if head.oven is not None and oven is not None and oven.temp_c is not None:
        stages = (*(head.oven.stages or ((head.oven.temp_c or 0.0, None),)), (oven.temp_c, None))
        oven = OvenLine(
            head.oven.read, head.oven.temp_c, head.oven.fan, head.oven.temp_interval_c, stages
        )
    return head._replace(oven=oven or head.oven, oven_line=kind.number)
