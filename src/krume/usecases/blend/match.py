"""What a blend is to come near: the blend of a formula, or what a person wants it to hold."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from krume.base import NotFoundError, Notice, Option, Problem
from krume.design import Line, TextLine, balance, batter_lines, read_wants
from krume.pantry import Ingredient, ingredient
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import FormulaRead, formula_of
from krume.usecases.blend.flours import Flour, blanks, flour_of_line
from krume.usecases.sold.papers import Papers

MATCH, WANT = "--match", "--want"
_FLOURS = ("flour", "starch")
_BESIDE = ("key", "heading", "step", "note", "blank", "name")
_LINE = re.compile(r"^line (\d+)$")


@dataclass(frozen=True, slots=True)
class MatchPart:
    """One flour of the blend that is matched: its grams, and its lines in the text."""

    flour: Flour
    mass_g: float
    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class Match:
    """A formula whose blend is matched; `name` is the one it goes by."""

    name: str
    read: FormulaRead
    family: str | None
    parts: tuple[MatchPart, ...]

    @property
    def total_g(self) -> float:
        """All flours and starches of it."""
        return sum(part.mass_g for part in self.parts)


@dataclass(frozen=True, slots=True)
class Aim:
    """What a blend is to hold in 100 g, and the formula that it is taken from."""

    match: Match | None
    target: dict[str, float | None]
    problems: tuple[Problem, ...] = ()
    notices: tuple[Notice, ...] = ()


def aim_of(
    match: str | None,
    want: str | None,
    properties: Sequence[str],
    asked: Asked,
    papers: Papers,
) -> Aim:
    """The aim of a request: a formula's blend, a wanted profile, or the one with the other's."""
    match, want = asked.answer_for(MATCH) or match, asked.answer_for(WANT) or want
    if match is None and want is None:
        return Aim(None, {}, (_no_aim(),))
    wanted = read_wants(want, where=WANT) if want is not None else None
    wishes = {} if wanted is None else wanted.value
    problems = () if wanted is None else wanted.problems
    if match is None:
        return Aim(None, dict(wishes), problems)
    found, asked_of_match, notices = _match(match, asked, papers)
    if found is None or asked_of_match:
        return Aim(found, dict(wishes), (*problems, *asked_of_match), notices)
    names = tuple(dict.fromkeys((*properties, *wishes)))
    matched = [name for name in names if name not in wishes]
    flours = [part.flour for part in found.parts]
    target = {name: wishes[name] if name in wishes else _mean(found, name) for name in names}
    return Aim(found, target, (*problems, *blanks(flours, matched, is_match=True)), notices)


def _no_aim() -> Problem:
    ask = (
        "What should the blend come near? Name a formula whose flours it replaces, or write what "
        "100 g of it should hold."
    )
    want = f"{WANT}: protein 6, fat 1.1, fibre 2.6"
    return Problem("no-aim", MATCH, "", f"{ask} {MATCH} F2, or {want}.")


def _mean(match: Match, name: str) -> float | None:
    """What 100 g of the blend hold, by mass; None as soon as one flour's content is not known."""
    held = [(part.mass_g, part.flour.holds(name)) for part in match.parts]
    known = [(mass, value) for mass, value in held if value is not None]
    if len(known) < len(held):
        return None
    return sum(mass * value for mass, value in known) / match.total_g


def _match(
    name: str, asked: Asked, papers: Papers
) -> tuple[Match | None, tuple[Problem, ...], tuple[Notice, ...]]:
    """A formula with its flours; what is asked about other lines is only told."""
    read = formula_of(name, asked)
    lines, _ = batter_lines(read.formula)
    flours = [line for line in lines if _role(line) in _FLOURS]
    blocking = tuple(p for p in read.problems if _stops(p, read))
    beside = tuple(
        Notice("formula-asks", f"{p.ask} It does not move the blend.", p.where)
        for p in read.problems
        if p not in blocking
    )
    known = read.formula.name or read.source.name
    said = read.source.name if read.source.kind is not None else known
    if blocking:
        return None, blocking, beside
    unweighed = [line for line in flours if line.mass_g is None or line.mass_g <= 0]
    if unweighed or not flours:
        return None, (_no_blend(said, unweighed),), beside
    parts = _parts(flours, papers.sheets)
    return Match(said, read, balance(read.formula).family, parts), (), beside


def _stops(problem: Problem, read: FormulaRead) -> bool:
    """Whether a question about the text may be about a flour of it."""
    place = _LINE.match(problem.where)
    if place is None:
        return problem.where.startswith("FILE") or not problem.where.startswith("after line")
    number = int(place[1])
    if any(said.number == number for said in _other_lines(read.formula.source_lines)):
        return False
    of = [line for line in read.formula.lines if line.number == number]
    return not of or any(_role(line) in (*_FLOURS, "") for line in of)


def _other_lines(lines: Iterable[TextLine]) -> list[TextLine]:
    return [line for line in lines if line.kind in _BESIDE]


def _no_blend(name: str, unweighed: list[Line]) -> Problem:
    if unweighed:
        line = unweighed[0]
        ask = f"{line.name} has no grams in {name}, so its blend is not known. Write its grams."
        options = (Option("such as", f"30 g {line.name}"),)
        return Problem("flour-unweighed", f"line {line.number}", line.read, ask, options)
    ask = f"{name} has no flour and no starch, so there is no blend to match."
    return Problem("no-blend", MATCH, name, ask)


def _role(line: Line) -> str:
    try:
        return "" if line.ingredient is None else ingredient(line.ingredient).role
    except NotFoundError:
        return ""


def _parts(lines: list[Line], sheets: dict[str, Ingredient]) -> tuple[MatchPart, ...]:
    """Flours of the lines, each once, in the order of the text."""
    of: dict[str, list[Line]] = {}
    for line in lines:
        of.setdefault(line.ingredient or "", []).append(line)
    return tuple(
        MatchPart(
            flour_of_line(same[0].name, key, f"line {same[0].number}", sheets),
            sum(line.mass_g or 0.0 for line in same),
            tuple(same),
        )
        for key, same in of.items()
    )
