"""The list of tortes, and each one: its section first, then what it comes to."""

from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import ConflictError, InputError
from krume.usecases import (
    Asked,
    Heights,
    TextNow,
    TextVersion,
    TorteInTime,
    TortePage,
    asked_with_heights,
    heights_of,
    keep_heights,
    text_now,
    torte_in_time,
    torte_shown,
    versions_of,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page
from krume.web.texts.lists import list_page
from krume.web.texts.pages import TextKind, text_routes
from krume.web.texts.questions import OwnLine, Question, elsewhere, own_lines
from krume.web.tortes.heights import HandlesPart, handles_part, wished_heights

_KIND = TextKind("torte", "tortes")
_LIST = list_page(_KIND, "Tortes")
_SEE_OTHER = 303


@dataclass(frozen=True, slots=True)
class TorteContext:
    """One torte: its section, sums and batches, what may be said, its text and versions."""

    now: TextNow
    address: str
    torte: TortePage
    handles: HandlesPart
    lines: tuple[OwnLine, ...]
    questions: tuple[Question, ...]
    open_count: int
    notices: tuple[str, ...]
    is_possible: bool
    versions: tuple[TextVersion, ...]
    in_time: TorteInTime


def tortes(request: Request) -> Response:
    """The list, with what is searched for."""
    return _LIST(request, Form(), 200)


def torte(request: Request) -> Response:
    """One torte, at the heights that are written or at those that are tried."""
    return _torte(request, wished_heights(request.query_params))


def _torte(
    request: Request, wished: Heights, refusal: ConflictError | InputError | None = None
) -> Response:
    name, asked = request.path_params["name"], asked_of(request)
    now = text_now("torte", name, asked)
    heights = heights_of(now.text, wished)
    answer = torte_shown(f"tortes/{now.name}.txt", asked_with_heights(asked, heights))
    lines = own_lines(now.text, answer.problems)
    address = _KIND.address(now.name)
    context = TorteContext(
        now=now,
        address=address,
        torte=answer.result,
        handles=handles_part(address, heights, "" if refusal is None else refusal.message),
        lines=lines,
        questions=elsewhere((line.number for line in lines), answer.problems),
        open_count=len(answer.problems) if answer.is_possible else 0,
        notices=tuple(dict.fromkeys(notice.text for notice in answer.notices)),
        is_possible=answer.is_possible,
        versions=versions_of("torte", now.name, asked),
        in_time=_in_time(request, f"tortes/{now.name}.txt", asked_with_heights(asked, heights)),
    )
    return page(
        request, "tortes/torte.html", context, title=now.title or name, section="tortes",
        status=200 if refusal is None else refusal.http_status,
    )  # fmt: skip


def _in_time(request: Request, place: str, asked: Asked) -> TorteInTime:
    """How it stands, and what water moves where the address asks for it."""
    return torte_in_time(place, asked, moves="water" in request.query_params)


async def keep(request: Request) -> Response:
    """The heights that are tried, kept as a new version."""
    form = await read_form(request)
    return await run_in_threadpool(_keep, request, form)


def _keep(request: Request, form: Form) -> Response:
    name, wished = request.path_params["name"], wished_heights(form.values)
    try:
        now = keep_heights(name, wished, asked_of(request), seen=form.whole("seen"))
    except (ConflictError, InputError) as error:
        return _torte(request, wished, error)
    return RedirectResponse(_KIND.address(now.name), status_code=_SEE_OTHER)


ROUTES = (
    Route("/tortes", tortes, methods=["GET"]),
    Route("/tortes/{name}", torte, methods=["GET"]),
    Route("/tortes/{name}/heights", keep, methods=["POST"]),
    *text_routes(_KIND, _LIST),
)
