"""What a written formula says, and what it leaves open."""

from dataclasses import dataclass
from pathlib import Path

from krume.base import Interval, NotFoundError, Notice, Problem
from krume.design import Formula, Line, OvenLine, Use, read
from krume.pantry import ingredient
from krume.size import Tin, area_cm2, tin_text, volume_ml
from krume.store import book_at, studio_of, write_whole
from krume.usecases.asking.answer import Answer, Asked, QuestionError
from krume.usecases.asking.dial_minutes import with_minutes
from krume.usecases.asking.sources import line_sources
from krume.usecases.asking.text import PLACE, Text, text_of
from krume.usecases.asking.why_read import explain_read


@dataclass(frozen=True, slots=True)
class ReadLine:
    """One ingredient line: what was written, and which row of the pantry it was taken for."""

    read: str
    line: int
    name: str
    amount: float | Interval | None
    unit: str | None
    mass_g: float | None
    mass_interval_g: Interval | None
    basis: str
    ingredient: str | None
    taken_as: str | None
    part: str | None
    section: str | None
    note: str | None
    egg_size: str | None
    status: str
    source: str | None


@dataclass(frozen=True, slots=True)
class ReadTin:
    """A tin by its inside measures, with what they come to."""

    read: str
    text: str
    shape: str
    material: str
    diameter_cm: float | None
    top_cm: float | None
    length_cm: float | None
    width_cm: float | None
    top_length_cm: float | None
    top_width_cm: float | None
    height_cm: float | None
    hole_cm: float | None
    count: int
    water_ml: float | None
    volume_ml: float | None
    area_cm2: float | None


@dataclass(frozen=True, slots=True)
class OvenStage:
    """A later stage of a bake: the temperature, and the minute it begins."""

    temp_c: float
    from_min: float | None


@dataclass(frozen=True, slots=True)
class ReadOven:
    """The oven as the text says it."""

    read: str
    temp_c: float | None
    fan: bool | None
    temp_interval_c: Interval | None
    stages: tuple[OvenStage, ...]


@dataclass(frozen=True, slots=True)
class ReadEggs:
    """Which eggs the text means, and their shelled grams; None is not known."""

    region: str | None
    size: str | None
    shelled_g: float | None


@dataclass(frozen=True, slots=True)
class ReadBaked:
    """The plan for the whole cake, cold."""

    read: str
    height_mm: float | None
    mass_g: float | None
    thickness_mm: float | None
    status: str


@dataclass(frozen=True, slots=True)
class TextLineRow:
    """A line of the text and what it was taken for."""

    line: int
    text: str
    kind: str


@dataclass(frozen=True, slots=True)
class ReadUse:
    """One line of the formula as a step uses it; `mass_g` None is all of it, or what is left.

    `step` counts the steps from 1, `line` is the line of the text.
    """

    step: int
    line: int
    name: str
    mass_g: float | None


@dataclass(frozen=True, slots=True)
class ReadResult:
    """A formula as it was read, every line of the text kept."""

    name: str | None
    family: str | None
    family_basis: str
    lines: tuple[ReadLine, ...]
    sections: tuple[str, ...]
    tin: ReadTin | None
    tins: tuple[ReadTin, ...]
    oven: ReadOven | None
    eggs: ReadEggs
    steps: tuple[str, ...]
    uses: tuple[ReadUse, ...]
    core_c: float | None
    bake_min: Interval | None
    makes: str | None
    baked: ReadBaked | None
    density_g_ml: float | None
    text: tuple[TextLineRow, ...]
    written: str | None


@dataclass(frozen=True, slots=True)
class FormulaRead:
    """A formula with all that is asked and was assumed about it and its text."""

    formula: Formula
    source: Text
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]


def formula_of(name: str, asked: Asked) -> FormulaRead:
    """The formula a name means, read with the book's egg region and this request's answers."""
    source = text_of(name, asked)
    if source.kind not in (None, "formula"):
        ask = f"{source.name} is no formula, it is one of the book's texts of kind {source.kind}."
        raise QuestionError(Problem("no-formula", PLACE, name, f"{ask} Name a formula."))
    return read_text(source, asked)


def read_text(source: Text, asked: Asked) -> FormulaRead:
    """A formula from its text, with the book's egg region."""
    studio = studio_of(book_at(asked.book))
    found = read(source.text, eggs_region=studio.eggs_region)
    return FormulaRead(
        found.value,
        source,
        source.problems or with_minutes(found.problems, found.value),
        (*source.notices, *found.notices),
    )


def read_formula(
    name: str,
    asked: Asked,
    *,
    write: Path | None = None,
    replace: bool = False,
    explain: str | None = None,
) -> Answer[ReadResult]:
    """Read a formula; with `write`, keep the edited text once nothing in it is open."""
    found = formula_of(name, asked)
    written = write if write is not None and not found.problems else None
    if written is not None:
        write_whole(written, found.source.text.encode("utf-8"), replace=replace)
    answer = Answer(
        _result(found.formula, written),
        found.problems,
        found.notices,
        line_sources(found.formula),
    )
    key = asked.answer_for("--explain") or explain
    if key is None:
        return answer
    return answer.explained(explain_read(key, found.formula))


def _result(formula: Formula, written: Path | None) -> ReadResult:
    return ReadResult(
        name=formula.name,
        family=formula.family,
        family_basis=formula.family_basis,
        lines=tuple(_line(line) for line in formula.lines),
        sections=tuple(dict.fromkeys(x.section for x in formula.lines if x.section)),
        tin=None if formula.tin is None else tin_row(formula.tin),
        tins=tuple(tin_row(tin) for tin in formula.tins),
        oven=None if formula.oven is None else _oven(formula.oven),
        eggs=_eggs(formula),
        steps=formula.steps,
        uses=tuple(_used(formula, use) for use in formula.uses),
        core_c=formula.core_c,
        bake_min=formula.bake_min,
        makes=formula.makes,
        baked=_baked(formula),
        density_g_ml=formula.density_g_ml,
        text=tuple(TextLineRow(x.number, x.text, x.kind) for x in formula.source_lines),
        written=None if written is None else str(written.resolve()),
    )


def _line(line: Line) -> ReadLine:
    return ReadLine(
        read=line.read,
        line=line.number,
        name=line.name,
        amount=line.amount,
        unit=line.unit,
        mass_g=line.mass_g,
        mass_interval_g=line.mass_interval_g,
        basis=line.basis,
        ingredient=line.ingredient,
        taken_as=_pantry_name(line.ingredient),
        part=line.part,
        section=line.section,
        note=line.note,
        egg_size=line.egg_size,
        status=line.status,
        source=line.source or None,
    )


def _used(formula: Formula, use: Use) -> ReadUse:
    line = formula.lines[use.line]
    return ReadUse(use.step + 1, line.number, line.name, use.mass_g)


def _pantry_name(key: str | None) -> str | None:
    """Name of the pantry's row; a word that no row has is known by its own key."""
    if key is None:
        return None
    try:
        return ingredient(key).name
    except NotFoundError:
        return key


def tin_row(tin: Tin) -> ReadTin:
    """A tin with its words, volume and floor."""
    return ReadTin(
        read=tin.read,
        text=tin_text(tin),
        shape=tin.shape,
        material=tin.material,
        diameter_cm=tin.diameter_cm,
        top_cm=tin.top_cm,
        length_cm=tin.length_cm,
        width_cm=tin.width_cm,
        top_length_cm=tin.top_length_cm,
        top_width_cm=tin.top_width_cm,
        height_cm=tin.height_cm,
        hole_cm=tin.hole_cm,
        count=tin.count,
        water_ml=tin.water_ml,
        volume_ml=volume_ml(tin),
        area_cm2=area_cm2(tin),
    )


def _oven(oven: OvenLine) -> ReadOven:
    stages = tuple(OvenStage(temp_c, from_min) for temp_c, from_min in oven.stages)
    return ReadOven(oven.read, oven.temp_c, oven.fan, oven.temp_interval_c, stages)


def _eggs(formula: Formula) -> ReadEggs:
    counted = [x.mass_g for x in formula.lines if x.basis == "egg"]
    known = [g for g in counted if g is not None]
    whole = counted and len(known) == len(counted)
    return ReadEggs(formula.eggs_region, formula.egg_size, sum(known) if whole else None)


def _baked(formula: Formula) -> ReadBaked | None:
    baked = formula.baked
    if baked is None:
        return None
    return ReadBaked(baked.read, baked.height_mm, baked.mass_g, baked.thickness_mm, baked.status)
