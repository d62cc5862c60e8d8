"""Reading a formula as a baker writes or pastes it: everything kept, everything odd asked."""

import re
from collections.abc import Iterable
from dataclasses import replace
from typing import NamedTuple

from krume.base import Notice, Problem, Read, as_text
from krume.design.formula import Formula, Line, TextLine
from krume.design.reader.classifying import Kind, classify
from krume.design.reader.cleaning import source_lines
from krume.design.reader.crosschecks import crosschecks
from krume.design.reader.eggs import speaks_american
from krume.design.reader.entry import Entry
from krume.design.reader.headings import is_table_head, plain, table_unit
from krume.design.reader.heads import Head, head_of
from krume.design.reader.keylines import eggs_said, key_line
from krume.design.reader.linereading import LineReading
from krume.design.reader.prose import with_prose
from krume.design.reader.ratios import with_ratios
from krume.design.reader.settings import Settings, limit
from krume.design.reader.steps import Steps, steps_of
from krume.design.reader.tables import columns
from krume.design.recognise import family_of
from krume.design.shares import sums
from krume.pantry import Ingredient, region_named

_DECIMAL_COMMA = re.compile(
    r"(?<![\d.,])\d+,\d{1,2}(?![\d,])\s*(?:g|kg|ml|l|dl|cl|el|tl|cm|%|[^\W\d_])", re.IGNORECASE
)
_FIGURE_BEHIND = re.compile(r",\d")
_EGG_KEY = re.compile(
    r"^[^\w\n]{0,40}(?:eggs?|eier)\b[^:=]{0,20}[:=]", re.IGNORECASE | re.MULTILINE
)
_MAY_BE_TABLE = re.compile(r"[\t|;]|<t[dh]|^[ \t]*[^\W\d_]+,[^\W\d_]+", re.MULTILINE)
_EXAMPLE = "85 g buckwheat flour"


class Found(NamedTuple):
    """What was gathered from a text before it is checked against itself."""

    kinds: list[Kind]
    lines: list[Line]
    roles: list[str | None]
    problems: list[Problem]
    notices: list[Notice]


def read(
    text: str, *, eggs_region: str | None = None, own: tuple[Ingredient, ...] = ()
) -> Read[Formula]:
    r"""Read a formula from any text; never raises, asks instead of guessing.

    >>> found = read("Sponge\nEggs: EU sizes\n\n5 eggs, medium\n130 g sugar")
    >>> [(line.amount, line.unit, line.mass_g) for line in found.value.lines]
    [(5.0, 'each', 255.0), (130.0, 'g', 130.0)]
    """
    sources = source_lines(text.removeprefix("\ufeff"))
    if len(text) > limit("largest-text"):
        return _too_large(sources, len(text))
    settings = _settings(text, eggs_region, own)
    most = int(limit("longest-read"))
    short = [s[:most] if len(s) <= limit("largest-line") else "" for s in sources]
    found = _gather(with_prose(list(classify(short, settings)), settings))
    _refuse_long(sources, found)
    return _whole_lines(_formula(found, settings), sources)


def _too_large(sources: list[str], size: int) -> Read[Formula]:
    most = as_text(limit("largest-text") / 1e6)
    longest = max(range(len(sources)), key=lambda at: len(sources[at]))
    problem = Problem(
        "text-too-large",
        f"line {longest + 1}",
        sources[longest][:60],
        f"The text has {as_text(size / 1e6, 1)} million signs; the limit is {most} million. Its "
        f"longest line is "
        f"line {longest + 1}. Nothing is lost: type or paste one formula at a time.",
    )
    kept = tuple(TextLine(at, line, "unread") for at, line in enumerate(sources, start=1))
    return Read(Formula(None, source_lines=kept), (problem,))


def _refuse_long(sources: list[str], found: Found) -> None:
    for at, source in enumerate(sources):
        if len(source) > limit("largest-line"):
            found.kinds[at] = Kind(at + 1, source, "unread")
            found.problems.append(
                Problem(
                    "line-too-long",
                    f"line {at + 1}",
                    source[:60],
                    f"Line {at + 1} has {len(source)} signs; the limit is "
                    f"{as_text(limit('largest-line'))}. "
                    "Nothing is lost: break it into lines. All other lines were read.",
                )
            )


def _whole_lines(found: Read[Formula], sources: list[str]) -> Read[Formula]:
    """Lines that were read only in part, with their whole text; their options would cut them."""
    most = limit("longest-read")
    long = {at for at, source in enumerate(sources, start=1) if len(source) > most}
    if not long:
        return found
    formula = replace(
        found.value,
        lines=tuple(
            replace(x, read=sources[x.number - 1]) if x.number in long else x
            for x in found.value.lines
        ),
        source_lines=tuple(
            replace(x, text=sources[x.number - 1]) for x in found.value.source_lines
        ),
    )
    problems = tuple(
        replace(p, options=()) if _line_number(p.where) in long else p for p in found.problems
    )
    return Read(formula, problems, found.notices)


def _settings(text: str, eggs_region: str | None, own: tuple[Ingredient, ...]) -> Settings:
    region, size = (region_named(eggs_region) or eggs_region) if eggs_region else None, None
    by_book = region is not None
    for match in _EGG_KEY.finditer(text):
        end = text.find("\n", match.start())
        found = key_line(text[match.start() : end if end >= 0 else len(text)].strip("\r\n"))
        if found is not None and found.key == "eggs":
            said_region, size = eggs_said(found.value)
            region, by_book = said_region or region, by_book and said_region is None
    head = (
        next((line for line in source_lines(text)[:60] if is_table_head(line)), None)
        if _MAY_BE_TABLE.search(text)
        else None
    )
    unit = table_unit(head) if head is not None else None
    roles = columns(head) if head is not None else ()
    american = by_book and speaks_american(text)
    return Settings(region, size, _has_decimal_comma(text), unit, roles, own, by_book, american)


def _has_decimal_comma(text: str) -> bool:
    return _FIGURE_BEHIND.search(text) is not None and _DECIMAL_COMMA.search(text) is not None


def _gather(kinds: list[Kind]) -> Found:
    found = Found(kinds, [], [], [], [])
    for kind in kinds:
        if kind.reading is None:
            continue
        where = f"line {kind.number}"
        for entry in kind.reading.entries:
            found.lines.append(_line(kind, entry))
            found.roles.append(entry.role)
        _carry(kind.reading, where, found)
    return found


def _carry(reading: LineReading, where: str, found: Found) -> None:
    found.problems.extend(
        Problem(p.code, where, p.read, p.ask, p.options) for p in reading.problems
    )
    found.notices.extend(Notice(n.code, n.text, where) for n in reading.notices)


def _line(kind: Kind, entry: Entry) -> Line:
    return Line(
        read=kind.source, number=kind.number, amount=entry.amount, unit=entry.unit,
        mass_g=entry.mass_g, basis=entry.basis, name=entry.name, ingredient=entry.ingredient,
        part=entry.part, section=kind.section, note=entry.note,
        mass_interval_g=entry.mass_interval_g, status=entry.status, source=entry.source,
        egg_size=entry.egg_size,
    )  # fmt: skip


def _formula(found: Found, settings: Settings) -> Read[Formula]:
    found.lines[:] = with_ratios(found.lines, found.roles, found.notices)
    head = head_of(found.kinds, found.problems, found.notices)
    steps = steps_of(found.kinds, found.lines, head, found.problems, found.notices)
    _say_share_of_flour(found)
    _ask_for_lines(found)
    _note_name(head, found)
    formula = _with_family(_built(found, head, steps, settings), settings, found.notices)
    crosschecks(formula, found.kinds, found.roles, head, steps, found.problems, found.notices)
    if any(problem.code == "tin-conflict" for problem in found.problems):
        formula = replace(formula, tin=None)
    return Read(formula, tuple(_in_order(found.problems)), tuple(found.notices))


def _with_family(formula: Formula, settings: Settings, notices: list[Notice]) -> Formula:
    """The formula with its family, as declared or as name, lines and steps say."""
    guess = family_of(formula, sums(formula.lines, own=settings.own))
    if guess.key is None and formula.family is not None:
        notices.append(
            Notice("family-unknown", f"'{formula.family}' is no family known here; none is assumed")
        )
    if guess.key == formula.family:
        return formula
    return replace(formula, family=guess.key, family_basis=guess.basis)


def _built(found: Found, head: Head, steps: Steps, settings: Settings) -> Formula:
    texts = tuple(TextLine(kind.number, kind.source, kind.kind) for kind in found.kinds)
    tins = head.tins or steps.tins
    return Formula(
        name=head.name, lines=tuple(found.lines), steps=steps.texts, uses=steps.uses,
        tin=tins[0] if tins else None, tins=tins, oven=head.oven or steps.oven, family=head.family,
        family_basis="declared" if head.family else "unknown", makes=head.makes,
        baked=head.baked, eggs_region=settings.region,
        egg_size=settings.egg_size, density_g_ml=head.density_g_ml,
        core_c=head.core_c if head.core_c is not None else steps.core_c,
        bake_min=head.bake_min or steps.bake_min, keys=head.keys, source_lines=texts,
    )  # fmt: skip


def _ask_for_lines(found: Found) -> None:
    if found.lines or any(kind.kind == "ingredient" for kind in found.kinds):
        return
    last = max((kind.number for kind in found.kinds if kind.kind != "blank"), default=0)
    read = next((kind.source.strip() for kind in found.kinds if kind.kind != "blank"), "")
    found.problems.append(
        Problem(
            "no-ingredient-line",
            f"after line {last}" if last else "line 1",
            read[:200],
            f"No ingredient line found. Type one a line, for example: {_EXAMPLE}",
        )
    )


def _say_share_of_flour(found: Found) -> None:
    """A pinch of a binder is asked about with its share of the flour, where flour is known."""
    flour = sum(
        x.mass_g or 0.0
        for x, role in zip(found.lines, found.roles, strict=True)
        if role in ("flour", "starch")
    )
    if flour <= 0:
        return
    for at, problem in enumerate(found.problems):
        line = next(
            (x for x in found.lines if f"line {x.number}" == problem.where and x.basis == "trade"),
            None,
        )
        if (
            problem.code == "trade-measure"
            and line is not None
            and line.mass_interval_g is not None
        ):
            low, high = (
                as_text(g / flour * 100, 2)
                for g in (line.mass_interval_g.low, line.mass_interval_g.high)
            )
            text = f"{problem.ask} On {as_text(flour, 1)} g flour that is {low}–{high} %."
            found.problems[at] = Problem(
                problem.code, problem.where, problem.read, text, problem.options
            )


def _note_name(head: Head, found: Found) -> None:
    if head.name is None and found.lines:
        text = (
            "no name: the first line is an ingredient or a key line. Type a name on the first line"
        )
        found.notices.append(Notice("name-missing", text, "line 1"))


def _in_order(problems: Iterable[Problem]) -> list[Problem]:
    """Problems by line, each question once."""
    unique = {(p.code, p.where, p.read, p.ask): p for p in problems}
    return sorted(unique.values(), key=lambda p: _line_number(p.where))


def _line_number(where: str) -> int:
    digits = "".join(sign for sign in where if sign.isdigit())
    return int(digits) if digits and len(digits) < 10 else 0


def shown(kind: Kind) -> str:
    """Words of a line as a person reads them."""
    return plain(kind.source).text
