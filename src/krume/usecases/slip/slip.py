"""A slip at the scale: what lies in the bowl, and every exact way out, best first."""

from dataclasses import dataclass, replace
from itertools import chain
from pathlib import Path

from krume.base import InputError, NotFoundError, Option, Problem
from krume.design import Formula, Rescue, Slip, bands, rescue, slip_figure, weigh_out
from krume.size import Tin, read_tin
from krume.store import book_at, list_texts, studio_of, table_rows
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.read import FormulaRead, formula_of
from krume.usecases.asking.sources import line_sources, practice_notice, source_keys
from krume.usecases.formula.size import density_of, scale_step_g
from krume.usecases.slip.apart import with_eggs_apart
from krume.usecases.slip.result import SlipResult, SlipSpoilt, slip_result
from krume.usecases.slip.words import BowlWords, Named

_NOTHING = ("nothing", "nothing else", "no", "none")
_SAME_BOWL = "--same-bowl"


@dataclass(frozen=True, slots=True)
class SlipWish:
    """What is said of the bowls, and what is wished of the ways.

    `weighed` are texts NAME=G, `no_more` and `same_bowl` names of lines, `spoilt` whites with yolk
    in them. `total` keeps only ways in which this cake's total stays. `choose` counts all ways
    from 1; with it, `out` is the folder the corrected sheets go to.
    """

    weighed: tuple[str, ...] = ()
    no_more: tuple[str, ...] = ()
    same_bowl: tuple[str, ...] = ()
    spoilt: str | None = None
    total: bool = False
    step_g: float | None = None
    choose: int | None = None
    out: Path | None = None
    paper: str = "a5"


def rescue_slip(name: str, wish: SlipWish, asked: Asked) -> Answer[SlipResult]:
    """The ways out of a slip; with a choice its sheets are written, all of them or none."""
    answer, found, ways = _rescued(name, wish, asked)
    if wish.choose is None or answer.problems:
        return answer
    from krume.usecases.slip.keep import Chosen, keep_way

    words = _words(name, wish, asked)
    chosen = Chosen(name, asked, found, ways, wish.choose, wish.out, wish.paper, words)
    return keep_way(answer, chosen)


def slip_sheet(name: str, wish: SlipWish, asked: Asked, *, way: str, sheet: str) -> Answer[bytes]:
    """One sheet of a way, kept nowhere; empty while a question is open.

    Raises NotFoundError where this slip has no such way, or the way no such sheet.
    """
    answer, found, ways = _rescued(name, wish, asked)
    bare = Answer(b"", answer.problems, answer.notices)
    if answer.problems:
        return bare
    number = next((n for n, each in enumerate(ways.ways, 1) if each.kind == way), None)
    if number is None:
        message = "What lies in the bowls has no such way out now. Look at its ways again."
        raise NotFoundError(message, where=way, got=way)
    from krume.usecases.slip.keep import Chosen, sheet_of_way

    chosen = Chosen(name, asked, found, ways, number, None, wish.paper, _words(name, wish, asked))
    return replace(bare, result=sheet_of_way(chosen, sheet))


def _rescued(
    name: str, wish: SlipWish, asked: Asked
) -> tuple[Answer[SlipResult], FormulaRead, Rescue]:
    """The ways out, with the formula and the bowls they were worked out from."""
    found = with_eggs_apart(formula_of(name, asked), _named(wish, asked), asked)
    said = _said(found, wish, asked)
    ways = rescue(said.slip, holds_total=wish.total)
    problems = found.problems or (*said.problems, *_asked_bowl(ways, wish, asked))
    result = slip_result(
        ways, is_settled=not problems, spoilt=_spoilt(said.slip, asked, is_settled=not problems)
    )
    judged = () if ways.plan.family is None else bands(ways.plan.family)
    answer = Answer(
        result,
        tuple(problems),
        (*found.notices, *practice_notice(band.status for band in judged)),
        source_keys(line_sources(found.formula), ways.plan.sources),
    )
    return answer, found, ways


def _words(name: str, wish: SlipWish, asked: Asked) -> tuple[str, ...]:
    """The command that shows the ways of this slip again."""
    options = (
        *(("--weighed", text) for text in wish.weighed),
        *(("--no-more", text) for text in wish.no_more),
        *(("--same-bowl", text) for text in wish.same_bowl),
        *((("--spoilt", wish.spoilt),) if wish.spoilt else ()),
        *((("--scale", f"{wish.step_g:g}"),) if wish.step_g else ()),
        *(("--answer", text) for text in asked.answers),
    )
    total = ("--total",) if wish.total else ()
    return ("krume", "slip", name, *(word for each in options for word in each), *total)


def _named(wish: SlipWish, asked: Asked) -> tuple[str, ...]:
    """The names in what was said of the bowls."""
    weighed = [
        (asked.answer_for(place) or text).rpartition("=")[0]
        for text, place in _placed(wish.weighed, "--weighed")
    ]
    return (*weighed, *wish.no_more)


@dataclass(frozen=True, slots=True)
class _Said:
    """The slip as it was said, with what is asked about it."""

    slip: Slip
    problems: tuple[Problem, ...]


def _said(found: FormulaRead, wish: SlipWish, asked: Asked) -> _Said:
    formula, book = found.formula, book_at(asked.book)
    step = wish.step_g or scale_step_g(asked)
    words = BowlWords(formula, asked, step, _most_g(asked))
    weighed = [words.weighed(t, p) for t, p in _placed(wish.weighed, "--weighed")]
    no_more = [words.line(t, p) for t, p in _placed(wish.no_more, "--no-more")]
    same = _same_bowl(words, wish, asked)
    whites = asked.answer_for("--spoilt") or wish.spoilt
    slip = Slip(
        formula,
        _masses(formula, weighed),
        closed=_lines(no_more),
        same_bowl=_lines(same),
        spoilt_whites=0 if whites is None else words.whites(whites),
        step_g=step,
        tins=_tins(table_rows(book, "tins.csv")),
        density_g_ml=density_of(formula).value_g_ml,
    )
    every = chain(weighed, no_more, same)
    return _Said(slip, tuple(each.problem for each in every if each.problem is not None))


def _placed(texts: tuple[str, ...], option: str) -> list[tuple[str, str]]:
    """Texts with their places: `--weighed`, `--weighed 2` and so on."""
    return [(text, option if n == 1 else f"{option} {n}") for n, text in enumerate(texts, start=1)]


def _most_g(asked: Asked) -> float:
    """The most a scale of the book carries, else a usual bench scale."""
    limits = [s.limit_g for s in studio_of(book_at(asked.book)).scales if s.limit_g is not None]
    return max(limits, default=slip_figure("bowl-most"))


def _masses(formula: Formula, weighed: list[Named]) -> tuple[float | None, ...]:
    masses: list[float | None] = [None] * len(formula.lines)
    for each in weighed:
        if each.line is None or not each.mass_g:
            continue
        line = formula.lines[each.line]
        if masses[each.line] is not None:
            message = f"{line.name} is named twice. Say once what is in the bowl of it."
            raise InputError(message, field="weighed", got=line.name, want="one mass a line")
        if line.mass_g is None:
            message = f"{line.name} has no planned mass: write its grams into line {line.number}."
            raise InputError(message, field="weighed", got=line.name, want="a planned mass")
        masses[each.line] = each.mass_g
    return tuple(masses)


def _lines(named: list[Named]) -> frozenset[int]:
    return frozenset(each.line for each in named if each.line is not None)


def _same_bowl(words: BowlWords, wish: SlipWish, asked: Asked) -> list[Named]:
    given = asked.answer_for(_SAME_BOWL)
    names = wish.same_bowl if given is None else tuple(given.split(","))
    wanted = [name for name in names if name.strip().casefold() not in _NOTHING]
    plain = BowlWords(words.formula, replace(asked, answers=()), words.step_g, words.most_g)
    return [plain.line(name, _SAME_BOWL) for name in wanted]


def _asked_bowl(found: Rescue, wish: SlipWish, asked: Asked) -> tuple[Problem, ...]:
    """What else is in the bowl, where no steps say it and something else was weighed."""
    slip, bowl = found.slip, found.bowl
    if bowl is None or slip.formula.steps or wish.same_bowl or asked.answer_for(_SAME_BOWL):
        return ()
    weighed = [n for n, mass in enumerate(slip.weighed_g) if mass is not None]
    names = [slip.lines[n].name for n in weighed if n not in bowl.lines]
    if not names:
        return ()
    options = [Option("nothing else", "nothing"), *(Option(f"{n} too", n) for n in names)]
    if len(names) > 1:
        options.append(Option("all of these", ",".join(names)))
    ask = f"Is anything else in the bowl with {slip.lines[bowl.items[0].line].name}?"
    return (Problem("same-bowl", _SAME_BOWL, ", ".join(names), ask, tuple(options)),)


def _tins(rows: list[dict[str, str]]) -> tuple[Tin, ...]:
    reads = (read_tin(row.get("tin") or "", where="tins.csv").value for row in rows)
    return tuple(tin for tin in reads if tin is not None)


def _spoilt(slip: Slip, asked: Asked, *, is_settled: bool) -> SlipSpoilt | None:
    count = slip.spoilt_whites
    if not count or not is_settled:
        return None
    fresh = next((w for w in rescue(slip).ways if w.kind == "fresh"), None)
    white = 0.0 if fresh is None else sum(line.add_g for line in fresh.lines)
    names = _whole_egg_formulas(asked)
    eggs = "1 whole egg" if count == 1 else f"{count} whole eggs"
    where = f"for {', '.join(names)}, or scrambled" if names else "scrambled, or any whole-egg cake"
    text = f"The spoilt whites with the fresh yolks are {eggs} again: {where}."
    return SlipSpoilt(count, white, count, names, text)


def _whole_egg_formulas(asked: Asked) -> tuple[str, ...]:
    """Formulas of the book that take whole eggs unseparated."""
    texts = [text for text in list_texts(book_at(asked.book)) if text.kind == "formula"]
    reads = ((text.name, formula_of(text.name, replace(asked, answers=()))) for text in texts)
    return tuple(
        name for name, read in reads if any(r.bowl == "egg" for r in weigh_out(read.formula).rows)
    )
