"""What the name and the key lines say: tin, oven, makes, baked, density, core."""

from collections.abc import Iterator
from typing import NamedTuple

from krume.base import Interval, Notice, Problem
from krume.design.formula import BakedLine, OvenLine
from krume.design.reader.asking import Asking
from krume.design.reader.classifying import Kind, plain
from krume.design.reader.keylines import (
    KeyLine,
    baked_of,
    core_of,
    density_of,
    family_said,
    minutes_said,
)
from krume.design.reader.ovens import oven_of
from krume.size import Tin, read_tin

_WITH_GRAMS = ("g", "kg", "ml")


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
    head = Head(name=_name(kinds), keys={k.key.word: k.key.value for k in kinds if k.key})
    for kind in kinds:
        if kind.key is not None:
            head = _with_key(head, kind, kind.key, problems, notices)
    return head


def _name(kinds: list[Kind]) -> str | None:
    kind = next((k for k in kinds if k.kind == "name"), None)
    if kind is None:
        return next((k.key.value for k in kinds if k.key and k.key.key == "name"), None)
    text = plain(kind.source).text
    for word in ("title:", "name:", "rezept:", "recipe:", "titel:"):
        if text.casefold().startswith(word):
            text = text[len(word) :]
    return text.strip(" :#=*") or text


def _with_key(
    head: Head, kind: Kind, key: KeyLine, problems: list[Problem], notices: list[Notice]
) -> Head:
    value = key.value
    if key.key == "tin":
        return _with_tin(head, kind, value, problems, notices)
    if key.key == "oven":
        return _with_oven(head, kind, problems, notices)
    fields: dict[str, object] = {
        "makes": {"makes": value},
        "family": {"family": family_said(value)},
        "baked": {"baked": baked_of(kind.source, value)},
        "density": {"density_g_ml": density_of(value)},
        "core": {"core_c": core_of(f"core {value}")},
        "minutes": {"bake_min": minutes_said(value)},
    }.get(key.key, {})  # type: ignore[assignment]
    return head._replace(**fields)  # type: ignore[arg-type]


def _with_tin(
    head: Head, kind: Kind, value: str, problems: list[Problem], notices: list[Notice]
) -> Head:
    where = f"line {kind.number}"
    prefix = kind.source[: kind.source.find(value)] if value and value in kind.source else "Tin: "
    tins = list(head.tins)
    for text in _several(value):
        found = read_tin(text, where=where, prefix=prefix)
        problems.extend(found.problems)
        notices.extend(found.notices)
        if found.value is not None:
            tins.append(found.value)
    return head._replace(tins=tuple(tins), tin_line=kind.number)


def _several(value: str) -> Iterator[str]:
    """Tins of one line: `round 20 x 7 cm or square 18 x 7 cm` are two."""
    for text in value.replace(";", " or ").split(" or "):
        if text.strip():
            yield text.strip()


def _with_oven(head: Head, kind: Kind, problems: list[Problem], notices: list[Notice]) -> Head:
    asking = Asking(kind.source)
    oven = oven_of(kind.source, asking, keyed=True, has_grams=True)
    where = f"line {kind.number}"
    problems.extend(Problem(p.code, where, p.read, p.ask, p.options) for p in asking.problems)
    notices.extend(Notice(n.code, n.text, where) for n in asking.notices)
    if head.oven is not None and oven is not None and oven.temp_c is not None:
        stages = (*(head.oven.stages or ((head.oven.temp_c or 0.0, None),)), (oven.temp_c, None))
        oven = OvenLine(head.oven.read, head.oven.temp_c, head.oven.fan, head.oven.temp_interval_c, stages)
    return head._replace(oven=oven or head.oven, oven_line=kind.number)
