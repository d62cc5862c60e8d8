"""What a name means as something to sell: a formula, a torte, or each thing of an order."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from krume.base import Infeasible, NotFoundError, Notice, Problem
from krume.build import Order, read_order
from krume.design import Formula
from krume.label import Product, family_key, product_of_formula, product_of_torte
from krume.store import book_at
from krume.usecases.asking.answer import Asked, clash_problems
from krume.usecases.asking.clock import today
from krume.usecases.asking.kind import PROMISES, answers_for, kind_of, own_answers, text_inside
from krume.usecases.asking.read import FormulaRead, read_text
from krume.usecases.asking.remembering import Remembered
from krume.usecases.asking.sources import line_sources, source_keys
from krume.usecases.asking.text import PLACE, Text, text_of
from krume.usecases.torte.build import torte_of
from krume.usecases.torte.result import torte_status

_LOT_LINE = re.compile(r"^\s*lots?\s*:\s*(.*)$", re.IGNORECASE)
_LOT_NAMES = re.compile(r"[^\s,;]+")


@dataclass(frozen=True, slots=True)
class Sold:
    """One thing to sell: its name in the book, what is in it, and the formulas by their names.

    `chosen` are lots that the text names for it; `count` is how many an order has of it;
    `source` is the name its torte was found by.
    """

    name: str
    product: Product
    formulas: Mapping[str, Formula]
    chosen: frozenset[str] = frozenset()
    count: int = 1
    source: str = ""


@dataclass(frozen=True, slots=True)
class SoldRead:
    """All things of a text with what is asked about any of them, and the day it is judged on."""

    kind: str
    title: str
    sold: tuple[Sold, ...]
    on: date
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]
    sources: tuple[str, ...]
    order: Order | None = None
    is_possible: bool = True
    is_of_book: bool = False


_SOLD: Remembered[SoldRead] = Remembered(200)


def sold_of(name: str, asked: Asked) -> SoldRead:
    """Things a name means, judged on the order's own day, else on --on, else on the book's."""
    return _SOLD.of(book_at(asked.book), (name, asked), lambda: _sold(name, asked))


def _sold(name: str, asked: Asked) -> SoldRead:
    text = text_of(name, own_answers(asked))
    kind = text.kind or kind_of(text.text)
    if kind in PROMISES:
        return _order(text, asked)
    if kind == "torte":
        return _torte(name, asked)
    return _formula(text, asked)


def _today(asked: Asked) -> date:
    return today(book_at(asked.book), on=asked.on)


def _lots_named(lines: Iterable[str]) -> frozenset[str]:
    """Lots that a `Lots:` line of a text names.

    >>> sorted(_lots_named(["Torte", "Lots: L-001, L-019"]))
    ['L-001', 'L-019']
    """
    matches = (_LOT_LINE.match(line) for line in lines)
    return frozenset(lot for m in matches if m is not None for lot in _LOT_NAMES.findall(m[1]))


def lots_named_in(formula: Formula) -> frozenset[str]:
    """Lots that a `Lots:` line of a formula names: those that go in."""
    return _lots_named(line.text for line in formula.source_lines)


def _formula(text: Text, asked: Asked) -> SoldRead:
    read = read_text(text, asked)
    short = text.name if text.kind is not None else read.formula.name or text.name
    product = product_of_formula(short, read.formula)
    sold = Sold(short, product, {short: read.formula}, lots_named_in(read.formula))
    return SoldRead(
        "formula", product.name, (sold,), _today(asked), read.problems, read.notices,
        line_sources(read.formula), is_of_book=text.kind is not None,
    )  # fmt: skip


def _torte(name: str, asked: Asked) -> SoldRead:
    made = torte_of(name, asked)
    sources = _sources(made.formulas)
    if isinstance(made.torte, Infeasible):
        problems = (*made.problems, *clash_problems(made.torte, PLACE))
        return SoldRead(
            "torte", made.plan.name or "", (), _today(asked), problems, made.notices, sources,
            is_possible=False,
        )  # fmt: skip
    formulas = {what: read.formula for what, read in made.formulas.items()}
    product = replace(
        product_of_torte(made.torte, formulas, status=torte_status(made.torte)),
        called=(made.source.name, name),
    )
    chosen = frozenset().union(
        _lots_named(made.source.text.splitlines()), *(lots_named_in(f) for f in formulas.values())
    )
    sold = Sold(made.source.name, product, formulas, chosen, source=name)
    return SoldRead(
        "torte", product.name, (sold,), _today(asked), made.problems, made.notices, sources,
        is_of_book=made.source.kind is not None,
    )  # fmt: skip


def _sources(formulas: Mapping[str, FormulaRead]) -> tuple[str, ...]:
    return source_keys(*(line_sources(read.formula) for read in formulas.values()))


def _order(text: Text, asked: Asked) -> SoldRead:
    read = read_order(text.text)
    order = read.value
    parts = [(line, _named(line.what, f"line {line.number}", text, asked)) for line in order.lines]
    chosen = _lots_named(text.text.splitlines())
    sold = [
        replace(each, count=line.count, chosen=each.chosen | chosen)
        for line, part in parts
        for each in part.sold
    ]
    problems = [*text.problems, *read.problems, *(p for _, part in parts for p in part.problems)]
    notices = [*text.notices, *read.notices, *(n for _, part in parts for n in part.notices)]
    day = order.date if order.date is not None and asked.on is None else _today(asked)
    return SoldRead(
        "order", order.name or text.name, tuple(sold), day, tuple(dict.fromkeys(problems)),
        tuple(dict.fromkeys(notices)), source_keys(*(part.sources for _, part in parts)), order,
        all(part.is_possible for _, part in parts), text.kind is not None,
    )  # fmt: skip


def _named(what: str, where: str, text: Text, asked: Asked) -> SoldRead:
    """What one line of an order names, with the answers meant for it."""
    found = text_inside(what, text, book_at(asked.book))
    if found is None:
        raise NotFoundError(
            f"{where} names {what}, and the book has no torte or formula of that name. "
            "Add it to the book, or correct the name.",
            where=where,
            got=what,
        )
    read = sold_of(found.place, answers_for(what, asked))
    return replace(
        read,
        problems=tuple(replace(p, where=f"{what} {p.where}") for p in read.problems),
        notices=tuple(replace(n, where=f"{what} {n.where}".strip()) for n in read.notices),
    )


def families_of(sold: Sold) -> dict[str, str | None]:
    """Family of each formula of a thing, by its name."""
    return {name: family_key(formula) for name, formula in sold.formulas.items()}
