"""Every error as a page: what was read, where, and what to do next."""

from dataclasses import dataclass

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from krume.base import KrumeError
from krume.web.frame.rendering import page


@dataclass(frozen=True, slots=True)
class RefusalPage:
    """What went wrong, in one sentence, and the way on."""

    head: str
    text: str


_HEADS = {
    400: "That was not understood",
    404: "There is no such page",
    405: "That cannot be done here",
    409: "It changed in the meantime",
    413: "That is too much at once",
    422: "That cannot be used as it stands",
    500: "A fault in krume itself",
    503: "The book refused",
}


async def on_http(request: Request, error: Exception) -> Response:
    """A page that is not there, or a way of asking that is not known."""
    status = error.status_code if isinstance(error, HTTPException) else 500
    text = f"{request.url.path} is no page of this book."
    if status != 404:
        text = "Go back, and try it from the page itself."
    return _page(request, status, text)


async def on_refusal(request: Request, error: Exception) -> Response:
    """What krume itself refuses, in its own sentence."""
    if not isinstance(error, KrumeError):
        return _fault(request, error)
    return _page(request, error.http_status, error.message)


async def on_fault(request: Request, error: Exception) -> Response:
    """A fault of the program: said plainly, nothing of it shown."""
    return _fault(request, error)


def _fault(request: Request, error: Exception) -> Response:
    text = (
        "A fault in krume itself, not in your text "
        f"({type(error).__name__}). Nothing was changed. Report it with what you did last."
    )
    return _page(request, 500, text)


def _page(request: Request, status: int, text: str) -> Response:
    head = _HEADS.get(status, "That could not be done")
    return page(request, "frame/refusal.html", RefusalPage(head, text), title=head, status=status)
