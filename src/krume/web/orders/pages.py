"""The list of orders, and each one: five questions, its hold, its sheets, its own text."""

from dataclasses import dataclass
from datetime import timedelta

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.usecases import (
    KeptSheet,
    OrderStanding,
    OrderView,
    TextNow,
    TextVersion,
    make_order_sheets,
    order_view,
    orders_of,
    sheet_bytes,
    sheets_of_order,
    standings_of,
    text_now,
    versions_of,
)
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page
from krume.web.orders.serving import sheet_headers
from krume.web.orders.sheets import SheetGroup, grouped_sheets
from krume.web.texts.pages import TextKind, text_routes
from krume.web.texts.questions import OwnLine, Question, elsewhere, own_lines

_KIND = TextKind("order", "orders")
_SEE_OTHER = 303
_UNPROCESSABLE = 422
_JUDGED = 40
_PAST = 200


@dataclass(frozen=True, slots=True)
class OrdersPage:
    """Orders to come by date, past ones folded, and the box for a new one.

    The nearest are judged; `unjudged` says how many later ones are not.
    """

    coming: tuple[OrderStanding, ...]
    past: tuple[OrderStanding, ...]
    unjudged: int
    search: str
    form: Form


@dataclass(frozen=True, slots=True)
class OrderPage:
    """One order: what is known of it, its sheets, its text with what is asked, its versions."""

    now: TextNow
    address: str
    view: OrderView
    plan_address: str
    sheets: tuple[SheetGroup, ...]
    stale: tuple[KeptSheet, ...]
    refused: tuple[str, ...]
    lines: tuple[OwnLine, ...]
    elsewhere: tuple[Question, ...]
    versions: tuple[TextVersion, ...]


def orders(request: Request) -> Response:
    """The list, with what is searched for."""
    return _list(request, Form())


def _list(request: Request, form: Form, status: int = 200) -> Response:
    asked = asked_of(request)
    search = request.query_params.get("search", "").strip()
    words = search.casefold().split()
    rows = [row for row in orders_of(asked) if _holds(row, words)]
    coming = tuple(row for row in rows if row.state != "past")
    near = standings_of(coming[:_JUDGED], asked)
    past = tuple(reversed([row for row in rows if row.state == "past"]))[:_PAST]
    unjudged = max(0, len(coming) - _JUDGED)
    context = OrdersPage((*near, *coming[_JUDGED:]), past, unjudged, search, form)
    return page(
        request, "orders/list.html", context, title="Orders", section="orders", status=status
    )


def _holds(row: OrderStanding, words: list[str]) -> bool:
    text = f"{row.name} {row.title} {row.customer} {row.what}".casefold()
    return all(word in text for word in words)


def order(request: Request) -> Response:
    """One order."""
    return _order(request, ())


def _order(request: Request, refused: tuple[str, ...], status: int = 200) -> Response:
    name, asked = request.path_params["name"], asked_of(request)
    now = text_now("order", name, asked)
    view = order_view(name, asked)
    sheets = sheets_of_order(name, asked)
    lines = own_lines(now.text, view.problems)
    context = OrderPage(
        now=now,
        address=_KIND.address(name),
        view=view,
        plan_address=_plan_address(view),
        sheets=grouped_sheets(sheets),
        stale=tuple(sheet for sheet in sheets if not sheet.is_fresh),
        refused=refused,
        lines=lines,
        elsewhere=elsewhere((line.number for line in lines), view.problems),
        versions=versions_of("order", name, asked),
    )
    title = view.title if view.order is not None else name
    return page(request, "orders/order.html", context, title=title, section="orders", status=status)


def _plan_address(view: OrderView) -> str:
    """The day before its hand-over, where most of its work is; empty without a date."""
    day = None if view.order is None else view.order.date
    return "" if day is None else f"/plan/{day - timedelta(days=1)}"


async def make(request: Request) -> Response:
    """Make the sheets of an order; while a question is open nothing is written."""
    return await run_in_threadpool(_make, request)


def _make(request: Request) -> Response:
    name, asked = request.path_params["name"], asked_of(request)
    text_now("order", name, asked)
    answer = make_order_sheets(name, asked)
    if answer.problems:
        asks = tuple(dict.fromkeys(problem.ask for problem in answer.problems))
        return _order(request, asks, _UNPROCESSABLE)
    return RedirectResponse(f"{_KIND.address(name)}#sheets", status_code=_SEE_OTHER)


def sheet(request: Request) -> Response:
    """One sheet of an order, as it lies there."""
    name, asked = request.path_params["name"], asked_of(request)
    text_now("order", name, asked)
    found = sheet_bytes(name, request.path_params["file"], asked)
    return Response(found.data, headers=sheet_headers(found))


ROUTES = (
    Route("/orders", orders, methods=["GET"]),
    Route("/orders/{name}", order, methods=["GET"]),
    Route("/orders/{name}/sheets", make, methods=["POST"]),
    Route("/orders/{name}/sheets/{file}", sheet, methods=["GET"]),
    *text_routes(_KIND, _list),
)
