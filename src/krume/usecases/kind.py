"""What a text is, a formula, a torte or an order, and which formulas it is made of."""

import re
from dataclasses import dataclass, replace

from krume.base import NotFoundError, Notice, Problem
from krume.build import Order, TortePlan, formula_names, read_order, read_torte
from krume.design import apply_answers
from krume.store import book_at
from krume.usecases.answer import Asked, QuestionError
from krume.usecases.read import FormulaRead, formula_of, read_text
from krume.usecases.text import PLACE, Text, book_text, text_of

_ORDER_KEYS = frozenset({"customer", "date", "hand-over", "handover"})


_INSIDE = re.compile(r"(?!after\b|line\b|-)\S.*\s(?:after )?line \d+\s*=", re.IGNORECASE)
"""An answer to a text inside another: `F1 line 4=…`."""


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
    """Formulas of a formula, a torte or an order."""
    inner = tuple(answer for answer in asked.answers if _INSIDE.match(answer))
    text = text_of(name, own_answers(asked))
    kind = text.kind or kind_of(text.text)
    if kind == "order":
        return _order(text, asked)
    if kind == "torte":
        return _torte(text, asked)
    if kind == "class":
        ask = (
            f"{text.name} is a class. Sheets are made of a formula, a torte or an order; name one."
        )
        raise QuestionError(Problem("class-not-yet", PLACE, text.name, ask))
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
    return "torte" if placed and not found.problems else "formula"


def _order(text: Text, asked: Asked) -> Made:
    read = read_order(text.text)
    order = read.value
    made = [_named(line.what, f"line {line.number}", asked) for line in order.lines]
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
    return _gathered(whole, _components(read.value, asked))


def _components(torte: TortePlan, asked: Asked) -> list[Made]:
    numbers = {component.what: component.number for component in reversed(torte.components)}
    return [_named(what, f"line {numbers[what]}", asked) for what in formula_names(torte)]


def _named(what: str, where: str, asked: Asked) -> Made:
    """What one line of an order or a torte names, with the answers meant for it."""
    inner = answers_for(what, asked)
    found = book_text(what, book_at(asked.book))
    if found is None:
        raise NotFoundError(
            f"{where} names {what}, and the book has no text of that name. "
            "Add it to the book's formulas, or correct the name.",
            where=where,
            got=what,
        )
    if found.kind == "torte":
        return _prefixed(what, made_of(what, inner))
    read = formula_of(what, inner)
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
