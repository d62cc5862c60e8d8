"""A day of work for a timetable."""

from dataclasses import replace
from datetime import datetime, timedelta

from krume.publish import (
    Day,
    DayMark,
    DayTask,
    Fact,
    Hold,
    Imprint,
    Places,
    ShopGroup,
    ShopRow,
    TimetableSheet,
)

NOTE = "balanced on paper, not baked"
START = datetime(2027, 6, 10, 8)  # noqa: DTZ001


def task(lane: str, look: str, start: int, end: int, words: str, bold: str = "") -> DayTask:
    """A task by minutes from eight o'clock."""
    begins, ends = START + timedelta(minutes=start), START + timedelta(minutes=end)
    return DayTask(lane, look, begins, ends, words, bold=bold)


DAY = Day(
    "Thursday 10 June",
    (Fact("first start", "8:00"), Fact("tightest gap", "6 h 27", "min")),
    (
        task("hands", "hatched", 0, 12, "weigh and line: 2 F1"),
        task("hands", "solid", 20, 36, "foam and fold: 2 F1"),
        task("hands", "solid", 36, 38, "load 1, 2 F1 into the oven"),
        task("hands", "hatched", 166, 168, "wrap: T1 1"),
        task("hands", "hatched", 168, 170, "wrap: T1 2"),
        task("oven", "open", 36, 76, "8:36–9:16, look 9:12", bold="2 F1, load 1"),
        task("oven", "hatched", 76, 81, ""),
        task("rack", "hatched", 76, 166, "2 F1"),
    ),
    (DayMark("oven", START + timedelta(minutes=72), ""),),
    Places(12, 8),
)


def timetable(*, title: str = "Order 101", hold: Hold | None = None) -> TimetableSheet:
    """A timetable of two such days."""
    rows = (ShopRow("8", "eggs EU M", "F1, C1"), ShopRow("370 g", "caster sugar", "F1"))
    return TimetableSheet(
        title,
        "1 T1, ready Saturday 12 June, 14:00.",
        "Tightest: oven.",
        (DAY, replace(DAY, name="Friday 11 June")),
        (ShopGroup("the mill", rows), ShopGroup("", rows)),
        ("3 whites, 100.5 g, left over.",),
        (),
        hold,
        Imprint("2027-06-10", "0.1.0", "abc", notes=(NOTE,)),
    )
