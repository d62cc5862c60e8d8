"""Can somebody with coeliac disease eat it, thing by thing; and the list of the room."""

from dataclasses import dataclass
from urllib.parse import quote

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import KrumeError, NotFoundError, Problem
from krume.usecases import (
    Answer,
    GlutenResult,
    GlutenWish,
    QuestionError,
    RoomListResult,
    gluten_of,
    gluten_page_bytes,
    room_list_now,
    say_of_room,
    texts_of,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page

_SEE_OTHER = 303
_UNPROCESSABLE = 422
_MOST = 60
_MARKETS = {
    "eu": "EU", "us": "US", "uk": "UK", "ca": "Canada", "au-nz": "Australia, New Zealand",
}  # fmt: skip
_KINDS = ("order", "torte", "formula")
_MEDIA = {"pdf": "application/pdf", "html": "text/html; charset=utf-8"}
SIGNS = {
    "good": ("in", "good"),
    "not-needed": ("in", "good"),
    "expired": ("shut", "stop"),
    "conflict": ("clash", "stop"),
    "missing": ("ask", "ask"),
    "not-yet-valid": ("ask", "ask"),
}
"""Glyph and colour of each state of a paper; its word stands beside them."""
VERDICTS = {
    "contains": ("clash", "stop", "No"),
    "no": ("shut", "stop", "No"),
    "not yet": ("ask", "ask", "Not yet"),
    "yes": ("open", "good", "Yes, by its rule"),
}
"""Glyph, colour and word of each verdict."""


@dataclass(frozen=True, slots=True)
class AskedOf:
    """One thing that somebody may ask about."""

    name: str
    title: str
    kind: str
    address: str


@dataclass(frozen=True, slots=True)
class AskedPage:
    """What may be asked about, with the box to look one up."""

    rows: tuple[AskedOf, ...]
    search: str
    more: int


@dataclass(frozen=True, slots=True)
class Market:
    """One market whose rule can be asked for."""

    word: str
    address: str
    is_shown: bool


@dataclass(frozen=True, slots=True)
class GlutenPage:
    """The answer about one thing, by the rule of a market."""

    found: GlutenResult
    address: str
    of_address: str
    markets: tuple[Market, ...]
    signs: dict[str, tuple[str, str]]
    verdicts: dict[str, tuple[str, str, str]]
    questions: tuple[Problem, ...]
    opens: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RoomPage:
    """The list of the room, and what was wrong with what was said."""

    now: RoomListResult
    form: Form


def asked_list(request: Request) -> Response:
    """What somebody may ask about: orders first, then tortes and formulas."""
    asked, search = asked_of(request), request.query_params.get("search", "").strip()
    rows = [
        AskedOf(row.name, row.title, kind, _address(row.name))
        for kind in _KINDS
        for row in texts_of(kind, asked, search=search)
    ]
    context = AskedPage(tuple(rows[:_MOST]), search, max(0, len(rows) - _MOST))
    title = "Can somebody with coeliac disease eat it?"
    return page(request, "gluten/list.html", context, title=title, section="pantry")


def _address(name: str) -> str:
    return f"/gluten/{quote(name, safe='')}"


def one(request: Request) -> Response:
    """The answer about one thing."""
    name = request.path_params["name"]
    answer = _answer(request, name)
    found, address = answer.result, _address(name)
    context = GlutenPage(
        found=found,
        address=address,
        of_address=f"/{found.kind}s/{quote(name, safe='')}",
        markets=tuple(
            Market(word, f"{address}?market={key}", key == found.market)
            for key, word in _MARKETS.items()
        ),
        signs=SIGNS,
        verdicts=VERDICTS,
        questions=answer.problems,
        opens=found.opens_in_short,
    )
    title = found.name or name
    return page(request, "gluten/one.html", context, title=title, section="pantry")


def _wish(request: Request) -> GlutenWish:
    said = request.query_params.get("market", "")
    return GlutenWish(market=said if said in _MARKETS else None)


def _answer(request: Request, name: str) -> Answer[GlutenResult]:
    """The answer; a name that no text bears is a page that is not there."""
    try:
        return gluten_of(name, _wish(request), asked_of(request))
    except QuestionError as error:
        if error.problem.code != "not-found":
            raise
        raise NotFoundError(error.problem.ask, where=name, got=name) from error


def sheet(request: Request) -> Response:
    """The page to print or to send."""
    name, end = request.path_params["name"], request.path_params["end"]
    if end not in _MEDIA:
        message = f"There is no gluten page as {end}. There are: {', '.join(_MEDIA)}."
        raise NotFoundError(message, where=name, got=end)
    found = _answer(request, name)
    data = gluten_page_bytes(found.result, asked_of(request), ending=end)
    headers = {"Content-Disposition": f"inline; filename=gluten-page.{end}"}
    return Response(data, media_type=_MEDIA[end], headers=headers)


def room(request: Request) -> Response:
    """The list of the room."""
    return _room(request, Form())


def _room(request: Request, form: Form, status: int = 200) -> Response:
    context = RoomPage(room_list_now(asked_of(request)), form)
    title = "The room"
    return page(request, "gluten/room.html", context, title=title, section="pantry", status=status)


async def say(request: Request) -> Response:
    """Write how one thing stands."""
    return await run_in_threadpool(_say, request, await read_form(request))


def _say(request: Request, form: Form) -> Response:
    """Keep what was said; what cannot be said is refused beside its own box."""
    source = form.get("source")
    try:
        say_of_room(source, form.get("state"), asked_of(request), text=form.get("text"))
    except KrumeError as error:
        return _room(request, form.with_wrong("state", error.message), _UNPROCESSABLE)
    return RedirectResponse(f"/room#{quote(source)}", status_code=_SEE_OTHER)


ROUTES = (
    Route("/gluten", asked_list, methods=["GET"]),
    Route("/gluten/{name}", one, methods=["GET"]),
    Route("/gluten/{name}/page.{end}", sheet, methods=["GET"]),
    Route("/room", room, methods=["GET"]),
    Route("/room", say, methods=["POST"]),
)
