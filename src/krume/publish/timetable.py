"""The timetable: days with their tasks in three lanes, and the shopping list as a narrow strip."""

from dataclasses import asdict, dataclass
from datetime import datetime

from krume.base import Notice
from krume.publish.card import Hold, Imprint
from krume.publish.facts import Fact
from krume.publish.signs import missing_notice, printable

SOLID, HATCHED, OPEN = "solid", "hatched", "open"


@dataclass(frozen=True, slots=True)
class DayTask:
    """A task in a lane: hands, oven or rack. `look` is solid (cannot move), hatched, or open.

    `bold` is said first and large; `place` is the column of a rack lane.
    """

    lane: str
    look: str
    start: datetime
    end: datetime
    words: str
    bold: str = ""
    place: int = 0


@dataclass(frozen=True, slots=True)
class DayMark:
    """A bar across a lane at one moment: the first check or the latest out of a load."""

    lane: str
    at: datetime
    words: str


@dataclass(frozen=True, slots=True)
class Places:
    """Places of the fridge: how many tortes, how many places."""

    takes: int
    has: int


@dataclass(frozen=True, slots=True)
class Day:
    """One day of a plan: its name, what is said first, and what stands in the lanes."""

    name: str
    facts: tuple[Fact, ...]
    tasks: tuple[DayTask, ...]
    marks: tuple[DayMark, ...] = ()
    places: Places | None = None


@dataclass(frozen=True, slots=True)
class ShopRow:
    """One thing to buy: how much, of what, and for what."""

    amount: str
    name: str
    what_for: str


@dataclass(frozen=True, slots=True)
class ShopGroup:
    """What is bought in one place; the place is empty where it is not known."""

    where: str
    rows: tuple[ShopRow, ...]


@dataclass(frozen=True, slots=True)
class TimetableSheet:
    """All that stands on a timetable: its days, the list, and what it rests on."""

    title: str
    what: str
    tightest: str
    days: tuple[Day, ...]
    groups: tuple[ShopGroup, ...]
    spares: tuple[str, ...]
    warnings: tuple[str, ...]
    hold: Hold | None
    imprint: Imprint


def timetable_dict(sheet: TimetableSheet) -> dict[str, object]:
    """A timetable as plain data for JSON."""
    data: dict[str, object] = asdict(sheet)
    return data


def missing_timetable_signs(sheet: TimetableSheet) -> tuple[Notice, ...]:
    """Notice that names the signs no packed font has; empty when all can be printed."""
    tasks = (task.words for day in sheet.days for task in day.tasks)
    rows = (row.name for group in sheet.groups for row in group.rows)
    texts = (sheet.title, sheet.what, *tasks, *rows, *sheet.imprint.notes)
    return missing_notice(tuple(sign for text in texts for sign in printable(text).missing))
