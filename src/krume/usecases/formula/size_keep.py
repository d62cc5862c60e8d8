"""A size kept: the formula for another tin as a child of its own, and how that follows it."""

import re
from dataclasses import dataclass, replace

from krume.base import ConflictError, InputError, NotFoundError, as_text
from krume.design import Formula, Line, read, rewritten, varying
from krume.size import read_tin, scaled_lines
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import FormulaRead, formula_of
from krume.usecases.asking.slug import slug
from krume.usecases.book.texts import TextNow, save_text, text_now
from krume.usecases.formula.size import SizeWish, size_formula, size_request
from krume.usecases.formula.size_result import SizeOption, SizeResult

_SIZED = re.compile(r"x (?P<factor>\d+(?:\.\d+)?) for (?P<tin>\S.*)")
_DIGITS, _SAID = 6, 3
_NEAR = 1e-5


@dataclass(frozen=True, slots=True)
class SizeChoice:
    """The size that is kept: its tin, its kind and factor, and the version it was worked out from.

    Without `name` the child goes by its parent's name, its tin and its eggs.
    """

    tin: str
    kind: str
    factor: float
    seen: int | None
    name: str = ""


@dataclass(frozen=True, slots=True)
class ParentNow:
    """What a formula says of its parent: the name, its own page's name if it has one, the size."""

    name: str
    in_book: str | None
    sized: str


def keep_size(name: str, choice: SizeChoice, asked: Asked) -> TextNow:
    """Keep a size as a child of its formula; sent twice it is kept once.

    Raises ConflictError where the formula changed since, or another text goes by the child's name.
    """
    now = text_now("formula", name, asked)
    if now.revision != choice.seen or now.revision is None:
        message = f"{now.name} changed since this size was worked out. Look at its sizes again."
        raise ConflictError(message, field="seen", got=str(choice.seen), want=str(now.revision))
    found = formula_of(f"formulas/{now.name}.txt", asked)
    option = _option(now.name, choice, asked)
    tin = " ".join(choice.tin.split())
    text = sized_text(found, option, tin)
    child = choice.name.strip() or child_name(now.name, option, tin)
    try:
        return save_text("formula", child, text, asked, seen=None)
    except ConflictError as error:
        message = f"Another formula goes by {child}. Give this size a name of its own."
        raise ConflictError(message, field="name", got=child) from error


def _option(name: str, choice: SizeChoice, asked: Asked) -> SizeOption:
    answer = size_formula(f"formulas/{name}.txt", SizeWish((choice.tin,)), asked)
    for option in answer.result.options:
        is_near = abs(option.factor - choice.factor) <= _NEAR * option.factor
        if option.kind == choice.kind and is_near and is_new_size(option, answer.result):
            return option
    message = "This size is not among the sizes of that tin now. Size it again."
    raise InputError(message, field="tin", got=choice.tin)


def is_new_size(option: SizeOption, result: SizeResult) -> bool:
    """Whether a size is another than the formula has: other grams, or the same in another tin.

    A text that names no tin gains nothing by the same grams in one.
    """
    own, (tin, *_) = result.own_tin, result.tins
    is_same_tin = own is None or replace(own, text="") == replace(tin, text="")
    return option.kind != "as-is" or not is_same_tin


def child_name(parent: str, option: SizeOption, tin: str) -> str:
    """Name of a child: its parent's, its tin, and its eggs, or its factor where none are whole."""
    return f"{parent}-{slug(tin).replace('-x-', 'x')}{_what(option).replace(' ', '-')}"


def _what(option: SizeOption) -> str:
    """What a size is beside its tin: whole eggs, a factor, or nothing where all stays."""
    if option.kind == "as-is":
        return ""
    if option.kind == "whole" and option.eggs.count:
        return f" {option.eggs.count} eggs"
    return f" x {as_text(option.factor, _SAID)}"


def sized_text(found: FormulaRead, option: SizeOption, tin: str) -> str:
    """Text of the child: the parent's words, its grams and tin in place, its parent named.

    The plan of the bake goes: it was for the parent's tin.
    """
    formula = found.formula
    masses = [line.mass_g for line in option.lines]
    text = _in_tin(rewritten(found.source.text, formula, masses, keeps_size=False), formula, tin)
    title = ",".join(
        (f"{formula.name or found.source.name}, {tin}", *filter(None, (_what(option),)))
    )
    text = _titled(text, formula, title)
    region = formula.eggs_region
    lineage = varying.Lineage(
        parent=found.source.name,
        sized=f"x {as_text(option.factor, _DIGITS)} for {tin}",
        parent_lines=varying.fingerprint(formula.lines),
        own_lines=varying.fingerprint(read(text, eggs_region=region).value.lines),
        parent_was=varying.lines_as_were(formula.lines),
    )
    text = varying.with_head(text, lineage)
    _witness(text, formula, tin)
    return text


def _in_tin(text: str, formula: Formula, tin: str) -> str:
    """The text naming another tin in its own line, else in its step, else in a new line."""
    lines = text.splitlines(keepends=True)
    own = formula.tin.read.strip() if formula.tin is not None else ""
    for number, line in enumerate(lines):
        key, colon, value = line.partition(":")
        if own and colon and value.strip().startswith(own):
            lines[number] = f"{key}: {tin}{line[len(line.rstrip()) :]}"
            return "".join(lines)
    if own and own in text:
        return text.replace(own, tin, 1)
    end = "\r\n" if "\r\n" in text else "\n"
    first = next((n for n, line in enumerate(lines) if line.strip()), 0)
    return "".join((*lines[: first + 1], f"Tin: {tin}{end}", *lines[first + 1 :]))


def _titled(text: str, formula: Formula, title: str) -> str:
    """The text with its first line naming the child; a text without a name gets it."""
    if formula.name is None:
        return f"{title}\n\n{text}"
    lines = text.splitlines(keepends=True)
    number = next(x.number for x in formula.source_lines if x.kind == "name")
    old = lines[number - 1]
    lines[number - 1] = f"{title}{old[len(old.rstrip()) :]}"
    return "".join(lines)


def _witness(text: str, parent: Formula, tin: str) -> None:
    """Read the child; it must ask nothing and bake in the tin that was meant."""
    again = read(text, eggs_region=parent.eggs_region)
    meant = read_tin(tin).value
    if again.problems or again.value.tin != meant:
        asks = [problem.ask for problem in again.problems]
        ask = asks[0] if asks else "Its tin would not be read as it is meant."
        message = f"This size cannot be written line for line: {ask} Edit the text by hand."
        raise InputError(message, field="tin", got=tin)


def sized_again(parent: Formula, sized: str, *, step_g: float) -> tuple[Line, ...]:
    """Lines a sized child has of its parent as it is now: the same factor, eggs whole if they go.

    Nothing where the factor or the tin is not read.
    """
    said = _SIZED.fullmatch(sized.strip())
    tin = None if said is None else read_tin(said["tin"]).value
    if said is None or tin is None:
        return ()
    request = size_request(parent, (tin,), SizeWish((said["tin"],), step_g=step_g), Asked())
    factor = float(said["factor"])
    counts = [
        (line.mass_g or 0.0) / line.egg_each_g * factor
        for line in request.lines
        if line.egg_each_g and line.mass_g
    ]
    is_whole = all(abs(count - round(count)) <= _NEAR * max(count, 1.0) for count in counts)
    kind = "whole" if counts and is_whole else "exact"
    masses = [line.mass_g for line in scaled_lines(request, kind, factor)]
    if abs(factor - 1) <= _NEAR:
        masses = [line.mass_g for line in parent.lines]
    text = "\n".join(line.text for line in parent.source_lines) + "\n"
    written = rewritten(text, parent, masses, keeps_size=False)
    again = read(written, eggs_region=parent.eggs_region).value
    return tuple(replace(line, number=0) for line in again.lines)


def parent_now(name: str, asked: Asked) -> ParentNow | None:
    """What a formula of the book says of its parent; None where it names none."""
    lineage = varying.lineage_of(formula_of(f"formulas/{name}.txt", asked).formula)
    if lineage is None:
        return None
    return ParentNow(lineage.parent, _in_book(lineage.parent, asked), lineage.sized)


def _in_book(parent: str, asked: Asked) -> str | None:
    try:
        return text_now("formula", parent, asked).name
    except NotFoundError:
        return None
