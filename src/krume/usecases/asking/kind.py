"""What a text is, a formula, a torte or an order, and which formulas it is made of."""

import re
from dataclasses import dataclass, replace
from pathlib import Path

from krume.base import NotFoundError, Notice, Problem
from krume.build import Order, TortePlan, formula_names, read_order, read_torte, tier_names
from krume.design import apply_answers, decode_text
from krume.store import Book, book_at, is_file, read_bytes
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.goods import goods_grams, goods_of
from krume.usecases.asking.read import FormulaRead, formula_of, read_text
from krume.usecases.asking.text import Text, book_text, text_of

PROMISES = ("order", "class")
"""Kinds of text that say how many of what there will be on a day: a class says it of its kits."""

_ORDER_KEYS = frozenset({"customer", "date", "hand-over", "handover"})


_INSIDE = re.compile(r"(?!after\b|line\b|-)\S.*\s(?:after )?line \d+\s*=", re.IGNORECASE)
"""An answer to a text inside another: `F1 line 4=…`."""
_NO_PIECE = re.compile(
    r"^\s*0+\s+(?:layers?|sheets?|shells?|discs?|tiers?)\s+of\s", re.IGNORECASE | re.MULTILINE
)
"""A torte's line with no piece in it: asked as such, and no line of a formula."""


@dataclass(frozen=True, slots=True)
class Made:
    """A text with the formulas it is made of, each once, and all that is asked about any."""

    kind: str
    title: str
    formulas: tuple[FormulaRead, ...]
    problems: tuple[Problem, ...] = ()
    notices: tuple[Notice, ...] = ()
    order: Order | None = None


def made_of(name: str, asked: Asked) -> Made:
    """Formulas of a formula, a torte, an order, or the kits of a class."""
    inner = tuple(answer for answer in asked.answers if _INSIDE.match(answer))
    text = text_of(name, own_answers(asked))
    kind = text.kind or kind_of(text.text)
    if kind in PROMISES:
        return _order(text, asked)
    if kind == "torte":
        return _torte(text, asked)
    if inner:
        text = replace(text, text=apply_answers(text.text, inner))
    found = read_text(text, asked)
    return Made("formula", found.formula.name or "", (found,), found.problems, found.notices)


def own_answers(asked: Asked) -> Asked:
    """The request without its answers to texts inside the one it names."""
    own = tuple(answer for answer in asked.answers if not _INSIDE.match(answer))
    return replace(asked, answers=own)


def kind_of(text: str) -> str:
    """Kind of a text by its lines: an order has a date or a customer, a torte has pieces."""
    order = read_order(text).value
    if _ORDER_KEYS & {key.casefold() for key in order.keys}:
        return "order"
    found = read_torte(text)
    placed = [c for c in found.value.components if c.piece is not None or c.place is not None]
    if _NO_PIECE.search(text) and not placed:
        return "torte"
    return "torte" if placed and not found.problems else "formula"


@dataclass(frozen=True, slots=True)
class Inside:
    """A text that another one names: a torte or a formula, and the name it is found by."""

    kind: str
    place: str
    path: Path
    is_beside: bool = False


def text_inside(what: str, source: Text, book: Book) -> Inside | None:
    """What a line of an order or a torte names: of the book, else a file beside that text.

    A file is looked for in the folder of the text alone: a name is never a path to elsewhere.
    """
    found = book_text(what, book)
    if found is not None and found.kind in ("formula", "torte"):
        return Inside(found.kind, f"{found.path.parent.name}/{found.path.name}", found.path)
    if source.path is None or source.kind is not None:
        return None
    folder = source.path.parent
    names = (folder / what, folder / f"{what}.txt")
    path = next((p for p in names if p.parent == folder and is_file(p)), None)
    return None if path is None else Inside(_kind_of_file(path), str(path), path, is_beside=True)


def _kind_of_file(path: Path) -> str:
    """A torte plan with questions in it is a torte plan still."""
    components = read_torte(decode_text(read_bytes(path)).value).value.components
    return "torte" if any(c.piece or c.place for c in components) else "formula"


def _order(text: Text, asked: Asked) -> Made:
    read = read_order(text.text)
    order = read.value
    made = [_named(line.what, f"line {line.number}", text, asked) for line in order.lines]
    return _gathered(
        Made("order", order.name or "", (), (*text.problems, *read.problems),
             (*text.notices, *read.notices), order),
        made,
    )  # fmt: skip


def _torte(text: Text, asked: Asked) -> Made:
    read = read_torte(text.text)
    whole = Made(
        "torte",
        read.value.name or "",
        (),
        (*text.problems, *read.problems),
        (*text.notices, *read.notices),
    )
    return _gathered(whole, _components(read.value, text, asked))


def _components(torte: TortePlan, text: Text, asked: Asked) -> list[Made]:
    numbers = {component.what: component.number for component in reversed(torte.components)}
    names = (*tier_names(torte), *formula_names(torte))
    grams = goods_grams(torte)
    return [
        _goods(what, grams.get(what), text, asked)
        or _named(what, f"line {numbers[what]}", text, asked)
        for what in names
    ]


def _goods(what: str, grams: float | None, text: Text, asked: Asked) -> Made | None:
    """A fruit or a nut that a torte takes as it is bought: the book has no formula of it."""
    if grams is None or text_inside(what, text, book_at(asked.book)) is not None:
        return None
    inner = answers_for(what, asked)
    read = goods_of(what, grams, inner)
    if read is None:
        return None
    return _prefixed(what, Made("formula", what, (read,), read.problems, read.notices))


def _named(what: str, where: str, text: Text, asked: Asked) -> Made:
    """What one line of an order or a torte names, with the answers meant for it."""
    inner = answers_for(what, asked)
    found = text_inside(what, text, book_at(asked.book))
    if found is None:
        raise NotFoundError(
            f"{where} names {what}, and the book has no text of that name. "
            "Add it to the book's formulas, or correct the name.",
            where=where,
            got=what,
        )
    if found.kind == "torte":
        return _prefixed(what, made_of(found.place, inner))
    read = formula_of(found.place, inner)
    return _prefixed(what, Made("formula", what, (read,), read.problems, read.notices))


def answers_for(name: str, asked: Asked) -> Asked:
    """Answers to a text inside another carry its name in front: `F1 line 4=…`."""
    start = f"{name} "
    return replace(
        asked, answers=tuple(a.removeprefix(start) for a in asked.answers if a.startswith(start))
    )


def _prefixed(name: str, made: Made) -> Made:
    return replace(
        made,
        problems=tuple(replace(p, where=f"{name} {p.where}") for p in made.problems),
        notices=tuple(replace(n, where=f"{name} {n.where}".strip()) for n in made.notices),
    )


def _gathered(whole: Made, parts: list[Made]) -> Made:
    formulas = {read.source.name: read for part in parts for read in part.formulas}
    problems = [*whole.problems, *(p for part in parts for p in part.problems)]
    notices = [*whole.notices, *(n for part in parts for n in part.notices)]
    return replace(
        whole,
        formulas=tuple(formulas.values()),
        problems=tuple(dict.fromkeys(problems)),
        notices=tuple(dict.fromkeys(notices)),
    )
