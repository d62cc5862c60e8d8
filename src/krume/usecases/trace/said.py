"""What was said on the command line of the bags: a lot of an ingredient, a batch, a day."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date

from krume.base import InputError
from krume.usecases.asking.answer import Asked, place_of
from krume.usecases.trace.bags import BagLine, Bags, BagsSaid, marks_said

_TO_LINES = ("line ", "after line ")


def lots_answered(asked: Asked) -> tuple[Asked, tuple[str, ...]]:
    """The request without its answers about lots, and those: `F1 ground hazelnuts=L-008`."""
    mine = tuple(answer for answer in asked.answers if not _is_to_text(place_of(answer)))
    return replace(asked, answers=tuple(a for a in asked.answers if a not in mine)), mine


def _is_to_text(place: str) -> bool:
    start, _, number = place.casefold().rpartition(" ")
    is_line = number.isdecimal() and f"{start} ".endswith(_TO_LINES)
    return is_line or place.startswith("--") or place in ("FILE", "NAME")


def bags_said(
    bags: Iterable[Bags], lots: Iterable[str], batches: Iterable[str]
) -> dict[str, BagsSaid]:
    """What was said of each formula; a lot without a formula's name is of every formula."""
    there = {each.formula: each for each in bags}
    said = {name: BagsSaid() for name in there}
    for text in batches:
        name, value = _parted(text, "batch", "F1=2027-06-10")
        name = _formula(name, there)
        said[name] = _with_batch(said[name], value)
    for text in lots:
        place, marks = _parted(text, "lot", "ground hazelnuts=L-008")
        for name, line in _lines(place, there):
            known = {**said[name].lots, line.ingredient: _marks(line, marks)}
            said[name] = replace(said[name], lots=known)
    return said


def _parted(text: str, field: str, example: str) -> tuple[str, str]:
    """What stands before and after the sign of equality; without one nothing is guessed."""
    place, sign, value = text.partition("=")
    if not sign or not place.strip():
        message = f"“{text}” does not say of what. Type it like this: {example}"
        raise InputError(message, field=field, got=text, want=example)
    return " ".join(place.split()), value.strip()


def _marks(line: BagLine, text: str) -> tuple[str, ...]:
    """Marks by comma; a mark of the house that has a comma in it is one mark."""
    whole = [lot.mark for lot in line.in_house if lot.mark.casefold() == text.casefold()]
    return (whole[0],) if whole else marks_said(text)


def _with_batch(said: BagsSaid, value: str) -> BagsSaid:
    """A day makes a new batch of that day; anything else is the code of one that is there."""
    if not marks_said(value):
        return replace(said, is_unknown=True)
    try:
        return replace(said, made_on=date.fromisoformat(value))
    except ValueError:
        return replace(said, batch=value)


def _formula(name: str, there: Mapping[str, Bags]) -> str:
    found = next((each for each in there if each.casefold() == name.casefold()), None)
    if found is None:
        raise InputError(
            f"“{name}” is none of its formulas. There are: {', '.join(there)}.",
            field="batch",
            got=name,
            want=", ".join(there),
        )
    return found


def _lines(place: str, there: Mapping[str, Bags]) -> list[tuple[str, BagLine]]:
    """Formula and ingredient that a place means: `F1 eggs`, or `eggs` in all of them."""
    wanted = place.casefold()
    found = [
        (name, line)
        for name, bags in there.items()
        for line in bags.lines
        if wanted in (line.ingredient.casefold(), f"{name} {line.ingredient}".casefold())
    ]
    if not found:
        names = dict.fromkeys(line.ingredient for each in there.values() for line in each.lines)
        raise InputError(
            f"“{place}” is no ingredient of it. There are: {', '.join(names)}.",
            field="lot",
            got=place,
            want=", ".join(names),
        )
    return found
