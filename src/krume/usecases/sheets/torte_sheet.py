"""The torte plans of a torte or an order: each built, its cautions gathered, ready to print."""

import json
import re
from dataclasses import dataclass, replace

from krume.base import Infeasible, Problem
from krume.build import Torte, gels
from krume.label import Statement
from krume.publish import (
    Imprint,
    TorteSheet,
    plan_dict,
    plan_html,
    plan_pdf,
    torte_sheet,
)
from krume.store import book_at, table_rows
from krume.usecases.asking.answer import Asked, clash_problems
from krume.usecases.asking.as_json import plain
from krume.usecases.asking.kind import Made, answers_for, own_answers, text_inside
from krume.usecases.asking.text import text_of
from krume.usecases.bake.cooling_page import cooling_line_of
from krume.usecases.keep.lines import keep_lines
from krume.usecases.label.slices import slice_lines_of_all
from krume.usecases.sold.declared import declared_of_all
from krume.usecases.sold.gluten_words import gluten_of_all
from krume.usecases.torte.build import TorteMade, parts_of, torte_of
from krume.usecases.torte.in_time import in_time_lines
from krume.usecases.torte.order import build_order

_ANIMALS = re.compile(r"\b(beef|pork|fish)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Planned:
    """A torte plan on its way to paper: the word it was asked by, and all that stands on it."""

    name: str
    sheet: TorteSheet


@dataclass(frozen=True, slots=True)
class Plans:
    """The plans of a request, or what is asked or clashes first."""

    plans: tuple[Planned, ...]
    problems: tuple[Problem, ...] = ()
    is_possible: bool = True


def torte_plans(made: Made, name: str, asked: Asked, imprint: Imprint) -> Plans:
    """Plans of the torte a request means, or of each torte an order names, once."""
    if made.kind == "torte":
        return _plans([(name, "", asked)], _beside(name, asked, imprint), asked)
    if made.kind != "order" or made.order is None:
        return Plans(())
    book = book_at(asked.book)
    names = dict.fromkeys(line.what for line in made.order.lines)
    source = text_of(name, own_answers(asked))
    named = [(n, text_inside(n, source, book)) for n in names]
    tortes = [(n, found.place) for n, found in named if found and found.kind == "torte"]
    wanted = [(place, f"{n} ", answers_for(n, asked)) for n, place in tortes]
    return _plans(wanted, _beside(name, asked, imprint), asked)


@dataclass(frozen=True, slots=True)
class _Beside:
    """What stands on every plan of a request, and by torte what its lots say."""

    imprint: Imprint
    gluten: dict[str, str]
    declared: dict[str, Statement]
    eaten: dict[str, tuple[str, ...]]


def _beside(name: str, asked: Asked, imprint: Imprint) -> _Beside:
    declared = declared_of_all(name, asked, imprint.market)
    eaten = slice_lines_of_all(name, asked, imprint.market)
    return _Beside(imprint, gluten_of_all(name, asked), declared, eaten)


def _plans(wanted: list[tuple[str, str, Asked]], beside: _Beside, asked: Asked) -> Plans:
    plans: list[Planned] = []
    problems: list[Problem] = []
    is_possible = True
    for name, start, inner in wanted:
        made = torte_of(name, inner)
        found = made.problems
        if isinstance(made.torte, Infeasible):
            is_possible = False
            found = (*found, *clash_problems(made.torte, "FILE"))
        elif not found:
            plans.append(Planned(_short(made, name), _sheet(made, made.torte, beside, asked)))
        problems += [replace(problem, where=f"{start}{problem.where}") for problem in found]
    return Plans(tuple(plans), tuple(problems), is_possible)


def _short(made: TorteMade, name: str) -> str:
    return made.source.name if made.source.path is not None else made.plan.name or name


def _sheet(made: TorteMade, torte: Torte, beside: _Beside, asked: Asked) -> TorteSheet:
    parts = parts_of(made.formulas)
    return torte_sheet(
        torte,
        {what: read.formula for what, read in made.formulas.items()},
        beside.imprint,
        families={what: part.family for what, part in parts.items()},
        gels=gels(torte.batches, parts),
        order=build_order(torte, parts).lines,
        keep=made.plan.keep,
        gelatine=_animal(made, asked),
        gluten=beside.gluten.get(made.source.name),
        declared=beside.declared.get(made.source.name),
        cooled={what: cooling_line_of(read.formula) for what, read in made.formulas.items()},
        eaten=beside.eaten.get(made.source.name, ()),
        in_time=in_time_lines(made),
        notes=(*made.plan.notes, *_keeping(made)),
    )


def _keeping(made: TorteMade) -> tuple[str, ...]:
    formulas = {what: read.formula for what, read in made.formulas.items()}
    return keep_lines(
        formulas, {what: part.family for what, part in parts_of(made.formulas).items()}
    )


def _animal(made: TorteMade, asked: Asked) -> str | None:
    """The animal of the gelatine, from the formulas' own lines, else from the book's lots."""
    lines = [
        line.read
        for read in made.formulas.values()
        for line in read.formula.lines
        if line.ingredient is not None and "gelatin" in line.ingredient
    ]
    said = {match[1].casefold() for line in lines if (match := _ANIMALS.search(line))}
    said = said or _lot_animals(asked)
    return " and ".join(sorted(said)) or None


def lot_animal(asked: Asked) -> str | None:
    """The animal of the house's gelatine by its lots; None is not stated."""
    return " and ".join(sorted(_lot_animals(asked))) or None


def _lot_animals(asked: Asked) -> set[str]:
    rows = table_rows(book_at(asked.book), "lots.csv")
    words = [row.get("text") or "" for row in rows if "gelatin" in (row.get("ingredient") or "")]
    return {match[1].casefold() for text in words if (match := _ANIMALS.search(text))}


def plan_files(planned: Planned, slug: str, paper: str) -> dict[str, bytes]:
    """The files of a plan: PDF on A4 or Letter, a page, and JSON."""
    data = json.dumps(plain(plan_dict(planned.sheet)), ensure_ascii=False, indent=1)
    stem = f"{slug}-torte-plan"
    return {
        f"{stem}.pdf": plan_pdf(planned.sheet, "letter" if paper == "letter" else "a4"),
        f"{stem}.html": plan_html(planned.sheet).encode(),
        f"{stem}.json": f"{data}\n".encode(),
    }
