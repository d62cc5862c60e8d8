"""A formula's bench card, made as it is asked for: to print from the page, or as PDF."""

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError
from krume.usecases import SheetBytes, card_bytes, text_now
from krume.web.frame.rendering import asked_of
from krume.web.orders.serving import sheet_headers

_MEDIA = {"pdf": "application/pdf", "html": "text/html; charset=utf-8"}


def card_pdf(request: Request) -> Response:
    """The bench card on A5."""
    return _card(request, "pdf")


def card_html(request: Request) -> Response:
    """The bench card as a page that prints itself on one leaf."""
    return _card(request, "html")


def _card(request: Request, ending: str) -> Response:
    asked = asked_of(request)
    now = text_now("formula", request.path_params["name"], asked)
    answer = card_bytes(f"formulas/{now.name}.txt", asked, ending=ending)
    if answer.problems:
        raise InputError(_open(len(answer.problems), answer.problems[0].ask), field=now.name)
    sheet = SheetBytes(answer.result, _MEDIA[ending], is_as_written=True)
    return Response(sheet.data, headers=sheet_headers(sheet))


def _open(count: int, first: str) -> str:
    """Why there is no card yet.

    >>> _open(1, "Which size are the eggs?")
    'No card yet: 1 question is open. Which size are the eggs? Answer it where it is lit.'
    """
    open_ones = "1 question is open" if count == 1 else f"{count} questions are open"
    return f"No card yet: {open_ones}. {first} Answer it where it is lit."


CARD_ROUTES = (
    Route("/formulas/{name}/card.pdf", card_pdf, methods=["GET"]),
    Route("/formulas/{name}/card.html", card_html, methods=["GET"]),
)
