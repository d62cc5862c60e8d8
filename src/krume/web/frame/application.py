"""The application: every job's routes behind one guard."""

import contextlib
from collections.abc import AsyncIterator
from dataclasses import asdict
from importlib import import_module
from pathlib import Path

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import BaseRoute, Mount, Route
from starlette.staticfiles import StaticFiles

from krume.base import KrumeError
from krume.usecases import Asked, health_of
from krume.web.frame.guarding import Guard
from krume.web.frame.looking import at_one_moment
from krume.web.frame.refusing import on_fault, on_http, on_refusal
from krume.web.frame.rendering import asked_of
from krume.web.frame.tidying import tidying

JOBS = (
    "bake",
    "bench",
    "formulas",
    "orders",
    "oven",
    "ovens",
    "pantry",
    "gluten",
    "plan",
    "slip",
    "sums",
    "teach",
    "today",
    "tortes",
    "blend",
    "vary",
    "eggs",
    "cooling",
    "fridge",
    "keep",
    "trace",
    "labels",
    "fill",
)
"""Folders of the pages, each with its ROUTES in `pages`; the frame names them and imports none."""

_STATIC = Path(__file__).parent.parent / "static"
_OF_SHEETS = ("krume.publish", "static")
"""Tokens and fonts are those of the sheets: paper and screen are one drawing."""


def application(book: Path | None = None) -> Starlette:
    """The web app over one book."""
    app = Starlette(
        routes=[
            Route("/health", health),
            *(at_one_moment(route) for job in JOBS for route in routes_of(job)),
            Mount("/static", StaticFiles(directory=_STATIC, packages=[_OF_SHEETS]), name="static"),
        ],
        middleware=[Middleware(Guard)],
        lifespan=_lifespan,
        exception_handlers={
            HTTPException: on_http,
            KrumeError: on_refusal,
            Exception: on_fault,
        },
    )
    app.state.asked = Asked(book=book, is_of_book=True)
    return app


@contextlib.asynccontextmanager
async def _lifespan(_: Starlette) -> AsyncIterator[None]:
    with tidying():
        yield


def routes_of(job: str) -> tuple[BaseRoute, ...]:
    """Routes of one folder of pages."""
    found: tuple[BaseRoute, ...] = import_module(f"krume.web.{job}.pages").ROUTES
    return found


def health(request: Request) -> Response:
    """Whether the app and its book are there, for a machine to read."""
    return JSONResponse({"ok": True, **asdict(health_of(asked_of(request)))})
