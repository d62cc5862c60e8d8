"""A formula in other tins: the factor, whole eggs, depth and fill."""

from dataclasses import dataclass, replace

from krume.base import Infeasible, Interval, NotFoundError, Notice, Problem
from krume.design import Formula, Line, balance, family
from krume.pantry import ingredient
from krume.size import (
    SizeLine,
    SizeRequest,
    Tin,
    common_depth_cm,
    fit,
    read_tin,
)
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Answer, Asked, clash_problems
from krume.usecases.asking.read import FormulaRead, formula_of
from krume.usecases.asking.sources import line_sources, source_keys
from krume.usecases.formula.size_result import SizeDensity, SizeResult, size_result
from krume.usecases.formula.why_size import explain_size

_FINEST_SCALE_G = 0.1
"""What a kitchen's fine scale shows, where neither the book nor the person says more."""


@dataclass(frozen=True, slots=True)
class SizeWish:
    """What is wished of the size: tins, depth, whole or any eggs, what the scale shows."""

    tins: tuple[str, ...]
    depth_cm: float | None = None
    eggs: str = "whole"
    step_g: float | None = None
    explain: str | None = None


def size_formula(name: str, wish: SizeWish, asked: Asked) -> Answer[SizeResult]:
    """Size a formula to tins: options best first, or what is asked, or the limits that clash."""
    found = formula_of(name, asked)
    tins, problems, notices = _tins(wish, asked)
    density = density_of(found.formula)
    bare = Answer(
        size_result(found.formula, tins, density, None),
        (*found.problems, *problems),
        (*found.notices, *notices),
        source_keys(line_sources(found.formula), (density.source or "",)),
    )
    answer = bare if bare.problems else _fitted(bare, found, tins, wish, asked)
    key = asked.answer_for("--explain") or wish.explain
    if key is None:
        return answer
    return answer.explained(explain_size(key, found.formula, answer.result))


def _fitted(
    bare: Answer[SizeResult],
    found: FormulaRead,
    tins: tuple[Tin, ...],
    wish: SizeWish,
    asked: Asked,
) -> Answer[SizeResult]:
    """The answer with its options, or with the limits that clash."""
    density = bare.result.density
    fitted = fit(size_request(found.formula, tins, wish, asked))
    if isinstance(fitted, Infeasible):
        return replace(bare, problems=clash_problems(fitted, "--tin"), is_possible=False)
    best = fitted.options[0].notices if fitted.options else ()
    return replace(
        bare,
        result=size_result(found.formula, tins, density, fitted),
        problems=tuple(_placed(problem, found) for problem in fitted.problems),
        notices=(*bare.notices, *fitted.notices, *best),
    )


def _tins(
    wish: SizeWish, asked: Asked
) -> tuple[tuple[Tin, ...], tuple[Problem, ...], tuple[Notice, ...]]:
    """The tins wished for; the second one's place is `--tin 2`."""
    places = ("--tin", *(f"--tin {n}" for n in range(2, len(wish.tins) + 1)))
    reads = [
        read_tin(asked.answer_for(place) or text, where=place)
        for place, text in zip(places, wish.tins, strict=True)
    ]
    tins = tuple(tin for each in reads if (tin := each.value) is not None)
    problems = tuple(problem for each in reads for problem in each.problems)
    return tins, problems, tuple(notice for each in reads for notice in each.notices)


def density_of(formula: Formula) -> SizeDensity:
    """Density of a batter: the formula's own, else what is planned for its family."""
    if formula.density_g_ml is not None:
        return SizeDensity(formula.density_g_ml, "declared", None)
    key = balance(formula).family
    planned = None if key is None else family(key)
    if planned is None or planned.sg_plan is None:
        return SizeDensity(None, "unknown", None)
    return SizeDensity(planned.sg_plan, planned.sg_plan_status or planned.status, planned.source)


def size_request(
    formula: Formula, tins: tuple[Tin, ...], wish: SizeWish, asked: Asked
) -> SizeRequest:
    """What the size job is asked of a formula: its lines, its own tin, its density, the scale."""
    density = density_of(formula)
    return SizeRequest(
        lines=tuple(_size_line(index, line) for index, line in enumerate(formula.lines)),
        targets=tins,
        own=formula.tin,
        density_g_ml=_whole_density_g_ml(formula, density),
        rise=_rise(formula, density),
        depth_cm=wish.depth_cm,
        eggs=wish.eggs,
        step_g=wish.step_g or scale_step_g(asked),
    )


def _whole_density_g_ml(formula: Formula, density: SizeDensity) -> float | None:
    """All grams of the text over the volume of its batter: a filling takes no room in the tin."""
    masses = [line.mass_g for line in formula.lines if line.mass_g is not None]
    batter_g = balance(formula).total_g
    if density.value_g_ml is None or isinstance(batter_g, Interval) or not batter_g:
        return density.value_g_ml
    return density.value_g_ml * sum(masses) / batter_g


def scale_step_g(asked: Asked) -> float:
    """Finest step of the studio's scales, else of a usual fine scale."""
    steps = [scale.step_g for scale in studio_of(book_at(asked.book)).scales]
    return min(steps, default=_FINEST_SCALE_G)


def _size_line(index: int, line: Line) -> SizeLine:
    return SizeLine(
        key=str(index),
        mass_g=line.mass_g,
        kind=_kind(line),
        name=line.name,
        egg_each_g=_egg_each_g(line),
        egg_size=line.egg_size or "",
        egg_part=line.part or "whole",
    )


def _kind(line: Line) -> str:
    if line.basis == "egg":
        return "egg"
    try:
        known = None if line.ingredient is None else ingredient(line.ingredient)
    except NotFoundError:
        return "other"
    if known is None:
        return "other"
    if known.binder:
        return "binder"
    return "flour" if known.is_flour else "other"


def _egg_each_g(line: Line) -> float | None:
    """Shelled mass of one egg of a counted line; an amount that is a range is not counted."""
    if line.basis != "egg" or line.mass_g is None or isinstance(line.amount, Interval):
        return None
    return line.mass_g / line.amount if line.amount else None


def _rise(formula: Formula, density: SizeDensity) -> float | None:
    """Baked height over batter depth, where the formula says how high it bakes."""
    total_g = balance(formula).total_g
    if formula.tin is None or formula.baked is None or formula.baked.height_mm is None:
        return None
    if density.value_g_ml is None or total_g is None or isinstance(total_g, Interval):
        return None
    depth = common_depth_cm((formula.tin,), total_g / density.value_g_ml)
    return formula.baked.height_mm / 10 / depth if depth else None


def _placed(problem: Problem, found: FormulaRead) -> Problem:
    """A question of the size job, at its place in the text."""
    if problem.where == "density":
        return replace(problem, where="after line 1")
    if problem.where.isdigit():
        return replace(problem, where=f"line {found.formula.lines[int(problem.where)].number}")
    return problem
