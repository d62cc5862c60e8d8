"""A child with another blend: what it says of its parent, and how it follows it."""

import re
from collections.abc import Sequence
from dataclasses import replace

from krume.design.formula import Formula, Line
from krume.design.reader import read
from krume.design.varying.child_text import HEAD_KEYS
from krume.design.varying.lineage import Lineage, fingerprint, lines_as_were
from krume.design.varying.matching import role_of
from krume.size import round_masses

_FLOURS = ("flour", "starch")
_ENDS = re.compile(r"(\r\n|\n|\r)")
_DUST_G = 1e-6


def blend_lineage(parent_name: str, parent: Formula, child: Formula) -> Lineage:
    """What a child with another blend says of its parent.

    `child` is its text read back; its flours and starches are the blend it was made with.
    """
    return Lineage(
        parent=parent_name,
        blend=flour_phrases(child.lines),
        parent_lines=fingerprint(parent.lines),
        own_lines=fingerprint(child.lines),
        parent_was=lines_as_were(parent.lines),
    )


def flour_phrases(lines: Sequence[Line]) -> tuple[str, ...]:
    """The flours and starches among lines, as they are typed."""
    return tuple(" ".join(line.read.split()) for line in lines if _is_flour(line))


def with_head(text: str, lineage: Lineage) -> str:
    r"""A text with the lines that name its parent below its first one, an older head gone.

    >>> print(with_head("Kid\nParent: Old\n\n40 g sugar\n", Lineage("F1")), end="")
    Kid
    Parent: F1
    <BLANKLINE>
    40 g sugar
    """
    end = "\r\n" if "\r\n" in text else "\n"
    pieces = _ENDS.split(text)
    lines = list(zip(pieces[0::2], [*pieces[1::2], ""], strict=True))
    kept = [line + e for line, e in lines if _key(line) not in HEAD_KEYS]
    first = next((n for n, line in enumerate(kept) if line.strip()), 0)
    head = [f"{line}{end}" for line in lineage.key_lines()]
    return "".join((*kept[: first + 1], *head, *kept[first + 1 :]))


def _key(line: str) -> str:
    return line.partition(":")[0].strip().casefold()


def blended(parent: Formula, lineage: Lineage, *, step_g: float) -> tuple[Line, ...]:
    """Lines of a child with its own blend, all else the parent's.

    Where the parent has more flour than when the child was made, the blend grows alike, in steps
    of the scale. The blend itself is not found anew.
    """
    own = _lines(lineage.blend)
    was_g, now_g = _flour_g(_lines(lineage.parent_was)), _flour_g(parent.lines)
    ratio = now_g / was_g if was_g and now_g else 1.0
    own = own if abs(now_g - was_g) <= _DUST_G else _grown(own, ratio, step_g)
    at = next((n for n, line in enumerate(parent.lines) if _is_flour(line)), 0)
    section = parent.lines[at].section if parent.lines else None
    rest = [line for line in parent.lines if not _is_flour(line)]
    before = sum(not _is_flour(line) for line in parent.lines[:at])
    placed = [replace(line, section=section, number=0) for line in own]
    return (*rest[:before], *placed, *rest[before:])


def _lines(phrases: Sequence[str]) -> tuple[Line, ...]:
    return read("\n".join(("Blend", "", *phrases, ""))).value.lines


def _grown(lines: Sequence[Line], ratio: float, step_g: float) -> tuple[Line, ...]:
    masses = round_masses([(line.mass_g or 0.0) * ratio for line in lines], step_g=step_g).masses_g
    phrases = [
        f"{mass:g} g {line.name}{f', {line.note}' if line.note else ''}"
        for line, mass in zip(lines, masses, strict=True)
    ]
    return _lines(phrases)


def _flour_g(lines: Sequence[Line]) -> float:
    return sum(line.mass_g or 0.0 for line in lines if _is_flour(line))


def _is_flour(line: Line) -> bool:
    return role_of(line) in _FLOURS
