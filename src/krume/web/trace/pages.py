"""Tracing as pages: what is to be written down, a name looked up, where a lot went, its list."""

from dataclasses import dataclass
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import NotFoundError
from krume.usecases import (
    Answer,
    QuestionError,
    TraceHome,
    TraceResult,
    TraceWish,
    list_bytes,
    trace_home,
    trace_of,
)
from krume.web.frame.asking import Ask, Choice, Pairs, address
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page
from krume.web.trace.bagging import BAG_ROUTES
from krume.web.trace.records import RECORD_ROUTES

_SEE_OTHER = 303
_MOST = 60
_MEDIA = {"pdf": "application/pdf", "csv": "text/csv; charset=utf-8"}


@dataclass(frozen=True, slots=True)
class HomePage:
    """What is to be written down, the last cakes, and the box to look something up.

    `asks_ingredient` says that a lot nobody wrote down can be looked up by what it is of.
    """

    home: TraceHome
    form: Form
    asks: tuple[Ask, ...] = ()
    asks_ingredient: bool = False


@dataclass(frozen=True, slots=True)
class ListFile:
    """One format of a list."""

    word: str
    address: str


@dataclass(frozen=True, slots=True)
class LotPage:
    """Where a lot went, and its list to print; of each group `most` are shown unasked."""

    found: TraceResult
    files: tuple[ListFile, ...]
    all_address: str
    most: int = _MOST


def home(request: Request) -> Response:
    """The first page; a name that is looked up leads to its own page."""
    asked, shown = asked_of(request), trace_home(asked_of(request))
    name, ingredient = (_typed(request, key) for key in ("name", "ingredient"))
    form = Form({"name": name, "ingredient": ingredient})
    if not name:
        return _home(request, HomePage(shown, form))
    try:
        found = trace_of(name, TraceWish(ingredient=ingredient), asked).result
    except QuestionError as error:
        is_unknown = error.problem.code == "lot-unknown"
        return _home(request, HomePage(shown, form, (_ask(error, form),), is_unknown))
    except NotFoundError as error:
        return _home(request, HomePage(shown, form.with_wrong("name", error.message)))
    return RedirectResponse(_address(found, ingredient), status_code=_SEE_OTHER)


def _typed(request: Request, key: str) -> str:
    return " ".join(request.query_params.get(key, "").split())


def _home(request: Request, context: HomePage) -> Response:
    return page(request, "trace/home.html", context, title="Where lots went", section="orders")


def _ask(error: QuestionError, form: Form) -> Ask:
    """The question, each answer an address of the same page."""
    key = "ingredient" if error.problem.where == "--ingredient" else "name"
    choices = tuple(
        Choice(option.label, address("/trace", _pairs({**form.values, key: option.line})))
        for option in error.problem.options
    )
    return Ask(error.problem.ask, choices)


def _pairs(said: dict[str, str]) -> Pairs:
    return tuple((key, value) for key, value in said.items() if value)


def _address(found: TraceResult, ingredient: str) -> str:
    if found.recall is not None:
        return address("/trace/lot", _pairs({"mark": found.name, "ingredient": ingredient}))
    kinds = {"cake": "cakes", "batch": "batches"}
    return f"/trace/{kinds.get(found.kind, 'of')}/{quote(found.name, safe='')}"


def lot(request: Request) -> Response:
    """Where a lot went; without a mark it is asked which."""
    if not _typed(request, "mark"):
        return RedirectResponse("/trace", status_code=_SEE_OTHER)
    found = _lot(request).result
    said = _pairs({key: _typed(request, key) for key in ("mark", "ingredient")})
    files = tuple(ListFile(end.upper(), address(f"/trace/lot/list.{end}", said)) for end in _MEDIA)
    title = f"Where {found.title} went"
    whole = address("/trace/lot", (*said, ("all", "1")))
    context = LotPage(found, files, whole)
    return page(request, "trace/lot.html", context, title=title, section="orders")


def _lot(request: Request) -> Answer[TraceResult]:
    mark = _typed(request, "mark")
    if not mark:
        raise NotFoundError("No lot was named. Go to “Where lots went” and type its mark.")
    wish = TraceWish(ingredient=_typed(request, "ingredient"))
    try:
        return trace_of(f"lot {mark}", wish, asked_of(request))
    except QuestionError as error:
        if error.problem.code != "lot-unknown":
            raise
        raise NotFoundError(error.message, got=mark) from error


def lot_list(request: Request) -> Response:
    """The list of a lot to print, or as a table."""
    return _listed(request, _lot(request))


def cake_list(request: Request) -> Response:
    """What went into a cake, to print or as a table."""
    code = request.path_params["code"]
    return _listed(request, trace_of(f"cake {code}", TraceWish(), asked_of(request)))


def _listed(request: Request, answer: Answer[TraceResult]) -> Response:
    end = request.path_params["ending"]
    if end not in _MEDIA:
        message = f"The list is there as {' and '.join(_MEDIA)}, not as {end}."
        raise NotFoundError(message, got=end)
    data = list_bytes(answer, asked_of(request), ending=end)
    return Response(data, media_type=_MEDIA[end])


ROUTES = (
    Route("/trace", home, methods=["GET"]),
    Route("/trace/lot", lot, methods=["GET"]),
    Route("/trace/lot/list.{ending}", lot_list, methods=["GET"]),
    Route("/trace/cakes/{code}/list.{ending}", cake_list, methods=["GET"]),
    *RECORD_ROUTES,
    *BAG_ROUTES,
)
