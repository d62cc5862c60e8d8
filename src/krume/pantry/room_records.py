"""The room: whether it was cleaned on a day, and what in it wheat may come by; read strictly."""

from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache

from krume.base import Problem, Read
from krume.evidence import column, load, optional
from krume.pantry.typed_rows import plain_word, row_is_cut, typed_day, typed_rows

SOURCE_COLUMNS = (
    column("key", "key"),
    column("words"),
    column("name"),
    column("asks"),
    column("needs"),
    optional("cleanable", "flag"),
    optional("is_work", "flag"),
    column("status", "status"),
    column("source", "source"),
)
STATE_COLUMNS = (
    column("key", "key"),
    column("words"),
    column("name"),
    optional("is_open", "flag"),
    optional("needs_cleanable", "flag"),
    column("holds_days", "count"),
    column("means"),
    column("status", "status"),
    column("source", "source"),
)
CLEANING_HEAD = ("date", "cleaned")
ROOM_HEAD = ("source", "state", "date", "valid_to", "text")
_YES = ("yes", "y", "x", "done")


@dataclass(frozen=True, slots=True)
class CleaningRecord:
    """The room on one day: cleaned before the work, or not."""

    day: date
    is_cleaned: bool
    line: int = 0


@dataclass(frozen=True, slots=True)
class RoomSource:
    """One way by which wheat may come to a cake in a room, and what is needed against it.

    `is_work` is wheat itself being handled: its day counts, not its state.
    """

    key: str
    words: tuple[str, ...]
    name: str
    asks: str
    needs: str
    cleanable: bool
    is_work: bool
    status: str


@dataclass(frozen=True, slots=True)
class RoomState:
    """How such a thing may stand; `holds_days` is how long that is believed without a new look."""

    key: str
    words: tuple[str, ...]
    name: str
    is_open: bool
    needs_cleanable: bool
    holds_days: int
    means: str


@dataclass(frozen=True, slots=True)
class RoomRecord:
    """One line of the room's list; `source` and `state` are keys, empty where not understood."""

    source: str
    state: str
    day: date | None
    valid_to: date | None = None
    notes: str = ""
    read: str = ""
    line: int = 0

    @property
    def holds_to(self) -> date | None:
        """Its last day: the one it names, else so many days as its state is believed.

        What is cleaned is believed for its own day alone, whatever day it names.
        """
        if self.day is None or self.state not in room_states():
            return None
        days = room_states()[self.state].holds_days
        if days and self.valid_to is not None:
            return self.valid_to
        return self.day + timedelta(days=days)


@cache
def room_sources() -> dict[str, RoomSource]:
    """All ways by which wheat may come in, by their key, in the order they are asked."""
    return {
        row.text("key"): RoomSource(
            row.text("key"), tuple(row.text("words").split(";")), row.text("name"),
            row.text("asks"), row.text("needs"), row.flag("cleanable"), row.flag("is_work"),
            row.text("status"),
        )
        for row in load("room_sources.csv", SOURCE_COLUMNS)
    }  # fmt: skip


@cache
def room_states() -> dict[str, RoomState]:
    """All ways to stand, by their key."""
    return {
        row.text("key"): RoomState(
            row.text("key"), tuple(row.text("words").split(";")), row.text("name"),
            row.flag("is_open"), row.flag("needs_cleanable"), int(row.number_of("holds_days")),
            row.text("means"),
        )
        for row in load("room_states.csv", STATE_COLUMNS)
    }  # fmt: skip


def _called(each: RoomSource | RoomState) -> tuple[str, ...]:
    """All words that mean it, the one it is shown by among them."""
    return (each.key, plain_word(each.name), *each.words)


def room_source_key(typed: str) -> str:
    """Key of the source that a word means; empty where it means none.

    >>> room_source_key("Wooden spoons"), room_source_key("cellar")
    ('wooden-spoons', '')
    """
    said = plain_word(typed)
    found = (each.key for each in room_sources().values() if said in _called(each))
    return next(found, "")


def room_state_key(typed: str) -> str:
    """Key of the state that a word means; empty where it means none."""
    said = plain_word(typed)
    found = (each.key for each in room_states().values() if said in _called(each))
    return next(found, "")


def read_cleaning(text: str, *, file: str = "cleaning.csv") -> Read[tuple[CleaningRecord, ...]]:
    r"""Read the room's cleaning records; a row without a day or a clear word counts as none.

    >>> read_cleaning("date,cleaned\n2027-06-12,yes\n").value[0].is_cleaned
    True
    """
    problems: list[Problem] = []
    records: list[CleaningRecord] = []
    for number, row in typed_rows(text, file, CLEANING_HEAD, problems):
        day = typed_day(row["date"])
        where = f"{file} line {number}"
        if day is None:
            ask = "Which day was it? Type year-month-day, such as 2027-06-12."
            problems.append(Problem("cleaning-date", where, row["date"], ask))
            continue
        said = row["cleaned"].casefold()
        if said not in (*_YES, "no"):
            ask = "Was the room cleaned before the work? Type yes or no."
            problems.append(Problem("cleaning-unread", where, row["cleaned"], ask))
        is_yes = said in _YES and not row_is_cut(where, problems)
        records.append(CleaningRecord(day, is_yes, number))
    return Read(tuple(records), tuple(problems))


def read_room(text: str, *, file: str = "room.csv") -> Read[tuple[RoomRecord, ...]]:
    r"""Read the room's list; a row that is not understood is asked, kept, and opens nothing.

    A list that is there and cannot be read is begun.

    >>> read_room("source,state,date,valid_to,text\nsieve,own,2027-06-01,,\n").value[0].state
    'own'
    """
    problems: list[Problem] = []
    found = tuple(
        _record(row, number, f"{file} line {number}", problems)
        for number, row in typed_rows(text, file, ROOM_HEAD, problems)
    )
    if problems and not found and plain_word(text):
        found = (RoomRecord("", "", None, read=text.split("\n", 1)[0].strip(), line=1),)
    return Read(found, tuple(problems))


def _record(row: dict[str, str], number: int, where: str, problems: list[Problem]) -> RoomRecord:
    read = ",".join(row[name] for name in ROOM_HEAD)
    source, state = room_source_key(row["source"]), room_state_key(row["state"])

    def ask(code: str, words: str) -> None:
        problems.append(Problem(code, where, read, words))

    if not source:
        known = ", ".join(each.words[0] for each in room_sources().values())
        ask("room-source", f"'{row['source']}' is not on the list of the room. There are: {known}.")
    if not state:
        known = ", ".join(each.words[0] for each in room_states().values())
        ask("room-state", f"'{row['state']}' says not how it stands. Type one of: {known}.")
    elif source and room_states()[state].needs_cleanable and not room_sources()[source].cleanable:
        thing = room_sources()[source]
        ask("room-not-cleanable", f"Cleaning does not open it ({thing.name}). {thing.needs}")
    day, last = typed_day(row["date"]), typed_day(row["valid_to"])
    if day is None:
        ask("room-date", "Since which day? Type year-month-day, such as 2027-06-12.")
    if row["valid_to"] and last is None:
        ask("room-date-unread", f"'{row['valid_to']}' is no day. Type year-month-day: 2027-06-12.")
        state = ""
    if row_is_cut(where, problems):
        state = ""
    if day is not None and last is not None and last < day:
        ask("room-dates-swapped", f"It ends on {last} before it begins on {day}. Which holds?")
    return RoomRecord(source, state, day, last, row["text"], row["source"], number)
