"""The timetable as PDF lengthwise on A4 or Letter, and as a page of its own."""

import math

from krume.base import InputError
from krume.publish.html import page_html
from krume.publish.pdf import PAPERS, PLAN_PAPERS, compiled, look
from krume.publish.sheet import dated, is_unbaked, made_by
from krume.publish.signs import printable
from krume.publish.timetable import Day, DayTask, TimetableSheet
from krume.publish.timetable_drawing import WIDE_MM, day_drawing, day_sentence

# Layout [mm]: what a page lengthwise holds between its margins, and what stands above a drawing.
_PAGE_MM = 186.0
_DAY_MM = 12.0
_TITLE_MM = 12.0
_LINE_MM = 4.4
_SIGNS_A_LINE = 150


def timetable_pdf(sheet: TimetableSheet, paper: str = "a4") -> bytes:
    """A timetable as PDF/UA-1, one day a page, the shopping list beside the first."""
    if paper not in PLAN_PAPERS:
        message = f"'{paper}' is no paper for a timetable. Type a4 or letter."
        raise InputError(message, field="paper", got=paper, want="a4 or letter")
    data = {**_printed(sheet), "paper": PAPERS[paper], "look": look()}
    return compiled("timetable.typ", data, sheet.imprint.date)


def timetable_html(sheet: TimetableSheet) -> str:
    """A timetable as a page of its own: drawings, the same as tables, and the list."""
    from markupsafe import Markup

    # The drawings escape every word in them when they are made.
    drawings = [
        Markup(day_drawing(day, ident=f"day-{n}"))  # noqa: S704
        for n, day in enumerate(sheet.days, start=1)
    ]
    return page_html(
        "timetable.html",
        title=f"{sheet.title} · timetable",
        imprint=sheet.imprint,
        more_css="timetable.css",
        sheet=sheet,
        days=list(zip(sheet.days, drawings, [_rows(day) for day in sheet.days], strict=True)),
    )


def _rows(day: Day) -> list[tuple[str, str, str, str]]:
    """The day as a table: from, to, what, and whether it may move."""
    tasks = sorted(day.tasks, key=lambda task: (task.start, task.lane, task.words))
    return [
        (f"{t.start:%H:%M}", f"{t.end:%H:%M}", _words(t), _LOOKS[t.look])
        for t in tasks
        if t.words or t.bold
    ]


_LOOKS = {"solid": "cannot move", "hatched": "may move", "open": "by itself"}


def _words(task: DayTask) -> str:
    return f"{task.bold}, {task.words}" if task.bold else task.words


def _printed(sheet: TimetableSheet) -> dict[str, object]:
    """Words of a timetable for paper; every sign in them is in the packed fonts."""
    said = {
        "title": sheet.title,
        "keywords": ["timetable", "shopping list"],
        "what": sheet.what,
        "tightest": sheet.tightest,
        "groups": [
            {
                "where": group.where,
                "rows": [
                    {"amount": row.amount, "name": row.name, "what": row.what_for}
                    for row in group.rows
                ],
            }
            for group in sheet.groups
        ],
        "spares": list(sheet.spares),
        "warnings": list(sheet.warnings),
        "hold": None
        if sheet.hold is None
        else {"text": sheet.hold.text, "opens": sheet.hold.opens},
        "notes": list(sheet.imprint.notes),
        "unbaked": is_unbaked(sheet.imprint),
        "made-by": made_by(sheet.imprint),
        "dated": dated(sheet.imprint),
    }
    clean = _printable(said)
    if not isinstance(clean, dict):
        raise TypeError("a timetable's words are a table of names")
    return {**clean, "days": [_day(sheet, day, n) for n, day in enumerate(sheet.days)]}


def _room_mm(sheet: TimetableSheet, number: int) -> float:
    """Height a drawing may take on its page: the first page has the title and what warns."""
    if number > 0:
        return _PAGE_MM - _DAY_MM
    lines = sum(math.ceil(len(said) / _SIGNS_A_LINE) for said in sheet.warnings)
    if sheet.hold is not None:
        lines += 2 + math.ceil(len(sheet.hold.text + sheet.hold.opens) / _SIGNS_A_LINE)
    lines += math.ceil(len(sheet.what) / _SIGNS_A_LINE) + math.ceil(len(sheet.tightest) / 100)
    return _PAGE_MM - _DAY_MM - _TITLE_MM - lines * _LINE_MM


def _day(sheet: TimetableSheet, day: Day, number: int) -> dict[str, object]:
    high = _room_mm(sheet, number)
    facts = [
        {name: printable(getattr(fact, name)).text for name in ("label", "figure", "unit", "doubt")}
        for fact in day.facts
    ]
    return {
        "name": printable(day.name).text,
        "facts": facts,
        "svg": day_drawing(day, ident=f"day-{number}", high_mm=high),
        "wide": WIDE_MM,
        "alt": printable(day_sentence(day)).text,
    }


def _printable(value: object) -> object:
    if isinstance(value, str):
        return printable(value).text
    if isinstance(value, list):
        return [_printable(item) for item in value]
    if isinstance(value, dict):
        return {key: _printable(item) for key, item in value.items()}
    return value
