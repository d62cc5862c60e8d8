"""Amounts tied to another line: as much sugar as the eggs weigh."""

import re
from collections.abc import Iterator

from krume.base import Notice
from krume.design.formula import Line
from krume.design.reader.naming import named

_AS_MUCH = re.compile(
    r"\b(?:as much|the same (?:weight|amount) of|same weight of|equal weights? of|ebenso viel)\s+"
    r"(?P<names>[^\W\d_][^()\d.;]*?)\s*(?:\bas\b.*|[).;].*)?$",
    re.IGNORECASE,
)
_SPLIT = re.compile(r"\s*,\s*(?:and\s+)?|\s+(?:and|und|&)\s+", re.IGNORECASE)


def with_ratios(lines: list[Line], roles: list[str | None], notices: list[Notice]) -> list[Line]:
    """Lines with those a ratio adds: each follows the egg line it is written on or under."""
    out: list[Line] = []
    seen: set[int] = set()
    for line in lines:
        out.append(line)
        if line.number in seen or "as much" not in line.read.casefold() and "same" not in line.read.casefold():
            continue
        seen.add(line.number)
        for made in _tied(line, out):
            out.append(made)
            text = f"{made.name}: as much as line {_egg_line(out)} weighs, not a fixed amount"
            notices.append(Notice("ratio", text, f"line {line.number}"))
    _match_roles(out, lines, roles)
    return out


def _egg_line(lines: list[Line]) -> int:
    return next((x.number for x in lines if x.basis == "egg" or (x.ingredient or "").startswith("egg")), lines[0].number)


def _tied(line: Line, before: list[Line]) -> Iterator[Line]:
    match = _AS_MUCH.search(line.read)
    if match is None:
        return
    base = next((x for x in before if (x.ingredient or "").startswith("egg")), line)
    for name in _SPLIT.split(match["names"].strip(" ,)")):
        found = named(name).found
        if found.kind == "known":
            yield Line(
                read=line.read, number=line.number, amount=1.0, unit="ratio", mass_g=base.mass_g,
                basis="ratio", name=name.strip(), ingredient=found.key, section=line.section,
                note=f"as much as {base.name} weigh", mass_interval_g=base.mass_interval_g,
                status=base.status, source=base.source,
            )  # fmt: skip


def _match_roles(out: list[Line], lines: list[Line], roles: list[str | None]) -> None:
    if len(out) == len(lines):
        return
    from krume.pantry import ingredient

    known = dict(zip(map(id, lines), roles, strict=True))
    roles[:] = [
        known[id(x)] if id(x) in known else ingredient(x.ingredient).role if x.ingredient else None
        for x in out
    ]
