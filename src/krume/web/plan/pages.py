"""A day's plan: its lanes, first start, tightest gap and tasks; worked out when that is asked."""

from dataclasses import dataclass
from datetime import date, timedelta

from markupsafe import Markup
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.usecases import DayView, PlanTask, day_view, plan_day_today
from krume.web.frame.rendering import asked_of, page

_SEE_OTHER = 303
_NOT_FOUND = 404


@dataclass(frozen=True, slots=True)
class TaskRow:
    """One task of the table: when, what, where, and whether it may move."""

    task: PlanTask
    lane: str
    moves: str


@dataclass(frozen=True, slots=True)
class PlanPage:
    """A day: the orders with work on it, and its plan where one was worked out."""

    view: DayView
    address: str
    before: date
    after: date
    drawing: Markup
    rows: tuple[TaskRow, ...]
    tightest: str
    asks: tuple[str, ...]
    notices: tuple[str, ...]


def today(request: Request) -> Response:
    """The plan of the book's today."""
    return RedirectResponse(f"/plan/{plan_day_today(asked_of(request))}", status_code=_SEE_OTHER)


def plan(request: Request) -> Response:
    """The plan of one day; with `work=1` it is worked out, which takes some seconds."""
    day = _day(request.path_params["date"])
    is_worked = request.query_params.get("work") == "1"
    context = _page(day_view(day, asked_of(request), is_worked=is_worked))
    return page(
        request, "plan/day.html", context, title=f"{day:%A} {day.day} {day:%B}", section="plan"
    )


def _day(typed: str) -> date:
    """A day as an address names it: 2027-06-10, and no other way."""
    try:
        day = date.fromisoformat(typed)
    except ValueError as error:
        raise HTTPException(_NOT_FOUND) from error
    if day.isoformat() != typed or not date.min.year < day.year < date.max.year:
        raise HTTPException(_NOT_FOUND)
    return day


def _page(view: DayView) -> PlanPage:
    answer = None if view.plan is None else view.plan.answer
    tasks = () if view.planned is None else view.planned.tasks
    svg = "" if view.planned is None else view.planned.svg
    tight = None if answer is None else answer.result.tightest
    return PlanPage(
        view=view,
        address=f"/plan/{view.day}",
        before=view.day - timedelta(days=1),
        after=view.day + timedelta(days=1),
        # The drawing escapes every word in it when it is made.
        drawing=Markup(svg),  # noqa: S704
        rows=tuple(_row(task) for task in tasks),
        tightest="" if tight is None else tight.text,
        asks=() if answer is None else tuple(dict.fromkeys(p.ask for p in answer.problems)),
        notices=() if answer is None else tuple(dict.fromkeys(n.text for n in answer.notices)),
    )


def _row(task: PlanTask) -> TaskRow:
    lane = "hands" if task.who is not None else "oven" if "oven" in task.uses else "by itself"
    if task.cannot_move:
        return TaskRow(task, lane, "cannot move")
    hours, minutes = divmod(task.slack_min, 60)
    gap = f"{hours} h {minutes} min" if hours else f"{minutes} min"
    return TaskRow(task, lane, f"may slip {gap}")


ROUTES = (
    Route("/plan", today, methods=["GET"]),
    Route("/plan/{date}", plan, methods=["GET"]),
)
