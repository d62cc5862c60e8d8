"""Whites and yolks that are weighed apart, of eggs that the formula names whole."""

import re
from dataclasses import replace

from krume.base import Notice
from krume.design import Formula, Line, balance
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import FormulaRead, read_text

_WHITE = re.compile(r"^(?:egg[ -])?whites?$|^egg[ -]white\b|^eiwei(?:ß|ss)e?$|^eiklar$")
_YOLK = re.compile(r"^(?:egg[ -])?yolks?$|^eigelbe?$|^(?:ei)?dotter$")
_SEPARATED = re.compile(r",?\s*\b(?:separated|getrennt)\b", re.IGNORECASE)
_SAME_G = 0.01


def part_named(name: str) -> str | None:
    """The part of an egg that a name alone means; None where it means something else.

    >>> part_named("whites"), part_named("Egg yolks"), part_named("white rice flour")
    ('white', 'yolk', None)
    """
    words = " ".join(name.casefold().split())
    if _WHITE.search(words):
        return "white"
    return "yolk" if _YOLK.search(words) else None


def with_eggs_apart(found: FormulaRead, names: tuple[str, ...], asked: Asked) -> FormulaRead:
    """The formula with its whole eggs as yolks and whites, where a name means one of them.

    The text is written so and read again; where it would say other grams it stays as it is.
    """
    if found.problems or not any(_means_part(name, found.formula) for name in names):
        return found
    eggs = [line for line in found.formula.lines if _is_whole(line)]
    if len(eggs) != 1 or any(line.part in ("yolk", "white") for line in found.formula.lines):
        return found
    (egg,) = eggs
    again = read_text(replace(found.source, text=_apart(found, egg)), asked)
    if again.problems or abs(_total_g(again.formula) - _total_g(found.formula)) > _SAME_G:
        return found
    said = (
        f"The eggs are weighed apart: “{egg.read.strip()}” stands as {_count(egg)} yolks and "
        f"{_count(egg)} whites."
    )
    notice = Notice("eggs-apart", said, f"line {egg.number}")
    return replace(again, notices=(*found.notices, notice))


def _means_part(name: str, formula: Formula) -> bool:
    """Whether a name means a part of the eggs; `white` alone may be the white of a flour."""
    is_flour = name.strip().casefold() == "white" and any(
        "white" in line.name.casefold() for line in formula.lines
    )
    return part_named(name) is not None and not is_flour


def _is_whole(line: Line) -> bool:
    is_count = isinstance(line.amount, float | int) and float(line.amount).is_integer()
    return line.basis == "egg" and line.part in (None, "whole") and is_count and bool(line.mass_g)


def _count(egg: Line) -> int:
    return round(egg.amount) if isinstance(egg.amount, float | int) else 0


def _total_g(formula: Formula) -> float:
    return sum(line.mass_g or 0.0 for line in formula.lines)


def _apart(found: FormulaRead, egg: Line) -> str:
    """The text with two lines in place of one, its family named where it would be read anew."""
    note = _SEPARATED.sub("", egg.note or "").strip(" ,")
    lines = [
        f"{_count(egg)} egg {part}s{f', {note}' if note else ''}" for part in ("yolk", "white")
    ]
    texts = {line.number: line.text for line in found.formula.source_lines}
    texts[egg.number] = "\n".join(lines)
    kind = balance(found.formula).family
    named = next((x.number for x in found.formula.source_lines if x.kind == "name"), None)
    if found.formula.family is None and kind is not None and named is not None:
        texts[named] = f"{texts[named]}\nFamily: {kind}"
    return "\n".join(texts[number] for number in sorted(texts)) + "\n"
