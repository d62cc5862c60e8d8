"""The learner's page: conflicts first, then the page itself in both systems of units."""

from dataclasses import dataclass
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import Interval
from krume.usecases import ClassDay, TeachLine, TeachView, TextRow, teach_view
from krume.web.frame.figures import amount, day_words
from krume.web.frame.rendering import asked_of, page

_FINE_G = 10.0


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the learner's table, its figures as they are read."""

    name: str
    counted: str
    grams: str
    ounces: str


@dataclass(frozen=True, slots=True)
class Beside:
    """Another page of learners: where it is, and what it is called."""

    address: str
    word: str


@dataclass(frozen=True, slots=True)
class TeachPage:
    """What stops a text from going out, then the text as a learner reads it."""

    view: TeachView
    title: str
    text: str
    sentence: str
    rows: tuple[Row, ...]
    tin: str
    oven: str
    core: str
    minutes: str
    beside: tuple[Beside, ...]


def teach(request: Request) -> Response:
    """The learner's page of a formula or a class."""
    view = teach_view(request.path_params["name"], asked_of(request))
    title = view.now.title or view.now.name
    return page(request, "teach/teach.html", _page(view, title), title=f"{title}, for learners")


def _page(view: TeachView, title: str) -> TeachPage:
    found = view.formula
    beside = tuple(Beside(_address(row), row.title or row.name) for row in view.beside)
    if found is None:
        sentence = "" if view.day is None else _day_sentence(view.day)
        return TeachPage(view, title, view.now.text, sentence, (), "", "", "", "", beside)
    fan = {True: ", fan", False: ", no fan", None: ""}[found.fan]
    return TeachPage(
        view=view,
        title=title,
        text=view.now.text,
        sentence=_sentence(len(found.conflicts), len(found.missing)),
        rows=tuple(_row(line) for line in found.lines),
        tin=f"{found.tin} ({found.tin_in} in)" if found.tin and found.tin_in else found.tin,
        oven="" if found.oven is None else both(found.oven.temp_c, found.oven.temp_f) + fan,
        core="" if found.core is None else both(found.core.temp_c, found.core.temp_f),
        minutes="" if found.bake_min is None else f"{amount(found.bake_min)} min",
        beside=beside,
    )


def _day_sentence(day: ClassDay) -> str:
    """When a class is, and how many come."""
    hours = ""
    if day.begins is not None and day.ends is not None:
        hours = f", {day.begins:%H:%M} to {day.ends:%H:%M}"
    come = "how many come is not said" if day.learners is None else f"{day.learners} learners"
    return f"{day_words(day.day)}{hours}: {come}."


def _address(row: TextRow) -> str:
    return f"/teach/{quote(row.name, safe='')}"


def _sentence(conflicts: int, missing: int) -> str:
    """How far a text is from going out.

    >>> _sentence(2, 1)
    '2 conflicts are left. Nothing goes out while one is open.'
    >>> _sentence(0, 1)
    'No conflict is left. 1 thing that a learner looks for is not written.'
    """
    if conflicts:
        left = "1 conflict is left" if conflicts == 1 else f"{conflicts} conflicts are left"
        return f"{left}. Nothing goes out while one is open."
    if missing:
        things = "1 thing" if missing == 1 else f"{missing} things"
        is_said = "is" if missing == 1 else "are"
        return f"No conflict is left. {things} that a learner looks for {is_said} not written."
    return "No conflict is left, and nothing that a learner looks for is missing."


def both(temp_c: float, temp_f: float) -> str:
    """A temperature in both units.

    >>> both(170.0, 338.0)
    '170 °C (338 °F)'
    """
    return f"{amount(temp_c)} °C ({amount(temp_f, 0)} °F)"


def _row(line: TeachLine) -> Row:
    return Row(line.name, line.counted, _figure(line.mass_g), _figure(line.mass_oz))


def _figure(mass: float | Interval | None) -> str:
    best = mass.best if isinstance(mass, Interval) else mass
    return amount(mass, 2 if best is not None and best < _FINE_G else 1)


ROUTES = (Route("/teach/{name}", teach, methods=["GET"]),)
