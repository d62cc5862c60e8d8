"""The list of the room: what wheat may come by, how each stands today, and writing it down."""

from dataclasses import dataclass
from datetime import date

from krume.base import InputError, Notice, Problem
from krume.label import RoomStanding, room_list
from krume.pantry import (
    RoomSource,
    room_source_key,
    room_sources,
    room_state_key,
    room_states,
)
from krume.store import book_at, database_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.remembering import Remembered, day_key
from krume.usecases.book.rows import add_row
from krume.usecases.sold.papers import papers_of

ROOM = "room.csv"
ROOM_HEAD = ("source", "state", "date", "valid_to", "text")


@dataclass(frozen=True, slots=True)
class RoomThing:
    """One thing of the list: what is asked, how it stands, what it needs, what may be said.

    `states` are the words with which it can be answered, each with what it means.
    """

    key: str
    word: str
    name: str
    asks: str
    is_open: bool
    text: str
    needs: str
    states: tuple[tuple[str, str], ...]
    status: str


@dataclass(frozen=True, slots=True)
class RoomListResult:
    """The list on a day; where it is not begun the cleaning record alone speaks for the room.

    `cleaned` is null where nothing is written of the day; `can_edit` says whether the book takes
    lines.
    """

    on: str
    is_begun: bool
    open_count: int
    things: tuple[RoomThing, ...]
    unread: tuple[str, ...]
    cleaned: bool | None
    written: tuple[str, ...]
    can_edit: bool


_LISTS: Remembered[RoomListResult] = Remembered(4)


def room_list_of(asked: Asked, *, said: tuple[str, ...] = ()) -> Answer[RoomListResult]:
    """The list on the book's day, after writing what is `said`: `sieve=own`."""
    rows = [_row(each) for each in said]
    day = papers_of(asked).today
    for source, state in rows:
        say_of_room(source, state, asked, day=day)
    written = tuple(f"{source}: {state}, {day.isoformat()}" for source, state in rows)
    found = _list(asked, written)
    problems = () if not found.is_begun else _problems(asked)
    return Answer(found, problems, _notices(found), ("common-practice",))


def room_list_now(asked: Asked) -> RoomListResult:
    """The list as a page shows it."""
    book = book_at(asked.book)
    return _LISTS.of(book, day_key(book, asked), lambda: _list(asked, ()))


def say_of_room(
    source: str, state: str, asked: Asked, *, day: date | None = None, text: str = ""
) -> None:
    """Write how one thing stands; the same word of the same day is kept once.

    Raises InputError for a thing that is not on the list, or a word that opens nothing of it.
    """
    known, word = _words(source, state)
    said = day or papers_of(asked).today
    cells = {"source": known, "state": word, "date": said.isoformat(), "text": text}
    add_row(ROOM, cells, asked, head=ROOM_HEAD)


def _row(said: str) -> tuple[str, str]:
    """What was typed as NAME=STATE, in the words of the list."""
    name, _, state = said.partition("=")
    return _words(name, state)


def _words(name: str, state: str) -> tuple[str, str]:
    """A thing and how it stands, in the words of the list."""
    key, how = room_source_key(name), room_state_key(state)
    source = room_sources().get(key)
    if source is None:
        known = ", ".join(each.words[0] for each in room_sources().values())
        message = f"'{name.strip()}' is not on the list of the room. There are: {known}."
        raise InputError(message, field="source", got=name, want=known)
    words = [word for word, _ in _states(source)]
    found = room_states().get(how)
    if found is None or found.words[0] not in words:
        message = (
            f"'{state.strip()}' says not how the {source.name} stands. Type one of: "
            f"{', '.join(words)}. {source.needs}"
        )
        raise InputError(message, field="state", got=state, want=", ".join(words))
    return source.words[0], found.words[0]


def _states(source: RoomSource) -> tuple[tuple[str, str], ...]:
    """The words a thing can be answered with: wheat itself is handled or not."""
    if source.is_work:
        return (
            ("none", "no wheat comes into this room"),
            ("shared", "wheat was handled here on that day"),
        )
    return tuple(
        (state.words[0], state.means)
        for state in room_states().values()
        if source.cleanable or not state.needs_cleanable
    )


def _list(asked: Asked, written: tuple[str, ...]) -> RoomListResult:
    papers = papers_of(asked)
    standings = room_list(papers.room, (papers.today,), papers.today)
    things = tuple(_thing(each) for each in standings if each.source)
    mine = [record.is_cleaned for record in papers.cleaning if record.day == papers.today]
    return RoomListResult(
        on=papers.today.isoformat(),
        is_begun=bool(papers.room),
        open_count=sum(each.is_open for each in things),
        things=things,
        unread=tuple(f"{each.name}: {each.text}" for each in standings if not each.source),
        cleaned=min(mine) if mine else None,
        written=written,
        can_edit=database_of(book_at(asked.book)) is not None,
    )


def _thing(standing: RoomStanding) -> RoomThing:
    source = room_sources()[standing.source]
    return RoomThing(
        key=source.key,
        word=source.words[0],
        name=source.name,
        asks=source.asks,
        is_open=standing.is_open,
        text=standing.text,
        needs=standing.needs,
        states=_states(source),
        status=source.status,
    )


def _problems(asked: Asked) -> tuple[Problem, ...]:
    """Questions about lines of the list."""
    return tuple(p for p in papers_of(asked).other_problems if p.where.startswith(f"{ROOM} "))


def _notices(found: RoomListResult) -> tuple[Notice, ...]:
    if found.is_begun:
        return ()
    text = (
        "The list is not begun: the cleaning record of the day alone speaks for the room. Once it "
        "is begun, whatever on it is not answered shuts the gluten gate."
    )
    return (Notice("room-not-begun", text),)
