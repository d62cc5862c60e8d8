"""Pages that are only looked at read their book at one moment, by one connection."""

from collections.abc import Callable
from functools import wraps
from inspect import iscoroutinefunction

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute, Route

from krume.usecases import one_look

_LOOKS = frozenset(("GET", "HEAD"))


def at_one_moment(route: BaseRoute) -> BaseRoute:
    """The same route; where it only shows, all of its page is of one moment of the book."""
    if not isinstance(route, Route) or not _shows(route):
        return route
    return Route(route.path, _within(route.endpoint), methods=route.methods, name=route.name)


def _shows(route: Route) -> bool:
    methods = frozenset(route.methods or ())
    return bool(methods) and methods <= _LOOKS and not iscoroutinefunction(route.endpoint)


def _within(endpoint: Callable[[Request], Response]) -> Callable[[Request], Response]:
    @wraps(endpoint)
    def shown(request: Request) -> Response:
        with one_look():
            return endpoint(request)

    return shown
