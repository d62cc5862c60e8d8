"""Which day each thing is done on: days backwards from the hand-over, hours forwards in the day."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from krume.plan.usual import is_cut_into_layers, usual
from krume.plan.work import Kitchen, PlannedTorte, Promise

DAY_MIN = 24 * 60


@dataclass(frozen=True, slots=True)
class Window:
    """When a piece of work may be done, in minutes from midnight of the first day."""

    opens: int
    closes: int
    day: int


@dataclass(frozen=True, slots=True)
class Days:
    """The calendar of a plan: its first day, the earliest minute, and how strict the days are.

    `begins_min` is when a day's work begins. `is_wide` lets cakes and tortes go to any day that
    their keeping allows, where the usual days do not hold it all.
    """

    first: date
    now_min: int
    kitchen: Kitchen
    begins_min: int
    is_wide: bool = False

    def minute(self, moment: datetime) -> int:
        """Minutes from midnight of the first day to a moment of the local clock."""
        midnight = datetime(self.first.year, self.first.month, self.first.day)  # noqa: DTZ001
        return round((moment.replace(tzinfo=None) - midnight).total_seconds() / 60)

    def moment(self, minute: int) -> datetime:
        """Local clock at a minute."""
        midnight = datetime(self.first.year, self.first.month, self.first.day)  # noqa: DTZ001
        return midnight + timedelta(minutes=minute)

    def window(self, first_day: int, last_day: int) -> Window:
        """Working hours from one day to another, none before now."""
        opens = max(self.now_min, first_day * DAY_MIN + self.begins_min)
        return Window(opens, last_day * DAY_MIN + self.kitchen.closes_min, last_day)


def first_day(promises: tuple[Promise, ...], now: datetime) -> date:
    """First day of a plan: no later than a cake could be baked, and not before today."""
    back = sum(int(usual(key).value) for key in ("most-days", "bake-most-days"))
    earliest = min(promise.ready for promise in promises).date() - timedelta(days=back)
    return max(now.date(), earliest)


def build_window(promise: Promise, days: Days) -> Window:
    """When the tortes of an order are built."""
    ready_day = days.minute(promise.ready) // DAY_MIN
    usual_day = max(0, ready_day - int(usual("build-days").value))
    if not days.is_wide:
        return days.window(usual_day, usual_day)
    return days.window(max(0, ready_day - int(usual("most-days").value)), ready_day)


def bake_window(promise: Promise, torte: PlannedTorte, days: Days) -> Window:
    """When the cakes of a torte are baked: the day before where they are cut into layers."""
    build = build_window(promise, days)
    first = build.opens // DAY_MIN
    if days.is_wide:
        return days.window(max(0, first - int(usual("bake-most-days").value)), build.day)
    rest = int(usual("rest-days").value) if is_cut_into_layers(torte.kind) else 0
    day = max(0, build.day - rest)
    return days.window(day, day)
