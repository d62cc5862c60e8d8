"""A formula or a class as a learner would read it, and what still stops it from going out."""

import re
from dataclasses import dataclass

from krume.base import INCH_CM, UNITS, Interval, NotFoundError, Problem
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import ReadLine, ReadOven, ReadResult, ReadTin, read_formula
from krume.usecases.book.texts import TextNow, TextRow, text_now, texts_of
from krume.usecases.class_day import ClassDay, class_day

Grams = float | Interval | None
"""A mass; an interval where the text leaves one, None where it is not known."""


@dataclass(frozen=True, slots=True)
class TeachLine:
    """One line of a learner's page: in grams, and in ounces for a kitchen that weighs so.

    `counted` is the line's own words where it was not written as a mass.
    """

    line: int
    name: str
    counted: str
    section: str
    mass_g: Grams
    mass_oz: Grams


@dataclass(frozen=True, slots=True)
class TeachHeat:
    """A temperature in both units."""

    temp_c: float
    temp_f: float


@dataclass(frozen=True, slots=True)
class TeachFormula:
    """A formula as a learner reads it; `missing` says what such a reader would look for in vain."""

    lines: tuple[TeachLine, ...]
    tin: str
    tin_in: str
    oven: TeachHeat | None
    fan: bool | None
    core: TeachHeat | None
    bake_min: Interval | None
    steps: tuple[str, ...]
    conflicts: tuple[Problem, ...]
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TeachView:
    """The learner's page of a name: a formula, or a class with the formulas it makes.

    `day` is the class on its day. `beside` are the classes that make the formula, or the formulas
    that the class makes.
    """

    now: TextNow
    formula: TeachFormula | None
    beside: tuple[TextRow, ...]
    day: ClassDay | None = None


def teach_view(name: str, asked: Asked) -> TeachView:
    """What a learner would read of a formula or a class; raises NotFoundError for any other."""
    now = _class(name, asked)
    if now is not None:
        formulas = (row for row in texts_of("formula", asked) if _names(now.text, row.name))
        return TeachView(now, None, tuple(formulas), class_day(now.text, asked))
    now = text_now("formula", name, asked)
    found = read_formula(f"formulas/{name}.txt", asked)
    classes = (row for row in texts_of("class", asked) if _makes(row.name, name, asked))
    return TeachView(now, _formula(found.result, found.problems), tuple(classes))


def _class(name: str, asked: Asked) -> TextNow | None:
    try:
        return text_now("class", name, asked)
    except NotFoundError:
        return None


def _makes(a_class: str, formula: str, asked: Asked) -> bool:
    return _names(text_now("class", a_class, asked).text, formula)


def _names(text: str, name: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(name)}(?!\w)", text) is not None


def _formula(read: ReadResult, problems: tuple[Problem, ...]) -> TeachFormula:
    oven = read.oven
    return TeachFormula(
        lines=tuple(_line(line) for line in read.lines),
        tin="" if read.tin is None else read.tin.text,
        tin_in="" if read.tin is None else _inches(read.tin),
        oven=None if oven is None else _heat(oven.temp_c),
        fan=None if oven is None else oven.fan,
        core=_heat(read.core_c),
        bake_min=read.bake_min,
        steps=read.steps,
        conflicts=problems,
        missing=_missing(read, oven),
    )


def _line(line: ReadLine) -> TeachLine:
    mass_g = line.mass_g if line.mass_g is not None else line.mass_interval_g
    name = line.name if line.part in (None, "whole") else f"{line.name}, {line.part}"
    unit = UNITS.get(line.unit or "")
    counted = "" if unit is not None and unit.kind == "mass" else line.read
    return TeachLine(line.line, name, counted, line.section or "", mass_g, _ounces(mass_g))


def _ounces(mass_g: Grams) -> Grams:
    ounce_g = UNITS["oz"].size
    if mass_g is None or ounce_g is None:
        return None
    if isinstance(mass_g, Interval):
        return Interval(mass_g.low / ounce_g, mass_g.best / ounce_g, mass_g.high / ounce_g)
    return mass_g / ounce_g


def _heat(temp_c: float | None) -> TeachHeat | None:
    return None if temp_c is None else TeachHeat(temp_c, temp_c * 9 / 5 + 32)


def _inches(tin: ReadTin) -> str:
    """Inside measures of a tin in inches, in the order they are written."""
    across = (tin.diameter_cm,) if tin.diameter_cm else (tin.length_cm, tin.width_cm)
    measures = [cm / INCH_CM for cm in (*across, tin.height_cm) if cm]
    return " x ".join(f"{inches:.1f}".removesuffix(".0") for inches in measures)


def _missing(read: ReadResult, oven: ReadOven | None) -> tuple[str, ...]:
    """What a learner would look for in vain."""
    unweighed = [x.line for x in read.lines if x.mass_g is None and x.mass_interval_g is None]
    said = [f"Line {line} has no grams: a learner cannot weigh it." for line in unweighed]
    if not read.steps:
        said.append("No steps are written.")
    if oven is not None and read.tin is None:
        said.append("The tin is not written.")
    if read.tin is not None and (oven is None or oven.temp_c is None):
        said.append("The oven's temperature is not written.")
    if oven is not None and read.bake_min is None and read.core_c is None:
        said.append("It is not written when it is done: no minutes, no core temperature.")
    return tuple(said)
