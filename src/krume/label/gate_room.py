"""The room on the judged days: its cleaning record, and its list of what wheat may come by."""

from dataclasses import dataclass
from datetime import date

from krume.pantry import CleaningRecord, RoomRecord, RoomSource, room_sources, room_states

ROOM = "room: cleaning record"


@dataclass(frozen=True, slots=True)
class RoomStanding:
    """How one thing of the room's list stands; `needs` is what opens it, empty where it is open.

    `source` is its key, empty for a line that was not understood.
    """

    source: str
    name: str
    is_open: bool
    text: str
    needs: str = ""

    @property
    def missing(self) -> str:
        """The name by which a gate misses it."""
        return f"room: {self.name}"


def cleaning_opens(
    cleaning: tuple[CleaningRecord, ...], days: tuple[date, ...], today: date
) -> str:
    """What the cleaning record still needs, empty when it is there: a yes of each judged day.

    A yes dated after today is none: that day has not been cleaned for yet. A no counts on the
    judged days and on every day from today to the last of them, when the work is done.
    """
    last = max(days)
    yes = {r.day for r in cleaning if r.is_cleaned and r.day <= today}
    no = {r.day for r in cleaning if not r.is_cleaned}
    noes = sorted(day for day in no if day in days or today <= day <= last)
    if noes:
        return f"{ROOM}: cleaning.csv says no for {_listed(noes)}"
    open_days = [day for day in days if day not in yes]
    if not open_days:
        return ""
    when = "" if max(open_days) <= today else ", on the day itself and not before"
    return f"{ROOM} of {_listed(open_days)}: write it down, in the pantry or cleaning.csv{when}"


def room_standings(
    records: tuple[RoomRecord, ...], days: tuple[date, ...], today: date
) -> tuple[RoomStanding, ...]:
    """Everything on the room's list on its worst day; nothing where the list is not begun."""
    if not records:
        return ()
    stray = tuple(_unread(record) for record in records if not record.source)
    return (*(_source(each, records, days, today) for each in room_sources().values()), *stray)


def room_list(
    records: tuple[RoomRecord, ...], days: tuple[date, ...], today: date
) -> tuple[RoomStanding, ...]:
    """The whole list with every question, answered or not, begun or not."""
    return room_standings(records, days, today) or tuple(
        _open_question(each) for each in room_sources().values()
    )


def _unread(record: RoomRecord) -> RoomStanding:
    name = f"line {record.line} of its list"
    said = f"“{record.read}”" if record.read else "nothing"
    return RoomStanding("", name, is_open=False, text=f"{said} is not understood", needs=(
        "Name it as the list does, or take the line out."
    ))  # fmt: skip


def _open_question(source: RoomSource) -> RoomStanding:
    text = f"not answered: {source.asks}"
    return RoomStanding(source.key, source.name, is_open=False, text=text, needs=source.needs)


def _source(
    source: RoomSource, records: tuple[RoomRecord, ...], days: tuple[date, ...], today: date
) -> RoomStanding:
    mine = tuple(record for record in records if record.source == source.key)
    unread = next((r for r in mine if not r.state or r.day is None), None)
    if unread is not None:
        text = f"line {unread.line} of its list is not understood"
        return RoomStanding(source.key, source.name, is_open=False, text=text, needs=source.needs)
    judge = _work if source.is_work else _thing
    found = [judge(source, mine, day, max(days), today) for day in days]
    return min(found, key=lambda each: each.is_open)


def _work(
    source: RoomSource, mine: tuple[RoomRecord, ...], day: date, last: date, today: date
) -> RoomStanding:
    """Wheat itself: its own days close, and after them the cleaning record decides."""
    wheat = sorted(r.day for r in mine if r.state == "shared" and r.day is not None)
    now = [each for each in wheat if each == day or today <= each <= last]
    if now:
        return _closed(source, f"wheat is handled here on {_listed(now)}")
    before = [each for each in wheat if each < day]
    none = [r for r in mine if r.state == "none" and _holds(r, day, today)]
    if none:
        return RoomStanding(source.key, source.name, is_open=True, text=_believed(none[-1]))
    if before:
        text = f"wheat was last handled here on {before[-1]}; the cleaning record of the day counts"
        return RoomStanding(source.key, source.name, is_open=True, text=text)
    return _closed(source, f"not answered for {day}: {source.asks}")


def _thing(
    source: RoomSource, mine: tuple[RoomRecord, ...], day: date, last: date, today: date
) -> RoomStanding:
    """The last word before the day decides; of two words of one day the worse."""
    coming = [r for r in mine if r.state == "shared" and r.day and today <= r.day <= last]
    known = sorted((r for r in mine if r.day and r.day <= min(day, today)), key=_turn)
    if coming:
        return _closed(source, _believed(coming[0]))
    if not known:
        return _closed(source, f"not answered for {day}: {source.asks}")
    latest = known[-1]
    if _opens(latest, source) and _holds(latest, day, today):
        return RoomStanding(source.key, source.name, is_open=True, text=_believed(latest))
    return _closed(source, _why_not(latest, source, day))


def _turn(record: RoomRecord) -> tuple[date, bool]:
    return (record.day or date.min, not room_states()[record.state].is_open)


def _opens(record: RoomRecord, source: RoomSource) -> bool:
    state = room_states()[record.state]
    return state.is_open and (source.cleanable or not state.needs_cleanable)


def _holds(record: RoomRecord, day: date, today: date) -> bool:
    """Whether a word of the list is in force on a day and was given by today."""
    first, end = record.day, record.holds_to
    return first is not None and end is not None and first <= min(day, today) and day <= end


def _closed(source: RoomSource, text: str) -> RoomStanding:
    return RoomStanding(source.key, source.name, is_open=False, text=text, needs=source.needs)


def _believed(record: RoomRecord) -> str:
    state = room_states()[record.state]
    until = record.holds_to
    is_of_a_day = state.is_open and until == record.day
    span = f"on {record.day}" if is_of_a_day else f"since {record.day}"
    is_long = state.is_open and until not in (None, record.day)
    end = f", looked at again by {until}" if is_long else ""
    notes = f" ({record.notes})" if record.notes else ""
    return f"{state.name} {span}{end}{notes}"


def _why_not(record: RoomRecord, source: RoomSource, day: date) -> str:
    if not room_states()[record.state].is_open:
        return _believed(record)
    if not _opens(record, source):
        return f"{_believed(record)}, and cleaning does not open it"
    return f"{_believed(record)}, not for {day}"


def _listed(days: list[date]) -> str:
    return " and ".join(day.isoformat() for day in days)
