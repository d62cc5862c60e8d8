"""What is sold and priced together: a formula, a torte, or all of an order."""

import re
from dataclasses import dataclass, replace
from typing import TypeVar

from krume.base import Infeasible, Notice, Problem, as_text
from krume.build import EggsLeft, Order, OrderLine, read_order, read_torte
from krume.cost import Need, Part, formula_need, is_baked, together, torte_needs
from krume.store import book_at
from krume.usecases.asking.answer import Asked, QuestionError, clash_problems
from krume.usecases.asking.kind import answers_for, kind_of, own_answers, text_inside
from krume.usecases.asking.read import FormulaRead, formula_of
from krume.usecases.asking.sources import line_sources, source_keys
from krume.usecases.asking.text import PLACE, Text, text_of
from krume.usecases.torte.build import TorteMade, torte_of

_T = TypeVar("_T")
_SLICES = re.compile(r"\b(\d{1,3})\s+slices?\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Item:
    """One thing of what is sold: so many pieces of it, of which `tortes` count as tortes."""

    name: str
    title: str
    count: int
    tortes: int


@dataclass(frozen=True, slots=True)
class Sold:
    """What is priced together; `slices` are the counts it may be cut into, the most last.

    `needs` are its formulas, each once. `is_possible` is False where a torte of it cannot stand.
    """

    kind: str
    name: str
    items: tuple[Item, ...] = ()
    needs: tuple[Need, ...] = ()
    slices: tuple[int, ...] = ()
    order: Order | None = None
    is_whole: bool = True
    problems: tuple[Problem, ...] = ()
    notices: tuple[Notice, ...] = ()
    sources: tuple[str, ...] = ()
    is_possible: bool = True

    @property
    def tortes(self) -> int:
        """How many tortes all of it counts as; 0 where one thing of it has no planned values."""
        counts = [item.tortes for item in self.items]
        return sum(counts) if all(counts) else 0


def sold_of(name: str, asked: Asked, *, usual_egg: str | None) -> Sold:
    """What a name means, with the formulas that are paid for it."""
    source = text_of(name, own_answers(asked))
    kind = _kind(source)
    if kind == "class":
        ask = f"{source.name} is a class. A cost is of a formula, a torte or an order; name one."
        raise QuestionError(Problem("class-not-yet", PLACE, source.name, ask))
    if kind == "order":
        return _order(source, asked, usual_egg)
    return _one(kind, name, asked, usual_egg=usual_egg)


def _kind(source: Text) -> str:
    """Kind of a text; a torte plan with questions in it is a torte plan still."""
    kind = source.kind or kind_of(source.text)
    if kind != "formula" or source.kind is not None:
        return kind
    components = read_torte(source.text).value.components
    return "torte" if any(c.piece or c.place for c in components) else "formula"


def _one(kind: str, name: str, asked: Asked, *, usual_egg: str | None, count: int = 1) -> Sold:
    if kind == "torte":
        return _torte(torte_of(name, asked), usual_egg, count)
    return _formula(formula_of(name, asked), usual_egg, count)


def _part(read: FormulaRead, usual_egg: str | None) -> Part:
    return Part(
        name=read.source.name,
        formula=read.formula,
        usual_egg=read.formula.egg_size or usual_egg,
        open_lines=_open_lines(read),
    )


def _open_lines(read: FormulaRead) -> frozenset[int]:
    """Lines with a question on them, those of the name, the keys and the steps left out."""
    asked = {problem.where for problem in read.problems}
    return frozenset(
        line.number
        for line in read.formula.source_lines
        if f"line {line.number}" in asked and line.kind not in ("name", "key", "step")
    )


def _formula(read: FormulaRead, usual_egg: str | None, count: int) -> Sold:
    part = _part(read, usual_egg)
    baked = is_baked(read.formula)
    return Sold(
        kind="formula",
        name=part.title,
        items=(Item(part.name, part.title, count, count if baked else 0),),
        needs=(formula_need(part, count=count),),
        slices=_makes_slices(read.formula.makes, count),
        problems=read.problems,
        notices=(*read.notices, _counted(part.title, baked=baked)),
        sources=line_sources(read.formula),
    )


def _counted(name: str, *, baked: bool) -> Notice:
    if baked:
        one = f"{name} counts as one torte: hours, power, box and fixed costs are those of one."
        return Notice("counted-as-torte", one)
    none = f"{name} is not baked: hours, power, box and fixed costs are planned for a torte only."
    return Notice("no-plan-for-it", none)


def _makes_slices(makes: str | None, count: int) -> tuple[int, ...]:
    match = _SLICES.search(makes or "")
    return (int(match[1]) * count,) if match and int(match[1]) else ()


def _torte(made: TorteMade, usual_egg: str | None, count: int) -> Sold:
    title = " ".join((made.plan.name or made.source.name).split())
    sold = Sold(
        kind="torte",
        name=title,
        items=(Item(made.source.name, title, count, count),),
        slices=tuple(sorted(n * count for n in made.plan.slices)),
        problems=made.problems,
        notices=made.notices,
        sources=source_keys(*(line_sources(r.formula) for r in made.formulas.values())),
    )
    if isinstance(made.torte, Infeasible):
        clashes = clash_problems(made.torte, PLACE)
        return replace(sold, problems=(*sold.problems, *clashes), is_whole=False, is_possible=False)
    parts = {what: _part(read, usual_egg) for what, read in made.formulas.items()}
    needs = torte_needs(made.torte, parts, count=count)
    left = _eggs_left(made.torte.eggs.left)
    used = {component.what for component in made.plan.components}
    is_whole = made.torte.mass_g is not None and used <= parts.keys()
    return replace(sold, needs=needs, is_whole=is_whole, notices=(*sold.notices, *left))


def _eggs_left(left: tuple[EggsLeft, ...]) -> tuple[Notice, ...]:
    """Yolks and whites that are cracked for one torte and not used in it."""
    if not left:
        return ()
    named = " and ".join(
        f"{as_text(each.count, 2)} {each.part}{'s' if each.count > 1 else ''} "
        f"({as_text(each.mass_g, 1)} g)"
        for each in left
    )
    text = f"Left of eggs: {named}. A yolk or a white alone is paid as half an egg."
    return (Notice("eggs-left", text),)


def _order(source: Text, asked: Asked, usual_egg: str | None) -> Sold:
    read = read_order(source.text)
    problems, sold = list[Problem](), list[Sold]()
    for line in read.value.lines:
        found = _line(line, source, asked, usual_egg)
        if isinstance(found, Problem):
            problems.append(found)
        else:
            sold.append(found)
    unread = any(problem.code == "order-line-unread" for problem in read.problems)
    return Sold(
        kind="order",
        name=read.value.name or source.name,
        items=tuple(item for each in sold for item in each.items),
        needs=together(need for each in sold for need in each.needs),
        slices=_order_slices(sold, read.value.people),
        order=read.value,
        is_whole=bool(sold) and not (problems or unread) and all(each.is_whole for each in sold),
        problems=_once(source.problems, read.problems, problems, *(s.problems for s in sold)),
        notices=_once(source.notices, read.notices, *(s.notices for s in sold)),
        sources=source_keys(*(each.sources for each in sold)),
        is_possible=all(each.is_possible for each in sold),
    )


def _line(line: OrderLine, source: Text, asked: Asked, usual_egg: str | None) -> Sold | Problem:
    """One line of an order; its questions carry its name in front."""
    found = text_inside(line.what, source, book_at(asked.book))
    if found is None:
        ask = f"Nothing is called {line.what}. Correct the name, or add its text."
        return Problem("text-missing", f"line {line.number}", line.read, ask)
    within = answers_for(line.what, asked)
    sold = _one(found.kind, found.place, within, usual_egg=usual_egg, count=line.count)
    return replace(
        sold,
        problems=tuple(replace(p, where=f"{line.what} {p.where}") for p in sold.problems),
        notices=tuple(replace(n, where=f"{line.what} {n.where}".strip()) for n in sold.notices),
    )


def _order_slices(sold: list[Sold], people: int | None) -> tuple[int, ...]:
    """Slices of one thing as it may be cut; of several things, the most of each together."""
    if any(not each.slices for each in sold) or not sold:
        return ()
    if len(sold) > 1:
        return (sum(each.slices[-1] for each in sold),)
    counts = sold[0].slices
    return (*(n for n in counts if n != people), people) if people in counts else counts


def _once(*groups: tuple[_T, ...] | list[_T]) -> tuple[_T, ...]:
    return tuple(dict.fromkeys(one for group in groups for one in group))
