"""Tins measured against nominal, the oven with its offset, and the dial to set."""

import math
from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import ConflictError, KrumeError, Problem, as_text
from krume.usecases import (
    OvenNow,
    OvensNow,
    OvenWish,
    oven_now,
    oven_settings,
    ovens_now,
    ovens_of,
    save_oven,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page
from krume.web.ovens.kinds import BAKES, READINGS, TINS
from krume.web.tables.kinds import Field
from krume.web.tables.pages import Beside, table_routes

_SEE_OTHER = 303
_UNPROCESSABLE = 422
_HOTTEST_C = 1000.0

FIELDS = (
    Field("name", "Name", "what you call it"),
    Field("dial_c", "Dial at the readings", "what it was set to", unit="°C"),
    Field("mean_c", "Mean of the readings", "of the thermometer in it, after the first half hour",
          unit="°C"),
    Field("readings", "How many readings", "six or more"),
    Field("spread_c", "Spread", "half of what they wander: 4", unit="K"),
    Field("offset_c", "Offset, true less dial",
          "worked out from dial and mean where both are typed; an oven that reads low is below 0",
          unit="K"),
    Field("fan", "Has a fan", "", ("yes", "no")),
    Field("bakes_with_fan", "You bake with it", "", ("yes", "no")),
    Field("shelves", "Shelves"),
    Field("tins_per_load", "Tins a load"),
    Field("load_min", "Loading takes", unit="min"),
    Field("recover_min", "Heat comes back in", unit="min"),
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class OvensPage:
    """Tins and the ovens; `form` is what was typed: a dial that is asked for, or one line."""

    now: OvensNow
    form: Form


@dataclass(frozen=True, slots=True)
class OvenPage:
    """The oven as a form; `theirs` is what another kept in the meantime."""

    fields: tuple[Field, ...]
    form: Form
    said: str
    theirs: tuple[Beside, ...]


def ovens(request: Request) -> Response:
    """Tins first, then the ovens."""
    typed = request.query_params.get("want", "").strip()
    want, wrong = _wanted(typed)
    form = Form({"want": typed})
    if wrong:
        return _ovens(request, form.with_wrong("want", wrong), status=_UNPROCESSABLE)
    return _ovens(request, form, want_c=want)


def _ovens(
    request: Request, form: Form, *, want_c: float | None = None, status: int = 200
) -> Response:
    context = OvensPage(ovens_now(asked_of(request), want_c=want_c), form)
    return page(
        request, "ovens/ovens.html", context, title="Tins and ovens", section="ovens",
        status=status,
    )  # fmt: skip


async def say(request: Request) -> Response:
    """Keep a reading or a finished bake that was said in one line."""
    return await run_in_threadpool(_say, request, await read_form(request))


def _say(request: Request, form: Form) -> Response:
    reading, bake = form.get("reading").strip(), form.get("bake").strip()
    if not reading and not bake:
        wrong = form.with_wrong("bake", "Type a reading or a finished bake.")
        return _ovens(request, wrong, status=_UNPROCESSABLE)
    wish = OvenWish((reading,) if reading else (), (bake,) if bake else ())
    try:
        problems = ovens_of(wish, asked_of(request)).problems
    except KrumeError as error:
        wrong = form.with_wrong("bake" if bake else "reading", error.message)
        return _ovens(request, wrong, status=error.http_status)
    if not problems:
        return RedirectResponse("/ovens#oven", status_code=_SEE_OTHER)
    for name in ("reading", "bake"):
        asks = [_asked(problem) for problem in problems if problem.where == f"--{name}"]
        form = form.with_wrong(name, " ".join(asks)) if asks else form
    return _ovens(request, form, status=_UNPROCESSABLE)


def _asked(problem: Problem) -> str:
    """A question with the whole lines that answer it."""
    lines = "; ".join(option.line for option in problem.options)
    return f"{problem.ask} Type: {lines}." if lines else problem.ask


def _wanted(typed: str) -> tuple[float | None, str]:
    """A temperature that was asked for, or what is wrong with it."""
    if not typed:
        return None, ""
    try:
        value = float(typed.replace("°", "").replace("C", "").replace(",", "."))
    except ValueError:
        value = math.nan
    if not 0 < value < _HOTTEST_C:
        return None, f"'{typed}' is no temperature. Type degrees Celsius, such as 170."
    return value, ""


def tins(_: Request) -> Response:
    """The tins stand on the first page."""
    return RedirectResponse(TINS.home, status_code=_SEE_OTHER)


def oven(request: Request) -> Response:
    """The oven in its form."""
    now = oven_now(asked_of(request))
    return _oven_page(request, Form(_typed(now)), now.refusal)


def _typed(now: OvenNow) -> dict[str, str]:
    found = {each.name: _word(now.settings.get(each.name)) for each in FIELDS}
    return {**found, "seen": "" if now.seen is None else str(now.seen)}


def _word(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return as_text(value, 3)
    return value if isinstance(value, str) else ""


async def save(request: Request) -> Response:
    """Keep the oven."""
    return await run_in_threadpool(_save, request, await read_form(request))


def _save(request: Request, form: Form) -> Response:
    asked = asked_of(request)
    settings, wrong = oven_settings(form.values)
    if wrong:
        for name, said in wrong.items():
            form = form.with_wrong(name, said)
        return _oven_page(request, form, status=_UNPROCESSABLE)
    try:
        save_oven(settings, asked, seen=form.whole("seen"))
    except ConflictError as error:
        return _both(request, form, error)
    except KrumeError as error:
        return _oven_page(request, form, error.message, status=error.http_status)
    return RedirectResponse("/ovens#oven", status_code=_SEE_OTHER)


def _both(request: Request, form: Form, error: ConflictError) -> Response:
    """What another kept beside what was typed."""
    now = _typed(oven_now(asked_of(request)))
    both = Form({**form.values, "seen": now["seen"]})
    theirs = tuple(
        Beside(each.label, now[each.name], form.get(each.name))
        for each in FIELDS
        if now[each.name] != form.get(each.name)
    )
    return _oven_page(request, both, error.message, theirs, error.http_status)


def _oven_page(
    request: Request,
    form: Form,
    said: str = "",
    theirs: tuple[Beside, ...] = (),
    status: int = 200,
) -> Response:
    fields = tuple(each.with_choice(form.get(each.name)) for each in FIELDS)
    context = OvenPage(fields, form, said, theirs)
    return page(
        request, "ovens/oven.html", context, title="The oven", section="ovens", status=status
    )


ROUTES = (
    Route("/ovens", ovens, methods=["GET"]),
    Route("/ovens/said", say, methods=["POST"]),
    Route("/ovens/oven", oven, methods=["GET"]),
    Route("/ovens/oven", save, methods=["POST"]),
    Route("/ovens/tins", tins, methods=["GET"]),
    *table_routes(TINS, is_listed=False),
    *table_routes(READINGS),
    *table_routes(BAKES),
)
