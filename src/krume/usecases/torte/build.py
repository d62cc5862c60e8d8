"""A torte as it stands: heights, masses, slices, batches, findings, and its section to scale."""

from dataclasses import dataclass, replace

from krume.base import Infeasible, Interval, NotFoundError, Notice, Option, Problem
from krume.build import (
    ComponentFormula,
    EggUse,
    Torte,
    TortePlan,
    formula_names,
    incomplete,
    read_order,
    read_torte,
    tier_names,
    working,
)
from krume.build import build_torte as stand
from krume.design import Formula, balance
from krume.pantry import ingredient
from krume.store import Book, book_at
from krume.usecases.asking.answer import Answer, Asked, QuestionError, clash_problems
from krume.usecases.asking.goods import goods_grams, goods_of, is_goods
from krume.usecases.asking.kind import answers_for, kind_of, own_answers, text_inside
from krume.usecases.asking.read import FormulaRead, formula_of
from krume.usecases.asking.remembering import Remembered
from krume.usecases.asking.sources import line_sources, practice_notice, source_keys
from krume.usecases.asking.text import PLACE, Text, text_of
from krume.usecases.torte.gelled import gel_of
from krume.usecases.torte.result import BuildResult, build_result

_WHERE = "FILE"


@dataclass(frozen=True, slots=True)
class TorteMade:
    """A torte with its plan and formulas; `torte` is the clashes where it cannot be."""

    plan: TortePlan
    torte: Torte | Infeasible
    formulas: dict[str, FormulaRead]
    source: Text
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]


def build_torte(name: str, asked: Asked) -> Answer[BuildResult]:
    """Build a torte: what stands on what, and what it comes to."""
    made = torte_of(name, asked)
    used = [working(part.family) for part in parts_of(made.formulas).values()]
    sources = source_keys(
        *(line_sources(found.formula) for found in made.formulas.values()),
        (work.source for work in used),
    )
    if isinstance(made.torte, Infeasible):
        answer = build_result(made.plan, None)
        problems = (*made.problems, *clash_problems(made.torte, _WHERE))
        return Answer(answer, problems, made.notices, sources, is_possible=False)
    statuses = [finding.status for finding in made.torte.findings]
    return Answer(
        build_result(made.plan, made.torte, parts_of(made.formulas)),
        made.problems,
        (*made.notices, *practice_notice(statuses)),
        sources,
    )


_TORTES: Remembered[TorteMade] = Remembered(200)


def torte_of(name: str, asked: Asked) -> TorteMade:
    """The torte a name means, built; with all that is asked about it and its formulas."""
    return _TORTES.of(book_at(asked.book), (name, asked), lambda: _torte(name, asked))


def _torte(name: str, asked: Asked) -> TorteMade:
    source = text_of(name, own_answers(asked))
    kind = source.kind or kind_of(source.text)
    if kind != "torte" and not (source.kind is None and kind == "formula"):
        raise QuestionError(_no_torte(source, kind, name, book_at(asked.book)))
    read = read_torte(source.text)
    if kind == "formula" and not any(c.piece or c.place for c in read.value.components):
        raise QuestionError(_no_torte(source, kind, name, book_at(asked.book)))
    plan = read.value
    own = _formulas(plan, source, asked)
    tiers = _tiers(plan, source, asked)
    formulas = {**{k: v for tier in tiers.values() for k, v in tier.formulas.items()}, **own}
    stands = {what: tier.torte for what, tier in tiers.items() if isinstance(tier.torte, Torte)}
    built = _clash_of(tiers) or stand(plan, parts_of(formulas), stands)
    torte = built if isinstance(built, Infeasible) else built.value
    if isinstance(torte, Torte) and read.problems:
        torte = incomplete(torte)
    found = () if isinstance(built, Infeasible) else built.problems
    more = () if isinstance(built, Infeasible) else built.notices
    inside = [replace(p, where=f"{w} {p.where}") for w, t in tiers.items() for p in t.problems]
    problems = (*source.problems, *read.problems, *inside, *_asked_of(own), *found)
    notices = (*source.notices, *read.notices, *_noted_of(formulas), *more)
    return TorteMade(
        plan,
        torte,
        formulas,
        source,
        tuple(dict.fromkeys(problems)),
        tuple(dict.fromkeys(notices)),
    )


def _tiers(plan: TortePlan, source: Text, asked: Asked) -> dict[str, TorteMade]:
    """Tortes that a plan stands on one another, built; a plan of tiers is no tier itself."""
    found: dict[str, TorteMade] = {}
    for what in tier_names(plan):
        inside = text_inside(what, source, book_at(asked.book))
        if inside is None or inside.kind != "torte" or inside.path == source.path:
            continue
        within = answers_for(what, asked)
        text = text_of(inside.place, own_answers(within)).text
        if not tier_names(read_torte(text).value):
            found[what] = torte_of(inside.place, within)
    return found


def _clash_of(tiers: dict[str, TorteMade]) -> Infeasible | None:
    """The clashes of the tiers, each with the name of its torte."""
    clashes = [
        replace(clash, name=f"{what}: {clash.name}", said=clash.said and f"{what}: {clash.said}")
        for what, tier in tiers.items()
        if isinstance(tier.torte, Infeasible)
        for clash in tier.torte.clashes
    ]
    return Infeasible(tuple(clashes)) if clashes else None


def _no_torte(source: Text, kind: str, name: str, book: Book) -> Problem:
    options: tuple[Option, ...] = ()
    if kind == "order":
        names = [line.what for line in read_order(source.text).value.lines]
        found = {what: text_inside(what, source, book) for what in names}
        beside = {what: each.place for what, each in found.items() if each and each.is_beside}
        options = tuple(Option(what, beside.get(what, what)) for what in names)
    ask = f"{source.name} is no torte, it is a text of kind {kind}. Name a torte."
    return Problem("no-torte", PLACE, name, ask, options)


def _formulas(plan: TortePlan, source: Text, asked: Asked) -> dict[str, FormulaRead]:
    """Formulas by the plan's own words: the book's, else a text beside the plan.

    What is no formula and goes by its grams may be a thing of the pantry, as it is bought.
    """
    grams = goods_grams(plan)
    found = (
        (what, _formula(what, source, asked) or _bought(what, grams.get(what), asked))
        for what in formula_names(plan)
    )
    return {what: read for what, read in found if read is not None}


def _formula(what: str, source: Text, asked: Asked) -> FormulaRead | None:
    """A component's formula, read with the answers that carry its name in front."""
    within = answers_for(what, asked)
    found = text_inside(what, source, book_at(asked.book))
    return None if found is None else formula_of(found.place, within)


def _bought(what: str, grams: float | None, asked: Asked) -> FormulaRead | None:
    return None if grams is None else goods_of(what, grams, answers_for(what, asked))


def parts_of(formulas: dict[str, FormulaRead]) -> dict[str, ComponentFormula]:
    """What a torte needs to know of its formulas, by the plan's own words."""
    return {
        what: goods_part(what, read) if is_goods(read) else component(what, read.formula)
        for what, read in formulas.items()
    }


def goods_part(name: str, read: FormulaRead) -> ComponentFormula:
    """A thing that is used as it is bought, as a torte knows it."""
    line = next(iter(read.formula.lines), None)
    key = None if line is None else line.ingredient
    role = ""
    if key is not None:
        try:
            role = ingredient(key).role
        except NotFoundError:
            role = ""
    total = None if line is None else line.mass_g
    return ComponentFormula(name, name, total_g=_settled(total), goods_role=role)


def component(name: str, formula: Formula) -> ComponentFormula:
    """What a torte needs to know of a formula."""
    balanced = balance(formula)
    if balanced.family is None:
        # A text that only says "cream" is told apart by what is in it.
        balanced = balance(replace(formula, family=None))
    baked = formula.baked
    planned = "plan" in next((v for k, v in formula.keys.items() if k.casefold() == "density"), "")
    return ComponentFormula(
        name=name,
        title=" ".join((formula.name or name).split()),
        family=balanced.family,
        total_g=_settled(balanced.total_g),
        tin=formula.tin,
        baked_height_mm=None if baked is None else baked.height_mm,
        baked_mass_g=None if baked is None else baked.mass_g,
        baked_thickness_mm=None if baked is None else baked.thickness_mm,
        baked_status="assumed" if baked is None else baked.status,
        density_g_ml=formula.density_g_ml,
        density_status="assumed" if planned else "declared",
        gelatine_g_kg=_settled(balanced.figures.get("gelatine_g_kg")),
        eggs=tuple(_egg_uses(formula)),
        gel=gel_of(formula),
    )


def _settled(value: float | Interval | None) -> float | None:
    return value.best if isinstance(value, Interval) else value


def _egg_uses(formula: Formula) -> list[EggUse]:
    return [
        EggUse(line.egg_size, line.part or "whole", float(line.amount))
        for line in formula.lines
        if line.basis == "egg"
        and line.egg_size is not None
        and isinstance(line.amount, int | float)
        and line.part in (None, "whole", "yolk", "white")
    ]


def _asked_of(formulas: dict[str, FormulaRead]) -> tuple[Problem, ...]:
    return tuple(
        replace(problem, where=f"{what} {problem.where}")
        for what, read in formulas.items()
        for problem in read.problems
    )


def _noted_of(formulas: dict[str, FormulaRead]) -> tuple[Notice, ...]:
    return tuple(
        replace(notice, where=f"{what} {notice.where}".strip())
        for what, read in formulas.items()
        for notice in read.notices
    )
