"""The application: every job's routes behind one guard."""

from dataclasses import asdict
from pathlib import Path

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles

from krume.base import KrumeError
from krume.usecases import Asked, health_of
from krume.web.formulas.pages import ROUTES as FORMULAS
from krume.web.frame.guarding import Guard
from krume.web.frame.refusing import on_fault, on_http, on_refusal
from krume.web.frame.rendering import asked_of
from krume.web.sums.pages import ROUTES as SUMS

_STATIC = Path(__file__).parent.parent / "static"


def application(book: Path | None = None) -> Starlette:
    """The web app over one book."""
    app = Starlette(
        routes=[
            Route("/health", health),
            *FORMULAS,
            *SUMS,
            Mount("/static", StaticFiles(directory=_STATIC), name="static"),
        ],
        middleware=[Middleware(Guard)],
        exception_handlers={
            HTTPException: on_http,
            KrumeError: on_refusal,
            Exception: on_fault,
        },
    )
    app.state.asked = Asked(book=book)
    return app


def health(request: Request) -> Response:
    """Whether the app and its book are there, for a machine to read."""
    return JSONResponse({"ok": True, **asdict(health_of(asked_of(request)))})
