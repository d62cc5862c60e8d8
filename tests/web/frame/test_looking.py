"""A page that only shows is of one moment of the book; one that keeps something sees it."""

from contextvars import Context
from itertools import count
from pathlib import Path

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route
from starlette.testclient import TestClient

from krume.store import Book, add_texts, book_at, book_bytes, keep_text
from krume.web.frame.looking import at_one_moment

_PLACES = ("formulas/A.txt", "formulas/B.txt")


def test_what_is_kept_while_a_page_is_read_is_not_half_on_it(tmp_path: Path) -> None:
    book, times = book_at(tmp_path / "book"), count(1)
    add_texts(book, dict.fromkeys(_PLACES, b"0"))

    def shown(_: Request) -> Response:
        first = book_bytes(book, _PLACES[0]) or b""
        # As another request would: what a look holds is the look's own.
        Context().run(_keep_both, book, next(times))
        return PlainTextResponse(first + b" " + (book_bytes(book, _PLACES[1]) or b""))

    whole = at_one_moment(Route("/whole", shown, methods=["GET"]))
    with TestClient(Starlette(routes=[whole, Route("/half", shown)])) as client:
        assert client.get("/whole").text == "0 0"
        assert client.get("/half").text == "1 2"
        assert client.get("/whole").text == "2 2"


def _keep_both(book: Book, number: int) -> None:
    for place in _PLACES:
        keep_text(book, place, str(number).encode(), seen=number)


def test_a_route_that_keeps_something_stays_as_it_is() -> None:
    def kept(_: Request) -> Response:
        return Response()

    route = Route("/", kept, methods=["POST"])
    assert at_one_moment(route) is route
    shown = Route("/{name}", kept, methods=["GET"], name="one")
    wrapped = at_one_moment(shown)
    assert isinstance(wrapped, Route)
    assert (wrapped.path, wrapped.name, wrapped.methods) == ("/{name}", "one", {"GET", "HEAD"})
