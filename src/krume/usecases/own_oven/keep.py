"""Writing down a reading or a finished bake of one's oven, and taking one out again."""

from collections.abc import Mapping
from dataclasses import dataclass

from krume.base import InputError, NotFoundError, Option, Problem
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import now
from krume.usecases.book.rows import add_row, delete_row
from krume.usecases.own_oven.cells import (
    BAKES,
    BAKES_HEAD,
    OVENS,
    OVENS_HEAD,
    READINGS,
    READINGS_HEAD,
    Fault,
)
from krume.usecases.own_oven.gathered import Written, habit_of
from krume.usecases.own_oven.own_oven import gathered_now, oven_named, oven_names
from krume.usecases.own_oven.rows import OvenRecord, bake_of, reading_of
from krume.usecases.own_oven.text import bake_cells, reading_cells


@dataclass(frozen=True, slots=True)
class Said:
    """One line that was said of an oven: its cells, and what is asked before it is kept."""

    place: str
    head: tuple[str, ...]
    cells: Mapping[str, str]
    problems: tuple[Problem, ...]


def said_reading(text: str, asked: Asked, *, oven: str = "", where: str = READINGS) -> Said:
    """A reading said in one line, not kept yet."""
    cells, faults = reading_cells(text)
    whole = _whole(cells, asked, oven)
    record = reading_of(where, whole, habit_of(studio_of(book_at(asked.book))))
    later = _later(record, asked)
    asks = tuple(_ask(f, text, cells, where) for f in (*faults, *record.faults, *later))
    return Said(READINGS, READINGS_HEAD, whole, asks)


def said_bake(text: str, asked: Asked, *, oven: str = "", where: str = BAKES) -> Said:
    """A finished bake said in one line, not kept yet."""
    cells, faults = bake_cells(text)
    whole = _whole(cells, asked, oven)
    record = bake_of(where, whole, habit_of(studio_of(book_at(asked.book))), asked)
    later = _later(record, asked)
    asks = tuple(_ask(f, text, cells, where) for f in (*faults, *record.faults, *later))
    return Said(BAKES, BAKES_HEAD, whole, asks)


def _later(record: OvenRecord, asked: Asked) -> tuple[Fault, ...]:
    """A day that is not yet: nothing was read or baked on it."""
    today, day = now(studio_of(book_at(asked.book)), on=asked.on).date().isoformat(), record.day
    if day <= today or any(fault.field == "day" for fault in record.faults):
        return ()
    ask = f"{day} is still to come: the book's day is {today}. Type the day it was done."
    return (Fault("day", "oven-day", ask, (today,)),)


def _ask(fault: Fault, text: str, cells: Mapping[str, str], where: str) -> Problem:
    """A fault as a question; its options are whole lines to say in place of this one."""
    cell = cells.get(fault.field, "")
    is_there = bool(cell) and cell in text
    lines = tuple(Option(o, text.replace(cell, o, 1) if is_there else o) for o in fault.options)
    return Problem(fault.code, where, text, fault.ask, lines)


def keep_said(said: Said, asked: Asked) -> None:
    """Keep a line in which nothing is asked; sent twice it is kept once."""
    add_row(said.place, said.cells, asked, head=said.head)


def _whole(cells: Mapping[str, str], asked: Asked, oven: str) -> dict[str, str]:
    """Cells with the day and the oven, and with the status the book itself declares."""
    studio = studio_of(book_at(asked.book))
    day = now(studio, on=asked.on).date().isoformat()
    name = oven or studio.oven_name or ""
    return {"day": day, "oven": name, "status": "measured", **cells}


def end_oven(day: str, asked: Asked, *, oven: str = "") -> None:
    """What was written down of an oven up to a day is of the old one."""
    name = oven_named(oven or None, asked)
    if name is None:
        names = ", ".join(oven_names(asked))
        raise NotFoundError(f"No oven is called {oven}. There is: {names}.", field="--oven-name")
    add_row(OVENS, {"oven": name, "until": day}, asked, head=OVENS_HEAD)


def forget(number: int, asked: Asked) -> Written:
    """Take out the record of a number of the list; its versions stay in the book."""
    found = numbered(asked)
    if not 1 <= number <= len(found):
        many = f"1 to {len(found)}" if found else "none: nothing is written down"
        message = f"There is no record {number}. The list has {many}."
        raise NotFoundError(message, field="--forget", got=str(number), want=many)
    gone = found[number - 1]
    if gone.row is None:
        message = (
            f"Record {number} is a trial or a load, or stands in a plain file ({gone.place}). "
            "Correct it where it is written."
        )
        raise InputError(message, field="--forget", got=str(number))
    delete_row(gone.place, gone.row, asked, seen=gone.revision)
    return gone


def numbered(asked: Asked) -> tuple[Written, ...]:
    """All records in the order of the list: readings, then bakes."""
    found = gathered_now(asked)
    return (*found.readings, *found.bakes)
