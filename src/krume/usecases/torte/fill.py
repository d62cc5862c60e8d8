"""A cream for a given ring: how many litres, which amounts, whole cartons and what is left."""

import math
import re
from dataclasses import dataclass

from krume.base import Infeasible, Interval, NotFoundError, Option, Problem, as_text
from krume.build import Batch, Filled, Inset, Outline, figure, filled, floor_of, gels
from krume.design import Line
from krume.pantry import Ingredient, density_g_ml, ingredient
from krume.size import Tin, read_tin
from krume.usecases.asking.answer import Answer, Asked, clash_problems
from krume.usecases.asking.read import FormulaRead, formula_of
from krume.usecases.asking.sources import line_sources, source_keys
from krume.usecases.torte.build import component
from krume.usecases.torte.fill_result import Carton, FillLine, FillResult

_DISC = re.compile(
    r"^(?:(?P<n>\d{1,2})\s*[x×]\s*)?(?P<d>\d+(?:[.,]\d+)?)\s*cm\s*[x×,]\s*"
    r"(?P<h>\d+(?:[.,]\d+)?)\s*mm$",
    re.IGNORECASE,
)
_LEAST_CARTON_ML, _MOST_CARTON_ML = 5.0, 20_000.0
_MOST_WASTE_PCT = 60.0
_DUST = 1e-9
_CARTONS = frozenset({"cream", "milk", "buttermilk"})
"""What is bought in cartons, by the first word of its key."""


@dataclass(frozen=True, slots=True)
class FillWish:
    """What is wished: the ring, how high it is filled, discs in it, cartons and waste."""

    ring: str
    discs: tuple[str, ...] = ()
    high_mm: float | None = None
    carton_ml: float | None = None
    waste_pct: float = 0.0


def fill_ring(name: str, wish: FillWish, asked: Asked) -> Answer[FillResult]:
    """How much of a cream fills a ring, beside discs that lie in it."""
    read = formula_of(name, asked)
    part = component(read.source.name, read.formula)
    tin, problems = _ring(wish, asked)
    pieces, odd = _pieces(wish.discs)
    problems = (*read.problems, *problems, *odd, *_wish_asked(wish))
    if part.density_g_ml is None:
        problems = (*problems, _density_asked(part.title))
    sources = source_keys(line_sources(read.formula))
    empty = FillResult.nothing(part.name, part.title, wish.ring)
    outline = None if tin is None else floor_of(tin)
    high = wish.high_mm if tin is None or tin.height_cm is None else tin.height_cm * 10
    high = wish.high_mm or high
    problems = (*problems, *_too_high(tin, wish))
    if outline is None or high is None or problems:
        return Answer(empty, problems, read.notices, sources)
    found = filled(outline, high_mm=high, pieces=pieces)
    if isinstance(found, Infeasible):
        clashes = clash_problems(found, "--ring")
        return Answer(empty, clashes, read.notices, sources, is_possible=False)
    return Answer(_result(read, found, wish), (), read.notices, sources)


def _ring(wish: FillWish, asked: Asked) -> tuple[Tin | None, tuple[Problem, ...]]:
    """The ring by its words; bare numbers are a ring."""
    words = asked.answer_for("--ring") or wish.ring
    said = words if re.match(r"\s*[a-z]", words, re.IGNORECASE) else f"ring {words}"
    read = read_tin(said)
    tin = read.value
    asked_of = tuple(
        Problem(each.code, "--ring", words, each.ask, each.options) for each in read.problems
    )
    if tin is None or floor_of(tin) is None:
        ask = "Which ring is it? Type it by its inside, such as: --ring “24 x 6 cm”"
        return None, asked_of or (Problem("ring-unread", "--ring", words, ask),)
    if tin.height_cm is None and wish.high_mm is None:
        ask = "How high is the ring? Type it with its height, such as: --ring “24 x 6 cm”"
        return None, (*asked_of, Problem("ring-height-missing", "--ring", words, ask))
    return tin, asked_of


def _too_high(tin: Tin | None, wish: FillWish) -> tuple[Problem, ...]:
    """Question about a filling that is higher than its ring, or not above nothing."""
    high = wish.high_mm
    if high is None:
        return ()
    room = None if tin is None or tin.height_cm is None else tin.height_cm * 10
    if high > 0 and (room is None or high <= room + _DUST):
        return ()
    most = "" if room is None else f" and at most {as_text(room, 1)}"
    ask = f"How high is it filled? Type more than 0{most} mm, such as: --high 40"
    return (Problem("fill-height", "--high", as_text(high, 2), ask),)


def _pieces(discs: tuple[str, ...]) -> tuple[list[Inset], tuple[Problem, ...]]:
    found: list[Inset] = []
    asked: list[Problem] = []
    for words in discs:
        match = _DISC.match(words.strip())
        sizes = (0.0, 0.0) if match is None else (_number(match["d"]), _number(match["h"]))
        if match is None or min(sizes) <= 0:
            ask = "Which discs lie in it? Type such as: --disc “2 x 21 cm x 12 mm”"
            options = (Option("Two discs of 21 cm, 12 mm", "2 x 21 cm x 12 mm"),)
            asked.append(Problem("disc-unread", "--disc", words, ask, options))
            continue
        found.append(Inset(Outline(sizes[0]), sizes[1], int(match["n"] or 1)))
    return found, tuple(asked)


def _number(words: str) -> float:
    return float(words.replace(",", "."))


def _wish_asked(wish: FillWish) -> tuple[Problem, ...]:
    found: list[Problem] = []
    carton = wish.carton_ml
    if carton is not None and not _LEAST_CARTON_ML <= carton <= _MOST_CARTON_ML:
        ask = "How much does a carton hold? Type 5 to 20000 ml, such as: --carton 200"
        found.append(Problem("carton-unread", "--carton", as_text(carton, 2), ask))
    if not 0 <= wish.waste_pct <= _MOST_WASTE_PCT:
        ask = "What share stays in bowl and bag? Type 0 to 60, such as: --waste 5"
        found.append(Problem("waste-unread", "--waste", as_text(wish.waste_pct, 2), ask))
    return tuple(found)


def _density_asked(title: str) -> Problem:
    ask = (
        f"How much does 1 ml of {title} weigh, finished? Without it no volume becomes grams. Fill "
        "a cup of known volume and weigh it. Add to the formula, such as: Density: 0.75 g/ml"
    )
    return Problem("density-missing", "after line 1", title, ask)


def _result(read: FormulaRead, found: Filled, wish: FillWish) -> FillResult:
    part = component(read.source.name, read.formula)
    needed = found.cream_ml * (part.density_g_ml or 0.0)
    made = needed / (1 - wish.waste_pct / 100)
    batch_g = part.total_g
    factor = None if not batch_g else made / batch_g
    carton_ml = wish.carton_ml or figure("carton").value
    lines = tuple(_line(line, factor) for line in read.formula.lines)
    batch = Batch(part.name, part.title, "cream", needed, batch_g, factor, factor, made, 0.0)
    return FillResult(
        name=part.name,
        title=part.title,
        ring=wish.ring,
        high_mm=found.high_mm,
        ring_ml=found.ring_ml,
        discs_ml=found.taken_ml,
        cream_ml=found.cream_ml,
        cream_l=found.cream_ml / 1000,
        density_g_ml=part.density_g_ml,
        needed_g=needed,
        waste_g=made - needed,
        made_g=made,
        batch_g=batch_g,
        factor=factor,
        lines=lines,
        cartons=tuple(_cartons(read, factor, carton_ml)),
        gels=gels((batch,), {part.name: part}),
        status=part.density_status,
    )


def _line(line: Line, factor: float | None) -> FillLine:
    mass = _best(line.mass_g)
    grams = None if mass is None or factor is None else mass * factor
    return FillLine(line.name or line.read, line.number, grams)


def _best(value: float | Interval | None) -> float | None:
    return value.best if isinstance(value, Interval) else value


def _cartons(read: FormulaRead, factor: float | None, carton_ml: float) -> list[Carton]:
    """Whole cartons of milk and cream, and what is left in the last one."""
    found: list[Carton] = []
    for line in read.formula.lines:
        goods, mass = _goods(line), _best(line.mass_g)
        if goods is None or goods.role != "dairy" or goods.key.split("-")[0] not in _CARTONS:
            continue
        known = density_g_ml(goods.key)
        density = None if known is None else known.best
        if mass is None or factor is None or density is None:
            continue
        ml = mass * factor / density
        count = max(1, math.ceil(ml / carton_ml - _DUST))
        left = count * carton_ml - ml
        found.append(Carton(line.name or line.read, ml, carton_ml, count, left, left * density))
    return found


def _goods(line: Line) -> Ingredient | None:
    try:
        return None if line.ingredient is None else ingredient(line.ingredient)
    except NotFoundError:
        return None
