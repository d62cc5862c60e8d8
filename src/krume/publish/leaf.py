"""A sheet of facts, boxes and tables: order sheet, blend card and cold log are such leaves."""

from dataclasses import asdict, dataclass

from krume.base import InputError, Notice
from krume.publish.card import Hold, Imprint
from krume.publish.facts import Fact
from krume.publish.html import page_html
from krume.publish.pdf import PAPERS, compiled, look
from krume.publish.sheet import dated, is_unbaked, made_by
from krume.publish.signs import missing_notice, printable


@dataclass(frozen=True, slots=True)
class LeafTable:
    """Rows under a head; `right` are the columns of figures, `wide` the one that names the row.

    It takes the room there is, unless `loose` names the column of long words that takes it.
    """

    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    right: tuple[int, ...] = ()
    wide: int = 0
    loose: int | None = None


@dataclass(frozen=True, slots=True)
class LeafPart:
    """One part of a leaf: a heading, lines, a table; `boxed` is drawn with a ruled frame."""

    heading: str
    lines: tuple[str, ...] = ()
    table: LeafTable | None = None
    boxed: bool = False


@dataclass(frozen=True, slots=True)
class Leaf:
    """All that stands on a leaf, before it becomes paper or a page; `kind` is the sheet's name."""

    kind: str
    name: str
    facts: tuple[Fact, ...]
    parts: tuple[LeafPart, ...]
    cautions: tuple[str, ...]
    hold: Hold | None
    imprint: Imprint


def leaf_pdf(leaf: Leaf, paper: str = "a4") -> bytes:
    """An order sheet, a blend card or a cold log as PDF/UA-1 on `a5`, `a4` or `letter`."""
    if paper not in PAPERS:
        message = f"'{paper}' is no paper for a {leaf.kind}. Type a5, a4 or letter."
        raise InputError(message, field="paper", got=paper, want="a5, a4 or letter")
    data = {**printed_leaf(leaf), "paper": PAPERS[paper], "look": look()}
    return compiled("leaf.typ", data, leaf.imprint.date)


def leaf_html(leaf: Leaf) -> str:
    """An order sheet, a blend card or a cold log as a page of its own."""
    return page_html(
        "leaf.html",
        title=f"{leaf.name} · {leaf.kind}",
        imprint=leaf.imprint,
        more_css="torte.css",
        leaf=leaf,
    )


def leaf_dict(leaf: Leaf) -> dict[str, object]:
    """A leaf as the JSON of an answer."""
    return asdict(leaf)


def printed_leaf(leaf: Leaf) -> dict[str, object]:
    """Words of a leaf for paper; every sign in them is in the packed fonts."""
    said: dict[str, object] = {
        "title": leaf.name,
        "keywords": [leaf.kind],
        "facts": [asdict(fact) for fact in leaf.facts],
        "parts": [_part(part) for part in leaf.parts],
        "caution": " ".join(leaf.cautions),
        "hold": None if leaf.hold is None else asdict(leaf.hold),
        "notes": list(leaf.imprint.notes),
        "unbaked": is_unbaked(leaf.imprint),
        "made-by": made_by(leaf.imprint),
        "dated": dated(leaf.imprint),
    }
    return {key: _clean(value) for key, value in said.items()}


def missing_leaf_signs(leaf: Leaf) -> tuple[Notice, ...]:
    """Notice that names the signs of a leaf no packed font has; empty when all can be printed."""
    words = [leaf.name, *leaf.cautions, *leaf.imprint.notes]
    for part in leaf.parts:
        words += [part.heading, *part.lines]
        words += [cell for row in (part.table.rows if part.table else ()) for cell in row]
    return missing_notice(tuple(sign for text in words for sign in printable(text).missing))


def _part(part: LeafPart) -> dict[str, object]:
    table = part.table
    return {
        "heading": part.heading,
        "lines": list(part.lines),
        "boxed": part.boxed,
        "table": None
        if table is None
        else {
            "head": list(table.head),
            "rows": [list(row) for row in table.rows],
            "right": list(table.right),
            "wide": table.wide,
            "loose": table.wide if table.loose is None else table.loose,
        },
    }


def _clean(value: object) -> object:
    if isinstance(value, str):
        return printable(value).text
    if isinstance(value, list):
        return [_clean(item) for item in value]
    if isinstance(value, dict):
        return {key: _clean(item) for key, item in value.items()}
    return value
