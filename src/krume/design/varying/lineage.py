"""How a child names its parent: plain key lines that any reader keeps."""

import hashlib
import re
from dataclasses import dataclass

from krume.base import as_text
from krume.design.formula import Formula, Line
from krume.design.reader import read

_BETWEEN = "; "
_DIGITS = 8
_EGGS = re.compile(r"^\s*(?:egg|eier)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Lineage:
    """What a child says of itself: its parent, its wishes, and what both were when it was made.

    `parent_lines` and `own_lines` are fingerprints; `parent_was` are the parent's lines of then.
    `blend` are the flours and starches of a child that has another blend; `sized` is the factor
    and the tin of one that has another size.
    """

    parent: str
    swaps: tuple[str, ...] = ()
    cuts: tuple[str, ...] = ()
    added: tuple[str, ...] = ()
    fat: str = ""
    parent_lines: str = ""
    own_lines: str = ""
    parent_was: tuple[str, ...] = ()
    blend: tuple[str, ...] = ()
    sized: str = ""

    def key_lines(self) -> tuple[str, ...]:
        """The lines of the child's head."""
        said = (
            ("Parent", self.parent),
            ("Swap", _BETWEEN.join(self.swaps)),
            ("Less", _BETWEEN.join(self.cuts)),
            ("With added", _BETWEEN.join(self.added)),
            ("Made up with", self.fat),
            ("Own blend", _BETWEEN.join(self.blend)),
            ("Sized", self.sized),
            ("Parent lines", self.parent_lines),
            ("Own lines", self.own_lines),
            ("Parent was", _BETWEEN.join(self.parent_was)),
        )
        return tuple(f"{key}: {value}" for key, value in said if value)


def lineage_of(formula: Formula) -> Lineage | None:
    r"""What a formula says of its parent; None where it names none.

    >>> lineage_of(read("Kid\nParent: F1\nSwap: a = b; c = d\n\n40 g sugar\n").value).swaps
    ('a = b', 'c = d')
    """
    said = {word.casefold(): value for word, value in formula.keys.items()}
    if "parent" not in said:
        return None
    return Lineage(
        parent=said["parent"],
        swaps=_listed(said.get("swap", "")),
        cuts=_listed(said.get("less", "")),
        added=_listed(said.get("with added", "")),
        fat=said.get("made up with", ""),
        parent_lines=said.get("parent lines", ""),
        own_lines=said.get("own lines", ""),
        parent_was=_listed(said.get("parent was", "")),
        blend=_listed(said.get("own blend", "")),
        sized=said.get("sized", ""),
    )


def _listed(text: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in text.split(_BETWEEN.strip()) if part.strip())


def fingerprint(lines: tuple[Line, ...]) -> str:
    r"""Eight signs that change with any name, part or gram of the lines, and with nothing else.

    >>> one, other = (read(f"A\n\n{text}\n").value.lines for text in ("40 g sugar", "41 g sugar"))
    >>> fingerprint(one) == fingerprint(one), fingerprint(one) == fingerprint(other)
    (True, False)
    """
    text = "\n".join(
        f"{line.section or ''}|{line.part or ''}|{line.ingredient or line.name}|{_mass(line)}"
        for line in lines
    )
    return hashlib.sha256(text.encode()).hexdigest()[:_DIGITS]


def _mass(line: Line) -> str:
    return "?" if line.mass_g is None else as_text(line.mass_g, 4)


def lines_as_were(lines: tuple[Line, ...]) -> tuple[str, ...]:
    """The lines of a parent as they go into a child's head, headings too, one phrase each."""
    phrases: list[str] = []
    section: str | None = None
    for line in lines:
        if line.section is not None and line.section != section:
            phrases.append(f"{line.section.rstrip(':')}:")
        section = line.section
        phrases.append(" ".join(line.read.replace(";", ",").split()))
    return tuple(phrases)


def parent_as_was(lineage: Lineage, parent: Formula, *, eggs_region: str | None) -> Formula | None:
    """The parent a child was made from, read again; None where its lines no longer say that."""
    if fingerprint(parent.lines) == lineage.parent_lines:
        return parent
    head = [x.text for x in parent.source_lines if x.kind == "key" and _EGGS.match(x.text)]
    text = "\n".join((parent.name or "Parent", *head, "", *lineage.parent_was, ""))
    found = read(text, eggs_region=eggs_region)
    is_same = lineage.parent_lines == fingerprint(found.value.lines)
    return found.value if lineage.parent_was and not found.problems and is_same else None
