"""What is asked about the rows of an oven's tables, where a whole table is looked at."""

from collections.abc import Iterable, Mapping

from krume.base import Problem
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.own_oven.cells import BAKES, READINGS
from krume.usecases.own_oven.gathered import habit_of
from krume.usecases.own_oven.rows import bake_of, reading_of

OVEN_TABLES = (READINGS, BAKES)


def oven_questions(
    place: str, rows: Iterable[tuple[int, Mapping[str, str]]], asked: Asked
) -> tuple[Problem, ...]:
    """Questions about the rows of readings or finished bakes, each at its line."""
    habit = habit_of(studio_of(book_at(asked.book)))
    found = []
    for line, row in rows:
        where = f"{place} line {line}"
        record = (
            reading_of(where, row, habit)
            if place == READINGS
            else bake_of(where, row, habit, asked)
        )
        found += [fault.at(where, record.line) for fault in record.faults]
    return tuple(found)
