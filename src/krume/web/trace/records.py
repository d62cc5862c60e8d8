"""A cake and a batch as pages: what is written down, its history, and how it is put right."""

from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import ConflictError, InputError, NotFoundError
from krume.usecases import (
    BatchNow,
    CakeNow,
    TraceResult,
    TraceWish,
    batch_now,
    cake_now,
    correct_batch,
    correct_cake,
    trace_of,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page
from krume.web.trace.boxes import BatchBoxes, boxes_of, said_in_form

_SEE_OTHER = 303


@dataclass(frozen=True, slots=True)
class CakePage:
    """What went into a cake, and the boxes that put its record right."""

    found: TraceResult
    now: CakeNow
    form: Form
    said: str


@dataclass(frozen=True, slots=True)
class BatchPage:
    """One batch with the cakes it went into, and the boxes that put its record right."""

    found: TraceResult
    now: BatchNow
    boxes: BatchBoxes
    form: Form
    said: str


def _code(request: Request) -> str:
    code: str = request.path_params["code"]
    return code


def cake(request: Request) -> Response:
    """One cake by its lot code."""
    return _cake(request, Form())


def _cake(request: Request, form: Form, status: int = 200) -> Response:
    code, asked = _code(request), asked_of(request)
    now = cake_now(code, asked)
    found = trace_of(f"cake {code}", TraceWish(), asked).result
    context = CakePage(found, now, form, form.wrong.get("said", ""))
    title = f"{now.code}, {found.title}"
    return page(request, "trace/cake.html", context, title=title, section="orders", status=status)


async def save_cake(request: Request) -> Response:
    """A new record in place of a wrong one."""
    return await run_in_threadpool(_save_cake, request, await read_form(request))


def _save_cake(request: Request, form: Form) -> Response:
    code, asked = _code(request), asked_of(request)
    now = cake_now(code, asked)
    parts = {
        part: form.get(f"part{at}")
        for at, (part, _, _) in enumerate(now.parts)
        if form.values.get(f"part{at}") is not None
    }
    try:
        correct_cake(
            code, asked, seen=form.get("seen"), parts=parts, reason=form.get("reason"),
            is_void=form.get("void") == "yes",
        )  # fmt: skip
    except (InputError, NotFoundError, ConflictError) as error:
        return _cake(request, form.with_wrong("said", error.message), error.http_status)
    return RedirectResponse(f"/trace/cakes/{now.code}", status_code=_SEE_OTHER)


def batch(request: Request) -> Response:
    """One batch by its code."""
    return _batch(request, Form())


def _batch(request: Request, form: Form, status: int = 200) -> Response:
    code, asked = _code(request), asked_of(request)
    now = batch_now(code, asked)
    found = trace_of(f"batch {code}", TraceWish(), asked).result
    context = BatchPage(found, now, boxes_of(0, now.bags), form, form.wrong.get("said", ""))
    title = f"{now.code}, {found.title}"
    return page(request, "trace/batch.html", context, title=title, section="orders", status=status)


async def save_batch(request: Request) -> Response:
    """A new record of a batch in place of a wrong one."""
    return await run_in_threadpool(_save_batch, request, await read_form(request))


def _save_batch(request: Request, form: Form) -> Response:
    code, asked = _code(request), asked_of(request)
    _, said, form = said_in_form(form, 0)
    if form.wrong:
        return _batch(request, form, InputError.http_status)
    now = batch_now(code, asked, said)
    try:
        correct_batch(
            code, now.bags, asked, seen=form.get("seen"), reason=form.get("reason"),
            is_void=form.get("void") == "yes",
        )  # fmt: skip
    except (InputError, ConflictError) as error:
        return _batch(request, form.with_wrong("said", error.message), error.http_status)
    return RedirectResponse(f"/trace/batches/{now.code}", status_code=_SEE_OTHER)


RECORD_ROUTES = (
    Route("/trace/cakes/{code}", cake, methods=["GET"]),
    Route("/trace/cakes/{code}", save_cake, methods=["POST"]),
    Route("/trace/batches/{code}", batch, methods=["GET"]),
    Route("/trace/batches/{code}", save_batch, methods=["POST"]),
)
