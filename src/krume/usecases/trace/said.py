"""What was said on the command line of the bags: a lot of an ingredient, a batch, a day."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date

from krume.base import InputError
from krume.usecases.asking.answer import Asked, place_of
from krume.usecases.trace.bags import Bags, BagsSaid, marks_said

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
        name, _, value = text.partition("=")
        name = _formula(name.strip(), there)
        said[name] = _with_batch(said[name], value.strip())
    for text in lots:
        place, _, marks = text.partition("=")
        for name, ingredient in _lines(" ".join(place.split()), there):
            known = {**said[name].lots, ingredient: marks_said(marks)}
            said[name] = replace(said[name], lots=known)
    return said


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


def _lines(place: str, there: Mapping[str, Bags]) -> list[tuple[str, str]]:
    """Formula and ingredient that a place means: `F1 eggs`, or `eggs` in all of them."""
    wanted = place.casefold()
    found = [
        (name, line.ingredient)
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
