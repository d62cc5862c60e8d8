"""The list of tortes, and each one: its section first, then what it comes to."""

from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.usecases import (
    TextNow,
    TextVersion,
    TortePage,
    text_now,
    torte_shown,
    versions_of,
)
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page
from krume.web.texts.lists import list_page
from krume.web.texts.pages import TextKind, text_routes
from krume.web.texts.questions import OwnLine, Question, elsewhere, own_lines

_KIND = TextKind("torte", "tortes")
_LIST = list_page(_KIND, "Tortes")


@dataclass(frozen=True, slots=True)
class TorteContext:
    """One torte: its section, sums and batches, what may be said, its text and versions."""

    now: TextNow
    address: str
    torte: TortePage
    lines: tuple[OwnLine, ...]
    questions: tuple[Question, ...]
    open_count: int
    notices: tuple[str, ...]
    is_possible: bool
    versions: tuple[TextVersion, ...]


def tortes(request: Request) -> Response:
    """The list, with what is searched for."""
    return _LIST(request, Form(), 200)


def torte(request: Request) -> Response:
    """One torte."""
    name, asked = request.path_params["name"], asked_of(request)
    now = text_now("torte", name, asked)
    answer = torte_shown(f"tortes/{now.name}.txt", asked)
    lines = own_lines(now.text, answer.problems)
    context = TorteContext(
        now=now,
        address=_KIND.address(now.name),
        torte=answer.result,
        lines=lines,
        questions=elsewhere((line.number for line in lines), answer.problems),
        open_count=len(answer.problems) if answer.is_possible else 0,
        notices=tuple(dict.fromkeys(notice.text for notice in answer.notices)),
        is_possible=answer.is_possible,
        versions=versions_of("torte", now.name, asked),
    )
    return page(request, "tortes/torte.html", context, title=now.title or name, section="tortes")


ROUTES = (
    Route("/tortes", tortes, methods=["GET"]),
    Route("/tortes/{name}", torte, methods=["GET"]),
    *text_routes(_KIND, _LIST),
)
