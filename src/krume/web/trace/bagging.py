"""“Which bags?” as pages: of an order, a torte or a formula, and of a bake from the bench."""

from dataclasses import dataclass, replace
from datetime import date
from urllib.parse import quote

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import ConflictError, InputError, NotFoundError
from krume.usecases import (
    BagsSaid,
    Making,
    QuestionError,
    TraceCake,
    TraceWish,
    earlier_batches,
    last_code,
    making_of,
    trace_of,
    trial_bags,
    write_making,
    write_trial_batch,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page
from krume.web.trace.boxes import BatchBoxes, boxes_of, said_in_form, said_of_each

_SEE_OTHER = 303


@dataclass(frozen=True, slots=True)
class BagsPage:
    """Which bags: the batches that are to be written down, and what is written down already.

    `before` is the last making there was; `back` is where the page is come from.
    """

    address: str
    back: str
    back_word: str
    batches: tuple[BatchBoxes, ...]
    form: Form
    what: str = ""
    said: str = ""
    before: str = ""
    cakes: tuple[TraceCake, ...] = ()
    is_trial: bool = False


def bags(request: Request) -> Response:
    """The bags of what a text of the book means."""
    return _bags(request, _making(request), Form())


def _making(
    request: Request, made_on: date | None = None, said: dict[str, BagsSaid] | None = None
) -> Making:
    """What a name of the book means; another name is no page."""
    try:
        return making_of(_name(request), asked_of(request), made_on=made_on, said=said or {})
    except QuestionError as error:
        raise NotFoundError(error.message, got=_name(request)) from error


def _name(request: Request) -> str:
    name: str = request.path_params["name"]
    return name


def _bags(request: Request, making: Making, form: Form, status: int = 200) -> Response:
    name, asked = _name(request), asked_of(request)
    found = trace_of(f"{_kind(making)} {name}", TraceWish(), asked).result
    earlier = [tuple(b.code for b in earlier_batches(x.formula, asked)) for x in making.bags]
    batches = tuple(
        boxes_of(number, each, codes)
        for number, (each, codes) in enumerate(zip(making.bags, earlier, strict=True))
    )
    folder = {"order": "orders", "class": "teach", "torte": "tortes"}.get(_kind(making), "formulas")
    values = {"made": making.made_on.isoformat(), "before": last_code(making, asked)}
    context = BagsPage(
        address=f"/trace/of/{quote(name, safe='')}",
        back="/teach" if folder == "teach" else f"/{folder}/{quote(name, safe='')}",
        back_word=making.read.title or name,
        batches=batches,
        form=Form({**values, **form.values}, form.wrong),
        what=", ".join(f"{sold.count} {sold.name}" for sold in making.things),
        said=form.wrong.get("said", ""),
        before=form.get("before") or values["before"],
        cakes=found.cakes,
    )
    title = f"Which bags: {making.read.title or name}"
    return page(request, "trace/bags.html", context, title=title, section="orders", status=status)


def _kind(making: Making) -> str:
    return "class" if making.order and making.read.kind == "class" else making.read.kind


async def write(request: Request) -> Response:
    """Write down which bags went in."""
    return await run_in_threadpool(_write, request, await read_form(request))


def _write(request: Request, form: Form) -> Response:
    name, asked = _name(request), asked_of(request)
    said, form = said_of_each(form)
    made_on, form = _day(form, "made")
    making = _making(request, made_on, said)
    if form.wrong:
        return _bags(request, making, form, InputError.http_status)
    try:
        if making.things:
            write_making(making, asked, before=form.get("before"))
    except (InputError, NotFoundError, ConflictError) as error:
        return _bags(request, making, form.with_wrong("said", error.message), error.http_status)
    return RedirectResponse(f"/trace/of/{quote(name, safe='')}", status_code=_SEE_OTHER)


def _day(form: Form, field: str) -> tuple[date | None, Form]:
    typed = form.get(field).strip()
    try:
        return (date.fromisoformat(typed) if typed else None), form
    except ValueError:
        return None, form.with_wrong(field, f"“{typed}” is no day. Type 2027-06-10.")


def trial(request: Request) -> Response:
    """The bags of a bake that was written down at the bench."""
    return _trial(request, Form())


def _trial(request: Request, form: Form, status: int = 200) -> Response:
    key = request.path_params["key"]
    found, code = trial_bags(key, asked_of(request))
    boxes = boxes_of(0, found)
    context = BagsPage(
        address=f"/trace/trials/{quote(key, safe='')}",
        back=f"/trials/{quote(key, safe='')}",
        back_word=f"{found.formula}, baked {found.made_on}",
        batches=(boxes,),
        form=form,
        what=f"{found.formula}, {code}" if code else found.formula,
        said=form.wrong.get("said", ""),
        is_trial=True,
    )
    title = f"Which bags: {found.formula}"
    return page(request, "trace/bags.html", context, title=title, section="trials", status=status)


async def write_trial(request: Request) -> Response:
    """Write down which bags went into a bake; a second time puts the first right."""
    return await run_in_threadpool(_write_trial, request, await read_form(request))


def _write_trial(request: Request, form: Form) -> Response:
    key, asked = request.path_params["key"], asked_of(request)
    _, said, form = said_in_form(form, 0)
    if form.wrong:
        return _trial(request, form, InputError.http_status)
    found, _ = trial_bags(key, asked, replace(said, batch="", is_unknown=False))
    try:
        batch = write_trial_batch(key, found, asked)
    except (InputError, ConflictError) as error:
        return _trial(request, form.with_wrong("said", error.message), error.http_status)
    return RedirectResponse(f"/trace/batches/{batch.code}", status_code=_SEE_OTHER)


BAG_ROUTES = (
    Route("/trace/of/{name}", bags, methods=["GET"]),
    Route("/trace/of/{name}", write, methods=["POST"]),
    Route("/trace/trials/{key}", trial, methods=["GET"]),
    Route("/trace/trials/{key}", write_trial, methods=["POST"]),
)
