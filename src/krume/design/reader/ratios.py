"""Amounts tied to another line: as much sugar as the eggs weigh."""

import re
from collections.abc import Iterator
from dataclasses import replace

from krume.base import Notice, as_text
from krume.design.formula import Line
from krume.design.reader.naming import named

_AS_MUCH = re.compile(
    r"\b(?:as much|the same (?:weight|amount) of|same weight of|equal weights? of|ebenso viel)\s+"
    r"(?P<names>[^\W\d_][^()\d.;]*?)\s*(?:\bas\b.*|[).;].*)?$",
    re.IGNORECASE,
)
_MAY_TIE = re.compile(r"as much|same|equal|ebenso", re.IGNORECASE)
_SPLIT = re.compile(r"\s*,\s*(?:and\s+)?|\s+(?:and|und|&)\s+", re.IGNORECASE)


def with_ratios(lines: list[Line], roles: list[str | None], notices: list[Notice]) -> list[Line]:
    """Lines with those a ratio adds: each follows the egg line it is written on or under."""
    out: list[Line] = []
    seen: set[int] = set()
    for line in lines:
        out.append(line)
        if line.number in seen or line.basis == "ratio" or not _MAY_TIE.search(line.read):
            continue
        seen.add(line.number)
        out.extend(_tied(line, out))
    _match_roles(out, lines, roles)
    return _filled(out, notices)


def _filled(lines: list[Line], notices: list[Notice]) -> list[Line]:
    """Tied lines with the mass of the eggs they follow, where it is known."""
    eggs = [x for x in lines if (x.ingredient or "").startswith("egg") and x.basis != "ratio"]
    masses = [x.mass_g for x in eggs]
    total = sum(m for m in masses if m is not None) if masses and None not in masses else None
    out = []
    for line in lines:
        is_open = line.basis == "ratio" and line.mass_g is None
        out.append(
            replace(line, mass_g=total, status="derived") if is_open and total is not None else line
        )
        if is_open:
            known = "their mass is not known yet" if total is None else f"{as_text(total, 1)} g"
            text = f"{line.name}: as much as the eggs weigh, {known}"
            notices.append(Notice("ratio", text, f"line {line.number}"))
    return out


def _tied(line: Line, before: list[Line]) -> Iterator[Line]:
    match = _AS_MUCH.search(line.read)
    if match is None:
        return
    base = next((x for x in before if (x.ingredient or "").startswith("egg")), line)
    for name in _SPLIT.split(match["names"].strip(" ,)")):
        found = named(name).found
        if found.kind == "known":
            yield Line(
                read=line.read, number=line.number, amount=1.0, unit="ratio", mass_g=None,
                basis="ratio", name=name.strip(), ingredient=found.key, section=line.section,
                note=f"as much as {base.name} weigh",
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
